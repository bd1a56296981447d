package parfield.answer;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parfield.plot.Axis;
import parfield.plot.Caption;
import parfield.plot.Curves;
import parfield.plot.CurvesSpec;
import parfield.plot.HeatMap;
import parfield.plot.HeatMapSpec;
import parfield.plot.Raster;
import parfield.plot.Scale;
import parfield.plot.Scene;
import parfield.plot.Series;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/** The light of a day as pictures. */
public final class CarePictures {
  private CarePictures() {}

  /** PPFD through the day at the answer's place. */
  public static String curve(DayAnswer answer, LengthUnit unit) {
    Series series =
        new Series(
            "PPFD",
            answer.curve().stream()
                .map(moment -> new Series.Point(moment.second(), moment.ppfd()))
                .toList());
    return Curves.svg(
        new CurvesSpec(
            new Caption(
                "PPFD through the day under " + answer.rig().name(), answer.summary(unit) + "."),
            new Axis(
                "time of day",
                "h",
                1 / 3600.0,
                Optional.empty(),
                Optional.of(new Scale(0, 86_400))),
            Axis.ppfd("PPFD"),
            List.of(series),
            List.of()));
  }

  /** The doses of one of the answer's planes. */
  public static String map(DayAnswer answer, int plane, LengthUnit unit) {
    DayAnswer.Plane of = answer.planes().get(plane);
    double[] values = of.dli().stream().mapToDouble(Estimate::value).toArray();
    Caption caption =
        new Caption(
            String.format(
                Locale.ROOT,
                "Daily light integral under %s, %s deep",
                answer.rig().name(),
                Numbers.withUnit(of.depth(), unit)),
            String.format(Locale.ROOT, "Mean %s %s.", DayAnswer.dose(of.mean()), DayAnswer.MOL));
    return HeatMap.svg(
        HeatMapSpec.of(
                caption,
                Scene.of(answer.rig().tank(), unit)
                    .atDepth(of.depth())
                    .withFixtures(answer.rig().hangings()),
                new Raster(of.cells().columns(), of.cells().rows(), of.cells().whole(values)))
            .withQuantity("DLI, " + DayAnswer.MOL));
  }
}
