package parfield.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import parfield.plan.BandCoverage;
import parfield.plan.Demand;
import parfield.plan.Figures;
import parfield.plan.Option;
import parfield.plan.Recommendation;
import parfield.plot.Axis;
import parfield.plot.Caption;
import parfield.plot.Curves;
import parfield.plot.CurvesSpec;
import parfield.plot.Series;
import parfield.plot.Threshold;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/** What height and spacing change, as curves with their intervals. */
public final class ChoicePictures {
  private ChoicePictures() {}

  /** Figures of the water volume over mounting height; empty where only one was looked at. */
  public static Optional<String> heights(Recommendation recommendation, LengthUnit unit) {
    return curves(
        recommendation,
        recommendation.heightSweep(),
        Option::height,
        "Figures of the water over mounting height",
        String.format(
            Locale.ROOT,
            "%s, each at its own best dials.",
            recommendation.best().arrangement().inWords(unit)),
        Axis.length("mounting height", unit));
  }

  /** Figures of the water volume over spacing; empty where only one was looked at. */
  public static Optional<String> spacings(Recommendation recommendation, LengthUnit unit) {
    return curves(
        recommendation,
        recommendation.spacingSweep(),
        option -> option.arrangement().spacing(),
        "Figures of the water over spacing",
        String.format(
            Locale.ROOT,
            "%d fixtures %s high, each at its own best dials.",
            recommendation.best().arrangement().count(),
            Numbers.withUnit(recommendation.best().height(), unit)),
        Axis.length("centre to centre", unit));
  }

  private static Optional<String> curves(
      Recommendation recommendation,
      List<Option> sweep,
      ToDoubleFunction<Option> along,
      String title,
      String summary,
      Axis horizontal) {
    if (sweep.size() < 2) {
      return Optional.empty();
    }
    List<Series> series = new ArrayList<>();
    series.add(series("retention", sweep, along, Figures::retention));
    series.add(series("evenness U₀", sweep, along, Figures::evenness));
    series.add(series("ends/centre", sweep, along, Figures::endsToCentre));
    List<BandCoverage> bands = sweep.get(0).figures().get(0).coverage();
    for (int b = 0; b < bands.size() && series.size() < CurvesSpec.MOST_SERIES; b++) {
      int band = b;
      series.add(
          series(
              "in " + bands.get(b).band().name(),
              sweep,
              along,
              figures -> figures.coverage().get(band).share()));
    }
    return Optional.of(
        Curves.svg(
            new CurvesSpec(
                new Caption(title, summary),
                horizontal,
                Axis.percent("of the water, or ratio"),
                series,
                thresholds(recommendation))));
  }

  private static Series series(
      String name,
      List<Option> sweep,
      ToDoubleFunction<Option> along,
      Function<Figures, Estimate> figure) {
    return new Series(
        name,
        sweep.stream()
            .map(
                option ->
                    new Series.Point(
                        along.applyAsDouble(option), figure.apply(option.figures().get(0))))
            .toList());
  }

  private static List<Threshold> thresholds(Recommendation recommendation) {
    List<Threshold> thresholds = new ArrayList<>();
    for (Demand demand : recommendation.demands().all()) {
      if (demand instanceof Demand.Coverage coverage) {
        thresholds.add(new Threshold("wanted in " + coverage.band().name(), coverage.share()));
      } else if (demand instanceof Demand.Retention retention) {
        thresholds.add(new Threshold("wanted retention", retention.atLeast()));
      }
    }
    return thresholds;
  }
}
