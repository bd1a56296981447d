package parfield.answer;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import parfield.fit.FitReport;
import parfield.fit.LightModel;
import parfield.plan.Progress;
import parfield.plan.Recommendation;
import parfield.plan.Search;
import parfield.units.LengthUnit;

/** What is asked of the planner for a bench, and how its answer is put. */
public final class Advice {
  private Advice() {}

  /**
   * Where a bench's planner looks, unless it is told otherwise.
   *
   * @param bench with rigs
   * @param plane depth to report on beside the water [m]
   */
  public static Search search(Bench bench, double plane) {
    Search search = Search.around(List.copyOf(bench.setup().rigs().values()), plane);
    return bench.setup().room().height().isPresent()
        ? search.withCeiling(bench.setup().room().height().getAsDouble())
        : search;
  }

  /** The answer to a bench, with what its model was measured in. */
  public static RecommendationAnswer answer(
      Bench bench, LightModel model, Recommendation recommendation) {
    Set<String> fitted =
        model.report().residuals().stream()
            .map(FitReport.Residual::survey)
            .collect(Collectors.toSet());
    return new RecommendationAnswer(
        bench.setup().source(),
        bench.setup().surveys().values().stream()
            .filter(survey -> fitted.contains(survey.name()))
            .toList(),
        model.report().statements(),
        recommendation);
  }

  /** How far a search has come, in a line. */
  public static String words(Progress progress, LengthUnit unit) {
    return String.format(
        Locale.ROOT,
        "best so far %s: %s, %s high",
        progress.best().probability().inWords(),
        progress.best().arrangement().inWords(unit),
        Numbers.withUnit(progress.best().height(), unit));
  }
}
