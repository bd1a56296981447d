package parfield.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.function.Function;
import parfield.answer.Bench;
import parfield.answer.CarePictures;
import parfield.answer.FieldPrediction;
import parfield.answer.HomesAnswer;
import parfield.answer.Numbers;
import parfield.answer.Refusal;
import parfield.care.CoralGroup;
import parfield.care.DailyProgram;
import parfield.fit.LightModel;
import parfield.rig.Rig;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield homes}: which group of corals can live where. */
@Command(
    name = "homes",
    mixinStandardHelpOptions = true,
    header = "Say which corals can live where.",
    description = {
      "",
      "For each group of corals the share of the places, by height and part of the tank, where both"
          + " the highest PPFD of the day and its dose suit it. The setup may state its own groups"
          + " under livestock; the common ones are common practice, no source."
    })
final class HomesCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;
  @Mixin private Modelling modelling;
  @Mixin private DayOptions day;

  @Parameters(paramLabel = "SETUP", description = "The setup file (YAML).")
  private Path file;

  @Option(
      names = "--group",
      paramLabel = "GROUP",
      description = "Ask about this group of corals; once for each. Default: all.")
  private List<String> groups = new ArrayList<>();

  @Option(
      names = "--layers",
      paramLabel = "1|2|3",
      defaultValue = "3",
      description = "Layers that the water is cut into. Default: ${DEFAULT-VALUE}.")
  private int layers;

  @Option(
      names = "--parts",
      paramLabel = "1|3",
      defaultValue = "3",
      description = "Parts that its length is cut into. Default: ${DEFAULT-VALUE}.")
  private int parts;

  @Option(
      names = "--depth",
      paramLabel = "LENGTHS",
      converter = LengthsConverter.class,
      description = "Depths of planes that are told of too, as in 15,30 or 10:40:10.")
  private LengthsConverter.Lengths depths;

  @Option(
      names = "--svg",
      paramLabel = "OUT",
      description =
          "Leave a map of homes in this file; of several groups or depths each in a file of its own,"
              + " with group and depth before the ending.")
  private Path svg;

  @Option(
      names = "--section",
      paramLabel = "OUT",
      description =
          "Leave the homes on the upright plane through the middle; of several groups each in a file"
              + " of its own, with the group before the ending.")
  private Path section;

  @Override
  public Integer call() {
    if (svg != null && depths == null) {
      throw Refusal.of("--svg maps homes on a plane; no --depth was given", "add --depth 15");
    }
    if (layers < 1 || layers > 3) {
      throw Refusal.of(
          "the water is cut into 1 to 3 layers; got " + layers, "give --layers 3, or leave it out");
    }
    if (parts != 1 && parts != 3) {
      throw Refusal.of(
          "the length is cut into 1 or 3 parts; got " + parts, "give --parts 3, or leave it out");
    }
    Bench bench = Bench.read(file);
    LengthUnit unit = output.length(bench);
    List<Double> planes = depths == null ? List.of() : depths.metres(unit);
    bench.checkDepths(planes, unit);
    Rig rig = day.rig(bench);
    List<CoralGroup> who = DayOptions.groups(bench, groups);
    Map<Path, Function<HomesAnswer, String>> files = files(rig, who, planes, unit);
    List<Path> inputs = new ArrayList<>(modelling.inputs());
    inputs.add(file);
    List<String> left = OutputFile.check(inputs, files.keySet().toArray(Path[]::new));
    DailyProgram program = day.program(bench, rig);
    LightModel model = modelling.model(bench, spec.commandLine().getErr());
    HomesAnswer homes =
        HomesAnswer.of(
                bench.setup().source(), model, modelling.solver(), rig, program, who, layers, parts)
            .withPlanes(model, modelling.solver(), planes, FieldPrediction.CELL)
            .leaving(left);
    HomesAnswer answer =
        section == null
            ? homes
            : homes.withSection(model, modelling.solver(), FieldPrediction.CELL);
    files.forEach((target, picture) -> OutputFile.write(target, picture.apply(answer)));
    output.print(spec.commandLine().getOut(), answer, unit);
    return ExitCode.DONE;
  }

  /** The pictures that shall be left, by file. */
  private Map<Path, Function<HomesAnswer, String>> files(
      Rig rig, List<CoralGroup> who, List<Double> planes, LengthUnit unit) {
    Map<Path, Function<HomesAnswer, String>> files = new LinkedHashMap<>();
    for (int g = 0; g < who.size(); g++) {
      CoralGroup group = who.get(g);
      String name = who.size() == 1 ? "" : fileWord(who, g);
      for (int k = 0; k < planes.size() && svg != null; k++) {
        int plane = k;
        String depth = planes.size() == 1 ? "" : Numbers.length(planes.get(k), unit);
        String words = name.isEmpty() || depth.isEmpty() ? name + depth : name + "-" + depth;
        files.put(
            words.isEmpty() ? svg : OutputFile.with(svg, words),
            answer -> CarePictures.homes(rig, answer.planes().get(plane), group, unit));
      }
      if (section != null) {
        files.put(
            name.isEmpty() ? section : OutputFile.with(section, name),
            answer -> CarePictures.homes(rig, answer.section().orElseThrow(), group, unit));
      }
    }
    return files;
  }

  /** The name of a group as a part of a file's name; its number where another would be alike. */
  private static String fileWord(List<CoralGroup> who, int number) {
    String word = fileWord(who.get(number));
    long alike = who.stream().filter(group -> fileWord(group).equals(word)).count();
    return alike == 1 && !word.isEmpty() ? word : "group-" + (number + 1);
  }

  private static String fileWord(CoralGroup group) {
    return group.name().replaceAll("[^\\p{L}\\p{N}]+", "-");
  }
}
