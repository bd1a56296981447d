package parfield.cli;

import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import parfield.answer.Bench;
import parfield.answer.PowerAnswer;
import parfield.rig.Rig;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield power}: what a rig draws, costs and warms. */
@Command(
    name = "power",
    mixinStandardHelpOptions = true,
    header = "Say what a rig draws, costs and warms.",
    description = {
      "",
      "Watts and photons per joule at the rig's setting; energy, cost and photons of a day and a"
          + " month; heat into water and room. An estimate, with what it rests on. Every channel"
          + " must state its watts in the setup."
    })
final class PowerCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;
  @Mixin private Modelling modelling;
  @Mixin private DayOptions day;

  @Parameters(paramLabel = "SETUP", description = "The setup file (YAML).")
  private Path file;

  @Option(names = "--tariff", paramLabel = "PRICE", description = "Price of a kilowatt-hour.")
  private Double tariff;

  @Option(
      names = "--currency",
      paramLabel = "TEXT",
      defaultValue = "",
      description = "What the price is in, as in EUR; shown, not converted.")
  private String currency;

  @Override
  public Integer call() {
    Bench bench = Bench.read(file);
    Rig rig = day.rig(bench);
    PowerAnswer answer =
        PowerAnswer.of(
            bench.setup().source(),
            modelling.model(bench, spec.commandLine().getErr()),
            rig,
            day.program(bench, rig),
            tariff == null ? OptionalDouble.empty() : OptionalDouble.of(tariff),
            currency);
    output.print(spec.commandLine().getOut(), answer, output.length(bench));
    return ExitCode.DONE;
  }
}
