package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import parfield.answer.Bench;
import parfield.answer.CarePictures;
import parfield.answer.DayAnswer;
import parfield.answer.FieldPrediction;
import parfield.answer.Numbers;
import parfield.answer.Refusal;
import parfield.rig.Rig;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield day}: PPFD through the day and its dose. */
@Command(
    name = "day",
    mixinStandardHelpOptions = true,
    header = "Say how much light a day gives.",
    description = {
      "",
      "PPFD through the day and the daily light integral at a place, with the groups of corals that"
          + " could live there, and the dose on whole planes. Ramps are integrated exactly, through"
          + " the output curves of the dials."
    })
final class DayCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;
  @Mixin private Modelling modelling;
  @Mixin private DayOptions day;
  @Mixin private PlaceOption place;

  @Parameters(paramLabel = "SETUP", description = "The setup file (YAML).")
  private Path file;

  @Option(
      names = "--depth",
      paramLabel = "LENGTHS",
      converter = LengthsConverter.class,
      description = "Depths of planes whose doses are wanted, as in 15,30 or 10:40:10.")
  private LengthsConverter.Lengths depths;

  @Option(
      names = "--group",
      paramLabel = "GROUP",
      description = "Ask about this group of corals; once for each. Default: all.")
  private List<String> groups = new ArrayList<>();

  @Option(
      names = "--svg",
      paramLabel = "OUT",
      description = "Leave the curve of the day in this file; one of that name is replaced.")
  private Path svg;

  @Option(
      names = "--map",
      paramLabel = "OUT",
      description =
          "Leave a map of the dose at each --depth in this file; with several depths, each in a file"
              + " of its own, with the depth before the ending, all on one scale.")
  private Path map;

  @Override
  public Integer call() {
    if (map != null && depths == null) {
      throw Refusal.of("--map draws the dose of a plane; no --depth was given", "add --depth 15");
    }
    List<Path> inputs = new ArrayList<>(modelling.inputs());
    inputs.add(file);
    List<String> left = new ArrayList<>(OutputFile.check(inputs, svg));
    Bench bench = Bench.read(file);
    LengthUnit unit = output.length(bench);
    Rig rig = day.rig(bench);
    List<Double> planes = depths == null ? List.of() : depths.metres(unit);
    bench.checkDepths(planes, unit);
    List<Path> maps = maps(planes, unit);
    left.addAll(OutputFile.check(inputs, maps.toArray(Path[]::new)));
    PrintWriter err = spec.commandLine().getErr();
    DayAnswer answer =
        DayAnswer.of(
                bench.setup().source(),
                modelling.model(bench, err),
                modelling.solver(),
                rig,
                day.program(bench, rig),
                place.in(bench, unit),
                planes,
                FieldPrediction.CELL,
                DayOptions.groups(bench, groups))
            .leaving(left);
    if (svg != null) {
      OutputFile.write(svg, CarePictures.curve(answer, unit));
    }
    for (int k = 0; k < maps.size(); k++) {
      OutputFile.write(
          maps.get(k),
          CarePictures.map(rig, answer.planes().get(k), CarePictures.scale(answer.planes()), unit));
    }
    output.print(spec.commandLine().getOut(), answer, unit);
    return ExitCode.DONE;
  }

  private List<Path> maps(List<Double> planes, LengthUnit unit) {
    if (map == null || planes.size() == 1) {
      return map == null ? List.of() : List.of(map);
    }
    return planes.stream().map(depth -> OutputFile.with(map, Numbers.length(depth, unit))).toList();
  }
}
