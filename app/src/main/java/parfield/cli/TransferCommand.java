package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import parfield.answer.Advice;
import parfield.answer.Bench;
import parfield.answer.Transferred;
import parfield.field.FastSolver;
import parfield.fit.LightModel;
import parfield.formats.ModelFile;
import parfield.plan.Recommendation;
import parfield.plan.Verdict;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield transfer}: a light model of another tank, applied to this one. */
@Command(
    name = "transfer",
    mixinStandardHelpOptions = true,
    header = "Apply a light model of another tank to this one.",
    description = {
      "",
      "Recommends for the setup's tank by a model that was fitted elsewhere: how wrong that may be"
          + " and why, and the three readings that would confirm it. Readings that the setup states"
          + " (up to 40) update the model first."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:an option meets all demands (probability 0.9 or more)",
      "1:none surely does; the nearest is printed, with what stands in the way",
      "2:not done: a fault in a file or on the command line",
      "130:interrupted, after the best found so far was printed"
    })
final class TransferCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;

  @Parameters(
      paramLabel = "SETUP",
      description = "The setup file (YAML) of this tank, its fixtures named as the model's.")
  private Path file;

  @Option(
      names = "--model",
      required = true,
      paramLabel = "MODEL",
      description = "The model that was fitted in another tank.")
  private Path published;

  @Option(
      names = "--out",
      paramLabel = "FILE",
      description =
          "Where to leave the model of this tank (JSON); a file of that name is replaced.")
  private Path target;

  @Override
  public Integer call() {
    if (target != null) {
      OutputFile.check(target, List.of(file, published));
    }
    Bench bench = Bench.read(file);
    LengthUnit unit = output.length(bench);
    bench.demands(); // That there are none is to be told before any work.
    LightModel model = ModelFile.read(published);
    FastSolver solver = new FastSolver();
    PrintWriter err = spec.commandLine().getErr();
    PrintWriter out = spec.commandLine().getOut();
    try (Interruption interruption = new Interruption()) {
      Transferred transferred = Transferred.of(bench, model, solver);
      Recommendation recommendation;
      try (StatusLine status = StatusLine.on(err)) {
        recommendation =
            transferred.recommend(
                solver,
                progress -> status.show(progress.share(), Advice.words(progress, unit)),
                interruption::asked);
      }
      if (target != null) {
        ModelFile.write(transferred.model(), target);
      }
      output.print(
          out,
          transferred.answer(
              published.toString(),
              solver,
              recommendation,
              Optional.ofNullable(target).map(Path::toString)),
          unit);
      out.flush();
      if (interruption.asked()) {
        return ExitCode.INTERRUPTED;
      }
      return recommendation.best().standing() == Verdict.Standing.MET
          ? ExitCode.DONE
          : ExitCode.NEGATIVE;
    }
  }
}
