package parfield.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import parfield.answer.Bench;
import parfield.answer.CheckAnswer;
import parfield.answer.SuspectReadings;
import parfield.plan.Demands;
import parfield.survey.SuspiciousReadings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield check}: every fault of a setup, or what it holds. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    header = "Tell every fault of a setup, or what it holds.",
    description = {
      "",
      "All faults of the setup and of the files it names are told at once, each with its place and"
          + " cure; without faults, what it holds, what was assumed, and which readings look"
          + " wrong."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:the setup has no faults",
      "1:with --strict: it has none, but a reading looks wrong",
      "2:it has faults, or cannot be read"
    })
final class CheckCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;

  @Parameters(paramLabel = "SETUP", description = "The setup file (YAML).")
  private Path file;

  @Option(names = "--strict", description = "End with exit code 1 if a reading looks wrong.")
  private boolean strict;

  @Override
  public Integer call() {
    Bench bench = Bench.read(file);
    CheckAnswer answer = answer(bench);
    output.print(spec.commandLine().getOut(), answer, output.length(bench));
    return strict && answer.anySuspicion() ? ExitCode.NEGATIVE : ExitCode.DONE;
  }

  static CheckAnswer answer(Bench bench) {
    Optional<Demands> demands =
        bench.setup().demands().isEmpty() && bench.setup().bands().isEmpty()
            ? Optional.empty()
            : Optional.of(bench.demands());
    return new CheckAnswer(bench.setup(), demands, suspects(bench));
  }

  /** The readings of all surveys that look wrong, surveys without any left out. */
  static List<SuspectReadings> suspects(Bench bench) {
    return bench.setup().surveys().values().stream()
        .map(survey -> new SuspectReadings(survey, SuspiciousReadings.find(survey)))
        .filter(suspects -> !suspects.suspicions().isEmpty())
        .toList();
  }
}
