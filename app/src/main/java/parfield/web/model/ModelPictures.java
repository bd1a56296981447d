package parfield.web.model;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import parfield.answer.Numbers;
import parfield.fit.FitReport;
import parfield.fit.Truth;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.plot.Caption;
import parfield.plot.PolarChart;
import parfield.plot.PolarChartSpec;
import parfield.plot.ResidualMap;
import parfield.plot.ResidualMapSpec;
import parfield.plot.Scatter;
import parfield.plot.ScatterSpec;
import parfield.plot.Scene;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.units.Estimate;
import parfield.units.LengthUnit;
import parfield.web.bench.OpenBench;
import parfield.web.bench.StoredModel;

/** A light model as pictures, drawn when they are asked for. */
public final class ModelPictures {
  /** Angle between two intensities of a polar chart [deg]. */
  private static final int STEP = 2;

  private final OpenBench bench;
  private final StoredModel stored;
  private final LengthUnit unit;
  private final Map<String, Picture> all = new LinkedHashMap<>();
  private final Map<String, Supplier<String>> drawings = new LinkedHashMap<>();

  /**
   * A picture.
   *
   * @param name of its file
   * @param title of it
   * @param summary what it shows, in a sentence
   */
  public record Picture(String name, String title, String summary) {}

  ModelPictures(OpenBench bench, StoredModel stored, LengthUnit unit) {
    this.bench = bench;
    this.stored = stored;
    this.unit = unit;
    lamps();
    scatter();
    if (stored.current()) {
      residuals();
    }
  }

  /** What there is to see. */
  List<Picture> all() {
    return List.copyOf(all.values());
  }

  /** A picture by its name. */
  Optional<String> named(String name) {
    return Optional.ofNullable(drawings.get(name)).map(Supplier::get);
  }

  private void add(String name, Caption caption, Supplier<String> drawing) {
    all.put(name, new Picture(name, caption.title(), caption.summary()));
    drawings.put(name, drawing);
  }

  private void lamps() {
    Map<String, Fixture> fixtures = bench.setup().map(setup -> setup.fixtures()).orElse(Map.of());
    stored
        .model()
        .best()
        .distributions()
        .forEach(
            (fixture, channels) -> {
              for (int c = 0; c < channels.size(); c++) {
                lamp(fixture, c, channels.get(c), fixtures.get(fixture));
              }
            });
  }

  private void lamp(String fixture, int channel, IntensityDistribution best, Fixture stated) {
    String name =
        stated != null && channel < stated.channels().size()
            ? stated.channels().get(channel).name()
            : "channel " + (channel + 1);
    double beam = beamAngle(best);
    Caption caption =
        new Caption(
            "Intensity of one emitter of " + fixture + ", " + name,
            String.format(
                Locale.ROOT,
                "%s µmol s⁻¹ sr⁻¹ straight down; half of it within %.0f° from side to side, along"
                    + " the fixture.",
                Numbers.significant(best.intensity(0, 0)),
                Math.toDegrees(beam)));
    add(
        String.format(Locale.ROOT, "lamp-%d-%d.svg", all.size(), channel),
        caption,
        () ->
            PolarChart.svg(
                new PolarChartSpec(
                    caption,
                    "µmol s⁻¹ sr⁻¹",
                    best.axiallySymmetric()
                        ? List.of(lobe("all around", fixture, channel, best, 0))
                        : List.of(
                            lobe("along the fixture", fixture, channel, best, 0),
                            lobe("across it", fixture, channel, best, Math.PI / 2)))));
  }

  /** Full angle within which the intensity along the fixture is half of that straight down. */
  private static double beamAngle(IntensityDistribution best) {
    double half = best.intensity(0, 0) / 2;
    double angle = 0;
    while (angle < Math.PI / 2 && best.intensity(angle, 0) >= half) {
      angle += Math.toRadians(0.5);
    }
    return 2 * angle;
  }

  private PolarChartSpec.Lobe lobe(
      String plane, String fixture, int channel, IntensityDistribution best, double azimuth) {
    List<IntensityDistribution> draws =
        stored.model().draws().stream()
            .map(Truth::distributions)
            .map(all -> all.get(fixture).get(channel))
            .toList();
    List<Double> angles = new ArrayList<>();
    List<Estimate> intensities = new ArrayList<>();
    for (int degrees = -90; degrees <= 90; degrees += STEP) {
      double gamma = Math.toRadians(Math.abs(degrees));
      double at = degrees < 0 ? azimuth + Math.PI : azimuth;
      angles.add(Math.toRadians(degrees));
      intensities.add(
          Estimate.ofSample(
              best.intensity(gamma, at),
              draws.stream().mapToDouble(draw -> draw.intensity(gamma, at)).toArray()));
    }
    return new PolarChartSpec.Lobe(plane, angles, intensities);
  }

  private void scatter() {
    FitReport report = stored.model().report();
    Caption caption =
        new Caption(
            "Measured over predicted",
            String.format(
                Locale.ROOT,
                "%d readings, within %s %% of the model (robust standard deviation).",
                report.residuals().size(),
                Numbers.finePercent(report.relativeResidual())));
    add(
        "scatter.svg",
        caption,
        () ->
            Scatter.svg(
                new ScatterSpec(
                    caption,
                    Numbers.PPFD,
                    report.residuals().stream()
                        .map(
                            residual ->
                                new ScatterSpec.Point(
                                    residual.predicted(),
                                    residual.measured(),
                                    !residual.suspicion().isEmpty()))
                        .toList(),
                    2 * report.relativeResidual())));
  }

  private void residuals() {
    int number = 0;
    for (Survey survey : FoundModel.fitted(bench, stored)) {
      List<Double> depths =
          survey.readings().stream().map(r -> r.place().depth()).distinct().sorted().toList();
      for (double depth : depths) {
        number++;
        residuals("residuals-" + number + ".svg", survey, depth);
      }
    }
  }

  private void residuals(String name, Survey survey, double depth) {
    List<ResidualMapSpec.Residual> residuals =
        stored.model().report().residuals().stream()
            .filter(residual -> residual.survey().equals(survey.name()))
            .filter(residual -> residual.index() < survey.readings().size())
            .filter(r -> survey.readings().get(r.index()).place().depth() == depth)
            .map(residual -> residual(survey.readings().get(residual.index()), residual))
            .toList();
    double worst = residuals.stream().mapToDouble(r -> Math.abs(r.relative())).max().orElse(0);
    Caption caption =
        new Caption(
            String.format(
                Locale.ROOT,
                "Residuals of %s, %s deep",
                survey.name(),
                Numbers.withUnit(depth, unit)),
            String.format(
                Locale.ROOT,
                "Measured over predicted less one, in percent; the largest is %.0f %%.",
                100 * worst));
    add(
        name,
        caption,
        () ->
            ResidualMap.svg(
                new ResidualMapSpec(
                    caption,
                    Scene.of(survey.rig().tank(), unit).withFixtures(survey.rig().hangings()),
                    residuals)));
  }

  private static ResidualMapSpec.Residual residual(Reading reading, FitReport.Residual residual) {
    return new ResidualMapSpec.Residual(
        reading.place().x(),
        reading.place().y(),
        residual.measured() / Math.max(1e-9, residual.predicted()) - 1,
        !residual.suspicion().isEmpty());
  }
}
