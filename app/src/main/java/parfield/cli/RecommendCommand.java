package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import parfield.answer.Advice;
import parfield.answer.Bench;
import parfield.fit.LightModel;
import parfield.plan.Demands;
import parfield.plan.Planner;
import parfield.plan.Recommendation;
import parfield.plan.Search;
import parfield.plan.Verdict;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield recommend}: what to hang and to dial. */
@Command(
    name = "recommend",
    mixinStandardHelpOptions = true,
    header = "Recommend height, number, spacing and dials.",
    description = {
      "",
      "Looks for rigs that meet the demands of the setup and says with what probability they do."
          + " Ctrl-C stops the search and prints the best found so far."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:an option meets all demands (probability 0.9 or more)",
      "1:none surely does; the nearest is printed, with what stands in the way",
      "2:not done: a fault in a file or on the command line",
      "130:interrupted, after the best found so far was printed"
    })
final class RecommendCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;
  @Mixin private Modelling modelling;
  @Mixin private Searching searching;

  @Parameters(paramLabel = "SETUP", description = "The setup file (YAML).")
  private Path file;

  @Override
  public Integer call() {
    Bench bench = Bench.read(file);
    LengthUnit unit = output.length(bench);
    Demands demands = bench.demands();
    Search search = searching.search(bench, unit);
    PrintWriter err = spec.commandLine().getErr();
    LightModel model = modelling.model(bench, err);
    try (Interruption interruption = new Interruption()) {
      Recommendation recommendation =
          recommend(modelling, model, demands, search, interruption, unit, err);
      PrintWriter out = spec.commandLine().getOut();
      output.print(out, Advice.answer(bench, model, recommendation), unit);
      out.flush();
      if (interruption.asked()) {
        return ExitCode.INTERRUPTED;
      }
      return recommendation.best().standing() == Verdict.Standing.MET
          ? ExitCode.DONE
          : ExitCode.NEGATIVE;
    }
  }

  private static Recommendation recommend(
      Modelling modelling,
      LightModel model,
      Demands demands,
      Search search,
      Interruption interruption,
      LengthUnit unit,
      PrintWriter err) {
    try (StatusLine status = StatusLine.on(err)) {
      return new Planner(modelling.solver())
          .recommend(
              model,
              demands,
              search,
              progress -> status.show(progress.share(), Advice.words(progress, unit)),
              interruption::asked);
    }
  }
}
