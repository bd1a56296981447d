package parfield.plot;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Box;
import parfield.aquascape.Ellipsoid;
import parfield.aquascape.Rock;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.optics.Reflectance;
import parfield.rig.Hanging;
import parfield.survey.Band;
import parfield.survey.Spot;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.tank.Tank;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/** Invented pictures to look at: {@code main} writes them into a folder; tests ask them. */
final class Samples {
  static final Tank TANK = Tank.of(0.9, 0.6, 0.5);
  static final Band SOFT = new Band("soft", 75, 150);
  static final Band STONY = new Band("stony", 250, 400);

  private Samples() {}

  public static void main(String[] args) throws IOException {
    Path folder = Files.createDirectories(Path.of(args[0]));
    for (Map.Entry<String, String> picture : all().entrySet()) {
      Files.writeString(folder.resolve(picture.getKey() + ".svg"), picture.getValue());
    }
  }

  static Map<String, String> all() {
    Map<String, String> all = new LinkedHashMap<>();
    all.put("heat", HeatMap.svg(heat()));
    all.put("heat-inch", HeatMap.svg(heatInches()));
    all.put("heat-bare", HeatMap.svg(bare()));
    all.put("band", BandMap.svg(band()));
    all.put("section", Section.svg(section()));
    all.put("heat-rocks", HeatMap.svg(heatWithRocks()));
    all.put("section-rocks", Section.svg(sectionWithRocks()));
    all.put("curves", Curves.svg(curves()));
    all.put("depth", Curves.svg(byDepth()));
    all.putAll(SpectrumSamples.all());
    return all;
  }

