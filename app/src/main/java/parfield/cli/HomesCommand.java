package parfield.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import parfield.answer.Bench;
import parfield.answer.HomesAnswer;
import parfield.answer.Refusal;
import parfield.rig.Rig;
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

  @Override
  public Integer call() {
    if (layers < 1 || layers > 3) {
      throw Refusal.of(
          "the water is cut into 1 to 3 layers; got " + layers, "give --layers 3, or leave it out");
    }
    if (parts != 1 && parts != 3) {
      throw Refusal.of(
          "the length is cut into 1 or 3 parts; got " + parts, "give --parts 3, or leave it out");
    }
    Bench bench = Bench.read(file);
    Rig rig = day.rig(bench);
    HomesAnswer answer =
        HomesAnswer.of(
            bench.setup().source(),
            modelling.model(bench, spec.commandLine().getErr()),
            modelling.solver(),
            rig,
            day.program(rig),
            DayOptions.groups(bench, groups),
            layers,
            parts);
    output.print(spec.commandLine().getOut(), answer, output.length(bench));
    return ExitCode.DONE;
  }
}
