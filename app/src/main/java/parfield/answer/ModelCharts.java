package parfield.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parfield.fit.FitReport;
import parfield.fit.LightModel;
import parfield.fit.Truth;
import parfield.lamp.IntensityDistribution;
import parfield.plot.Caption;
import parfield.plot.PolarChart;
import parfield.plot.PolarChartSpec;
import parfield.plot.Scatter;
import parfield.plot.ScatterSpec;
import parfield.units.Estimate;

/** A light model as charts. */
public final class ModelCharts {
  /** Angle between two intensities of a polar chart [deg]. */
  private static final int STEP = 2;

  private static final String INTENSITY = "µmol s⁻¹ sr⁻¹";

  private ModelCharts() {}

  /** What a chart of one channel's intensity says. */
  public static Caption lampCaption(
      LightModel model, String fixture, int channel, String channelName) {
    IntensityDistribution best = best(model, fixture, channel);
    return new Caption(
        "Intensity of one emitter of " + fixture + ", " + channelName,
        String.format(
            Locale.ROOT,
            "%s %s straight down; half of it within %.0f° from side to side, along the fixture.",
            Numbers.significant(best.intensity(0, 0)),
            INTENSITY,
            Math.toDegrees(beamAngle(best))));
  }

  /**
   * The fitted intensity of one emitter in one channel, with its interval.
   *
   * @param fixture a name that the model knows
   * @param channel its index in the fixture
   */
  public static String lamp(LightModel model, String fixture, int channel, Caption caption) {
    IntensityDistribution best = best(model, fixture, channel);
    return PolarChart.svg(
        new PolarChartSpec(
            caption,
            INTENSITY,
            best.axiallySymmetric()
                ? List.of(lobe("all around", model, fixture, channel, 0))
                : List.of(
                    lobe("along the fixture", model, fixture, channel, 0),
                    lobe("across it", model, fixture, channel, Math.PI / 2))));
  }

  private static IntensityDistribution best(LightModel model, String fixture, int channel) {
    return model.best().distributions().get(fixture).get(channel);
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

  private static PolarChartSpec.Lobe lobe(
      String plane, LightModel model, String fixture, int channel, double azimuth) {
    IntensityDistribution best = best(model, fixture, channel);
    List<IntensityDistribution> draws =
        model.draws().stream()
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

  /** What a chart of the readings over the model says. */
  public static Caption scatterCaption(FitReport report) {
    return new Caption(
        "Measured over predicted",
        String.format(
            Locale.ROOT,
            "%s, within %s %% of the model (robust standard deviation).",
            Numbers.count(report.residuals().size(), "reading"),
            Numbers.finePercent(report.relativeResidual())));
  }

  /** Every reading over what the model says there. */
  public static String scatter(FitReport report) {
    return Scatter.svg(
        new ScatterSpec(
            scatterCaption(report),
            Numbers.PPFD,
            report.residuals().stream()
                .map(
                    residual ->
                        new ScatterSpec.Point(
                            residual.predicted(),
                            residual.measured(),
                            !residual.suspicion().isEmpty()))
                .toList(),
            2 * report.relativeResidual()));
  }
}