  static HeatMapSpec heat() {
    List<Spot> readings = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      for (int j = 0; j < 6; j++) {
        double x = 0.05 + 0.8 * i / 7;
        double y = 0.05 + 0.5 * j / 5;
        readings.add(new Spot(new Place(x, y, 0.15), light(x, y, 0.15)));
      }
    }
    return HeatMapSpec.of(
            new Caption(
                "Pendant at 15 cm, 15 cm deep",
                "Sample, invented: mean 214, lowest 60, highest 405 µmol m⁻² s⁻¹;"
                    + " 38 % of the plane in soft 75–150."),
            Scene.of(TANK, LengthUnit.CM)
                .withFixtures(List.of(pendant(0.45, 0.15)))
                .withReadings(readings)
                .withMeasured(new Rectangle(0.05, 0.85, 0.05, 0.55)),
            raster(36, 24, TANK.width(), (x, y) -> light(x, y, 0.15)))
        .withBands(List.of(SOFT, STONY));
  }

  static HeatMapSpec heatInches() {
    return HeatMapSpec.of(
            new Caption("Two pendants at 10 in, 12 in deep, on a scale of 0 to 300", ""),
            Scene.of(Tank.of(1.8, 0.6, 0.5), LengthUnit.INCH)
                .withFixtures(List.of(pendant(0.5, 0.25), pendant(1.3, 0.25))),
            raster(24, 8, 0.6, (x, y) -> light(2 * x - 0.05, y, 0.3) + light(2 * x - 0.85, y, 0.3)))
        .withScale(new Scale(0, 300))
        .withBands(List.of(SOFT, new Band("low", 30, 75)));
  }

  static HeatMapSpec bare() {
    Tank cube = Tank.of(0.61, 0.61, 0.5);
    return HeatMapSpec.of(
        new Caption("Single fixture, 6 × 6 readings", "Sample, invented."),
        Scene.of(cube, LengthUnit.CM),
        raster(6, 6, 0.9, (x, y) -> light(x, y * 0.7, 0.2)));
  }

  static BandMapSpec band() {
    DoubleBinaryOperator value = (x, y) -> light(x, y, 0.25);
    return new BandMapSpec(
        new Caption(
            "Where the plane 25 cm deep meets the band soft 75–150",
            "Sample, invented: decided where the whole 5–95 % interval falls on one side."),
        Scene.of(TANK, LengthUnit.CM)
            .withFixtures(List.of(pendant(0.45, 0.15)))
            .withMeasured(new Rectangle(0.05, 0.85, 0.05, 0.55)),
        raster(36, 24, TANK.width(), (x, y) -> 0.93 * value.applyAsDouble(x, y)),
        raster(36, 24, TANK.width(), (x, y) -> 1.07 * value.applyAsDouble(x, y)),
        SOFT);
  }

  static HeatMapSpec section() {
    return HeatMapSpec.of(
            new Caption("Section along the middle, 30 cm from the front", "Sample, invented."),
            Scene.of(TANK, LengthUnit.CM)
                .withFixtures(List.of(pendant(0.25, 0.2), pendant(0.66, 0.2))),
            raster(
                45,
                25,
                TANK.depth(),
                (x, depth) -> light(x + 0.2, 0.3, depth) + light(x - 0.21, 0.3, depth)))
        .withBands(List.of(STONY));
  }

  /** Rocks at a depth of 30 cm; upright, in the middle of the tank, only one of them is cut. */
  static Scene rocky() {
    Tank tank =
        TANK.withAquascape(
            Aquascape.of(
                List.of(
                    new Rock(
                        "block",
                        new Box(0.2, 0.4, 0.35, 0.2, 0.12, 0.3, 0.4),
                        Reflectance.gray(0.2)),
                    new Rock(
                        "boulder",
                        new Ellipsoid(0.6, 0.3, 0.4, 0.15, 0.1, 0.12, 0),
                        Reflectance.gray(0.2)))));
    return Scene.of(tank, LengthUnit.CM).withFixtures(List.of(pendant(0.45, 0.15)));
  }

  static HeatMapSpec heatWithRocks() {
    return HeatMapSpec.of(
            new Caption("Plane with rocks, 35 cm deep", "Sample, invented."),
            rocky().atDepth(0.35),
            raster(36, 24, TANK.width(), (x, y) -> light(x, y, 0.35)))
        .withBands(List.of(SOFT));
  }

  static HeatMapSpec sectionWithRocks() {
    return HeatMapSpec.of(
        new Caption("Section with rocks", "Sample, invented."),
        rocky(),
        raster(45, 25, TANK.depth(), (x, depth) -> light(x, 0.3, depth)));
  }

  static CurvesSpec curves() {
    return new CurvesSpec(
        new Caption(
            "What mounting height does",
            "Sample, invented: retention falls below 85 % above 24 cm; coverage is best at 26 cm."),
        Axis.length("mounting height", LengthUnit.CM),
        Axis.percent("share"),
        List.of(
            series("retention", h -> Math.exp(-0.9 * (h - 0.1)), 0.02),
            series("evenness U₀", h -> 0.25 + 1.6 * (h - 0.1), 0.03),
            series("coverage of soft", h -> 0.72 - 9 * Math.pow(h - 0.26, 2), 0.05)),
        List.of(new Threshold("at least 70 %", 0.7), new Threshold("keep 85 %", 0.85)));
  }

  static CurvesSpec byDepth() {
    return new CurvesSpec(
        new Caption("Coverage by depth", ""),
        Axis.length("depth", LengthUnit.INCH),
        Axis.percent("coverage").withRange(new Scale(0, 1)),
        List.of(
            series("soft", h -> 0.9 - 4 * Math.pow(h - 0.3, 2), 0.04),
            series("stony", h -> 0.86 - 1.9 * h, 0.04),
            series("polyps that like shade", h -> 0.1 + 0.2 * h, 0.03),
            series("clams", h -> 0.12 + 0.12 * h, 0.02)),
        List.of());
  }

  private static Series series(String name, DoubleUnaryOperator curve, double half) {
    List<Series.Point> points = new ArrayList<>();
    for (double h = 0.1; h < 0.405; h += 0.02) {
      double value = curve.applyAsDouble(h);
      points.add(new Series.Point(h, new Estimate(value, value - half, value + half)));
    }
    return new Series(name, points);
  }

  static Hanging pendant(double x, double height) {
    Fixture fixture =
        new Fixture(
            "pendant",
            0.4,
            0.16,
            List.of(new Emitter(-0.12, 0, 0.05), new Emitter(0.12, 0, 0.05)),
            List.of(Channel.of("white", new CosinePower(100, 2))),
            List.of());
    return Hanging.level(fixture, x, 0.3, height);
  }

  /** Two clusters 24 cm apart, inverse square, in the units of PPFD; invented. */
  private static double light(double x, double y, double depth) {
    double total = 0;
    for (double cluster : new double[] {0.33, 0.57}) {
      double h = 0.15 + depth / 1.33;
      double r2 = Math.pow(x - cluster, 2) + Math.pow(y - 0.3, 2);
      total += 28 * h * h / Math.pow(h * h + r2, 2);
    }
    return total * 0.9 + 12;
  }

  /** A raster over a plane as long as the tank. */
  static Raster raster(int columns, int rows, double second, DoubleBinaryOperator value) {
    double[] values = new double[columns * rows];
    for (int i = 0; i < values.length; i++) {
      int row = i / columns;
      int column = i % columns;
      values[i] =
          value.applyAsDouble(
              TANK.length() * (column + 0.5) / columns, second * (row + 0.5) / rows);
    }
    return new Raster(columns, rows, values);
  }
}
