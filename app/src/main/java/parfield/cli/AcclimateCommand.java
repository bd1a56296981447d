package parfield.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import parfield.answer.AcclimationAnswer;
import parfield.answer.Bench;
import parfield.care.HadLight;
import parfield.formats.ScheduleFile;
import parfield.rig.Rig;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield acclimate}: steps from the light that a coral had to a rig's. */
@Command(
    name = "acclimate",
    mixinStandardHelpOptions = true,
    header = "Say how to get a coral used to a rig's light.",
    description = {
      "",
      "Steps of one factor from the light that the coral had to that of the rig, with the dials of"
          + " each, its peak and dose at the coral's place, and the signs at which to hold or step"
          + " back. Careful at both ends: even the bright end of the first step is no more than the"
          + " coral had. Paces are common practice, no source."
    })
final class AcclimateCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;
  @Mixin private Modelling modelling;
  @Mixin private DayOptions day;
  @Mixin private PlaceOption place;
  @Mixin private HadOptions had;

  @Parameters(paramLabel = "SETUP", description = "The setup file (YAML).")
  private Path file;

  @Option(
      names = "--csv",
      paramLabel = "OUT",
      description = "Leave the schedule in this file; one of that name is replaced.")
  private Path csv;

  @Override
  public Integer call() {
    List<Path> inputs = new ArrayList<>(modelling.inputs());
    inputs.add(file);
    if (csv != null) {
      OutputFile.check(csv, inputs);
    }
    Bench bench = Bench.read(file);
    LengthUnit unit = output.length(bench);
    Rig rig = day.rig(bench);
    HadLight before = had.had(bench);
    AcclimationAnswer answer =
        AcclimationAnswer.of(
                bench.setup().source(),
                modelling.model(bench, spec.commandLine().getErr()),
                modelling.solver(),
                rig,
                day.program(bench, rig),
                place.in(bench, unit),
                had.first(),
                before,
                before.known().pace())
            .leaving(csv == null ? List.of() : List.of(csv.toString()));
    had.group(bench).flatMap(answer::unfit).ifPresent(spec.commandLine().getErr()::println);
    if (csv != null) {
      OutputFile.write(csv, ScheduleFile.text(answer.schedule()));
    }
    output.print(spec.commandLine().getOut(), answer, unit);
    return ExitCode.DONE;
  }
}
