package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.field.UnitFields;
import parfield.rig.Rig;

/**
 * A fitted fixture over a fitted tank: the most plausible truth and a sample of others that the
 * readings allow. Immutable.
 *
 * @param best the most plausible truth, with a meter scale of 1
 * @param draws sampled truths, at least one
 * @param discrepancy relative standard error by which the model itself misses a place, 0 or more
 * @param report what the fit found, for people
 */
public record LightModel(Truth best, List<Truth> draws, double discrepancy, FitReport report) {
  /** Length over which the model's own error keeps its sign [m]. */
  private static final double DISCREPANCY_LENGTH = 0.12;

  private static final int DISCREPANCY_WAVES = 24;

  public LightModel {
    Objects.requireNonNull(best, "best");
    Objects.requireNonNull(report, "report");
    draws = List.copyOf(draws);
    if (draws.isEmpty()) {
      throw new IllegalArgumentException("a light model needs at least one draw; got none");
    }
    if (!(discrepancy >= 0)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "a discrepancy must be 0 or more; got %s", discrepancy));
    }
  }

  /**
   * Predicts the field of any rig over the bench's tank.
   *
   * @param solver which solver
   * @param stated the rig as the bench states it; lamps and tank condition come from the model
   * @param places where
   */
  public PredictedField predict(FieldSolver solver, Rig stated, Places places) {
    UnitFields bestField = solver.unitFields(best.applyTo(stated), places);
    List<UnitFields> fields =
        IntStream.range(0, draws.size())
            .parallel()
            .mapToObj(d -> solver.unitFields(draws.get(d).applyTo(stated), places))
            .toList();
    double[][] factors = new double[draws.size()][];
    double[] scales = new double[draws.size()];
    for (int d = 0; d < draws.size(); d++) {
      factors[d] = discrepancyFactors(d, places);
      scales[d] = draws.get(d).meterScale();
    }
    return new PredictedField(bestField, new ArrayList<>(fields), factors, scales);
  }

  /** A smooth random field about 1, the same for one draw whatever the rig. */
  private double[] discrepancyFactors(int draw, Places places) {
    double[] factor = new double[places.size()];
    java.util.Arrays.fill(factor, 1);
    if (discrepancy == 0) {
      return factor;
    }
    SplittableRandom random = new SplittableRandom(0x5eed_0000L + draw);
    double amplitude = discrepancy * Math.sqrt(2.0 / DISCREPANCY_WAVES);
    for (int w = 0; w < DISCREPANCY_WAVES; w++) {
      double kx = random.nextGaussian() / DISCREPANCY_LENGTH;
      double ky = random.nextGaussian() / DISCREPANCY_LENGTH;
      double kz = random.nextGaussian() / DISCREPANCY_LENGTH;
      double phase = 2 * Math.PI * random.nextDouble();
      for (int i = 0; i < factor.length; i++) {
        factor[i] +=
            amplitude
                * Math.cos(kx * places.x(i) + ky * places.y(i) + kz * places.depth(i) + phase);
      }
    }
    for (int i = 0; i < factor.length; i++) {
      factor[i] = Math.max(0.1, factor[i]);
    }
    return factor;
  }
}
