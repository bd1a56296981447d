package parfield.answer;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parfield.care.CoralGroup;
import parfield.plot.Axis;
import parfield.plot.Caption;
import parfield.plot.Curves;
import parfield.plot.CurvesSpec;
import parfield.plot.HeatMap;
import parfield.plot.HeatMapSpec;
import parfield.plot.HomeMap;
import parfield.plot.HomeMapSpec;
import parfield.plot.Scale;
import parfield.plot.Scene;
import parfield.plot.Series;
import parfield.rig.Rig;
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

  /** One scale for the doses of all planes, so that their maps can be compared. */
  public static Scale scale(List<DayPlane> planes) {
    return Scale.of(
        planes.stream().map(plane -> plane.raster(plane.light().dli(), Estimate::value)).toList());
  }

  /** The doses of a level plane. */
  public static String map(Rig rig, DayPlane plane, Scale scale, LengthUnit unit) {
    Caption caption =
        new Caption(
            String.format(
                Locale.ROOT, "Daily light integral under %s, %s", rig.name(), plane.where(unit)),
            plane.doses());
    return HeatMap.svg(
        HeatMapSpec.of(
                caption,
                scene(rig, plane, unit),
                plane.raster(plane.light().dli(), Estimate::value))
            .withScale(scale)
            .withQuantity("DLI, " + DayAnswer.MOL));
  }

  /** Where a plane, level or upright, is home for a group. */
  public static String homes(Rig rig, DayPlane plane, CoralGroup group, LengthUnit unit) {
    Estimate[] peak = plane.light().peak();
    Estimate[] dli = plane.light().dli();
    HomeMapSpec spec =
        new HomeMapSpec(
            new Caption(
                String.format(
                    Locale.ROOT,
                    "Homes for %s under %s, %s",
                    group.name(),
                    rig.name(),
                    plane.where(unit)),
                plane.standing(group)),
            scene(rig, plane, unit),
            plane.raster(peak, Estimate::low),
            plane.raster(peak, Estimate::high),
            plane.raster(dli, Estimate::low),
            plane.raster(dli, Estimate::high),
            group);
    return plane.depth().isPresent() ? HomeMap.plan(spec) : HomeMap.section(spec);
  }

  private static Scene scene(Rig rig, DayPlane plane, LengthUnit unit) {
    Scene scene = Scene.of(rig.tank(), unit).withFixtures(rig.hangings());
    return plane.depth().isPresent() ? scene.atDepth(plane.depth().getAsDouble()) : scene;
  }
}
