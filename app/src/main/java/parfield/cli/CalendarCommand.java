package parfield.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import parfield.answer.AcclimationAnswer;
import parfield.answer.Bench;
import parfield.answer.CalendarAnswer;
import parfield.answer.Refusal;
import parfield.care.DailyProgram;
import parfield.care.HadLight;
import parfield.care.Schedule;
import parfield.rig.Rig;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield calendar}: reminders of a daily program and its steps. */
@Command(
    name = "calendar",
    mixinStandardHelpOptions = true,
    header = "Put the daily program into a calendar.",
    description = {
      "",
      "Leaves an iCalendar file (RFC 5545) of the lit spells and, where the light before is stated,"
          + " of the steps towards the rig's light. Times are local, as the clock on the wall shows."
          + " Reminders only: no fixture is driven. A file made anew with a higher --revision"
          + " replaces the entries of the old one."
    })
final class CalendarCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;
  @Mixin private Modelling modelling;
  @Mixin private DayOptions day;
  @Mixin private PlaceOption place;
  @Mixin private HadOptions had;

  @Parameters(paramLabel = "SETUP", description = "The setup file (YAML).")
  private Path file;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "OUT",
      description = "Leave the calendar in this file; one of that name is replaced.")
  private Path out;

  @Option(
      names = "--csv",
      paramLabel = "OUT",
      description = "Leave the schedule as separated values too.")
  private Path csv;

  @Option(
      names = "--revision",
      paramLabel = "N",
      defaultValue = "0",
      description = "Raise it when you make the file anew. Default: ${DEFAULT-VALUE}.")
  private int revision;

  @Option(
      names = "--clean-every",
      paramLabel = "DAYS",
      description = "Also remind of cleaning lamps, lid and panes.")
  private Integer cleaning;

  @Override
  public Integer call() {
    if (revision < 0) {
      throw Refusal.of(
          "a revision is 0 or more; got " + revision,
          "leave --revision out for the first, then count up");
    }
    if (cleaning != null && cleaning < 1) {
      throw Refusal.of(
          "days between cleanings are 1 or more; got " + cleaning,
          "give --clean-every 14, or leave it out");
    }
    List<Path> inputs = new ArrayList<>(modelling.inputs());
    inputs.add(file);
    List<String> left = OutputFile.check(inputs, out, csv);
    Bench bench = Bench.read(file);
    LengthUnit unit = output.length(bench);
    Rig rig = day.rig(bench);
    DailyProgram program = day.program(bench, rig);
    CalendarAnswer answer =
        new CalendarAnswer(
            bench.setup().source(),
            rig,
            program,
            schedule(bench, rig, program, unit),
            Optional.ofNullable(cleaning),
            revision,
            left);
    OutputFile.write(out, answer.calendar(Instant.now().truncatedTo(ChronoUnit.SECONDS)));
    if (csv != null) {
      OutputFile.write(csv, answer.csv());
    }
    output.print(spec.commandLine().getOut(), answer, unit);
    return ExitCode.DONE;
  }

  private Schedule schedule(Bench bench, Rig rig, DailyProgram program, LengthUnit unit) {
    LocalDate first = had.first();
    if (!had.stated()) {
      return Schedule.of(rig, program, first, Optional.empty());
    }
    HadLight before = had.had(bench);
    return AcclimationAnswer.of(
            bench.setup().source(),
            modelling.model(bench, spec.commandLine().getErr()),
            modelling.solver(),
            rig,
            program,
            place.in(bench, unit),
            first,
            before,
            before.known().pace())
        .schedule();
  }
}
