package parfield.cli;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import parfield.answer.Bench;
import parfield.answer.StatsAnswer;
import parfield.survey.Retention;
import parfield.survey.Survey;
import parfield.survey.SurveyStatistics;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield stats}: the statistics of the readings. */
@Command(
    name = "stats",
    mixinStandardHelpOptions = true,
    header = "Statistics of the readings.",
    description = {
      "",
      "For each survey and depth: mean, extremes and where, evenness, ends-to-centre ratio, share of"
          + " readings in each band; retention; readings that look wrong."
    })
final class StatsCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;

  @Parameters(paramLabel = "SETUP", description = "The setup file (YAML).")
  private Path file;

  @Override
  public Integer call() {
    Bench bench = Bench.read(file);
    output.print(spec.commandLine().getOut(), answer(bench), output.length(bench));
    return ExitCode.DONE;
  }

  static StatsAnswer answer(Bench bench) {
    List<Survey> surveys = bench.surveys();
    Survey lowest =
        surveys.stream()
            .min(Comparator.comparingDouble(survey -> survey.rig().meanHeight()))
            .orElseThrow();
    return new StatsAnswer(
        surveys.stream()
            .map(
                survey ->
                    new StatsAnswer.Figures(
                        survey,
                        SurveyStatistics.of(survey, bench.bands(), List.of()),
                        survey.name().equals(lowest.name())
                            ? Optional.empty()
                            : Optional.of(kept(survey, lowest))))
            .toList(),
        CheckCommand.suspects(bench));
  }

  private static StatsAnswer.Kept kept(Survey survey, Survey lowest) {
    try {
      return new StatsAnswer.Kept(
          lowest.name(), Optional.of(Retention.of(survey, lowest).ratio()), "");
    } catch (IllegalArgumentException e) {
      return new StatsAnswer.Kept(lowest.name(), Optional.empty(), e.getMessage());
    }
  }
}
