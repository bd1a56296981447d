package parfield.answer;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import parfield.field.Cells;
import parfield.formats.Setup;
import parfield.plot.BandMap;
import parfield.plot.BandMapSpec;
import parfield.plot.Caption;
import parfield.plot.HeatMap;
import parfield.plot.HeatMapSpec;
import parfield.plot.Raster;
import parfield.plot.Scale;
import parfield.plot.Scene;
import parfield.plot.Section;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.survey.Spot;
import parfield.survey.Survey;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/**
 * The predicted light of one rig as pictures.
 *
 * @param setup of the bench
 * @param rig whose light it is
 * @param unit of lengths
 */
public record FieldPictures(Setup setup, Rig rig, LengthUnit unit) {
  /** Readings of this depth belong to a plane [m]. */
  private static final double SAME_DEPTH = 1e-3;

  /** One scale for all planes of a field, so that their maps can be compared. */
  public static Scale scale(FieldAnswer field) {
    return Scale.of(
        IntStream.range(0, field.planes().size())
            .mapToObj(plane -> raster(field, plane, field.asShown(), Estimate::value))
            .toList());
  }

  /** The PPFD of a plane with isolines, band ends, fixtures and the readings of this rig. */
  public String map(FieldAnswer field, int plane, Scale scale) {
    FieldAnswer.Plane figures = field.planes().get(plane);
    Caption caption =
        new Caption(
            String.format(
                Locale.ROOT,
                "PPFD under %s, %s deep",
                rig.name(),
                Numbers.withUnit(figures.depth(), unit)),
            String.format(Locale.ROOT, "Mean %s %s.", Numbers.ppfd(figures.mean()), Numbers.PPFD));
    return HeatMap.svg(
        HeatMapSpec.of(
                caption,
                scene(figures.depth()),
                raster(field, plane, field.asShown(), Estimate::value))
            .withScale(scale)
            .withBands(figures.bands()));
  }

  /** Where a plane is below, in or above a band, and where that is too close to call. */
  public String bandMap(FieldAnswer field, int plane, Band band) {
    FieldAnswer.Plane figures = field.planes().get(plane);
    Estimate share = figures.coverage().get(figures.bands().indexOf(band));
    Caption caption =
        new Caption(
            String.format(
                Locale.ROOT,
                "Band %s under %s, %s deep",
                band.name(),
                rig.name(),
                Numbers.withUnit(figures.depth(), unit)),
            String.format(Locale.ROOT, "%s %% of the area inside.", Numbers.percent(share)));
    return BandMap.svg(
        new BandMapSpec(
            caption,
            scene(figures.depth()),
            raster(field, plane, field.withMeterScale(), Estimate::low),
            raster(field, plane, field.withMeterScale(), Estimate::high),
            band));
  }

  /**
   * The PPFD on the upright plane through the middle of the tank, seen from the front.
   *
   * @param ppfd on its equal cells, row by row from the water line down
   */
  public String section(Raster ppfd, List<Band> bands) {
    Caption caption =
        new Caption(
            String.format(
                Locale.ROOT,
                "PPFD under %s, section %s from the front pane",
                rig.name(),
                Numbers.withUnit(rig.tank().width() / 2, unit)),
            "");
    Scene scene = Scene.of(rig.tank(), unit).withFixtures(rig.hangings());
    return Section.svg(HeatMapSpec.of(caption, scene, ppfd).withBands(bands));
  }

  private Scene scene(double depth) {
    Scene scene =
        Scene.of(rig.tank(), unit)
            .atDepth(depth)
            .withFixtures(rig.hangings())
            .withReadings(
                setup.surveys().values().stream()
                    .filter(survey -> survey.rig().equals(rig))
                    .flatMap(survey -> spots(survey, depth).stream())
                    .toList());
    List<Place> measured =
        setup.surveys().values().stream()
            .flatMap(survey -> survey.readings().stream())
            .map(reading -> reading.place())
            .toList();
    double left = measured.stream().mapToDouble(Place::x).min().orElse(0);
    double right = measured.stream().mapToDouble(Place::x).max().orElse(0);
    double front = measured.stream().mapToDouble(Place::y).min().orElse(0);
    double back = measured.stream().mapToDouble(Place::y).max().orElse(0);
    return right > left && back > front
        ? scene.withMeasured(new Rectangle(left, right, front, back))
        : scene;
  }

  private static List<Spot> spots(Survey survey, double depth) {
    double[] ppfd = survey.ppfd();
    return IntStream.range(0, ppfd.length)
        .mapToObj(i -> new Spot(survey.readings().get(i).place(), ppfd[i]))
        .filter(spot -> Math.abs(spot.place().depth() - depth) < SAME_DEPTH)
        .toList();
  }

  /** One plane of a field; planes lie one after the other, each x fastest. */
  private static Raster raster(
      FieldAnswer field, int plane, List<Estimate> all, ToDoubleFunction<Estimate> end) {
    int from = 0;
    for (int k = 0; k < plane; k++) {
      from += field.planes().get(k).cells().size();
    }
    Cells cells = field.planes().get(plane).cells();
    double[] values = all.subList(from, from + cells.size()).stream().mapToDouble(end).toArray();
    return new Raster(cells.columns(), cells.rows(), cells.whole(values));
  }
}
