package parfield.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.field.UnitFields;
import parfield.parallel.SideBySide;
import parfield.rig.Rig;

/**
 * Predicts the fields of many rigs at the same places: what does not depend on the rig is computed
 * once. Immutable and thread-safe.
 */
public final class Predictor {
  /** Length over which the model's own error keeps its sign [m]. */
  static final double DISCREPANCY_LENGTH = 0.12;

  private static final int DISCREPANCY_WAVES = 24;

  private final LightModel model;
  private final Places places;
  private final double[][] discrepancy;
  private final double[] meterScale;

  Predictor(LightModel model, Places places) {
    this.model = model;
    this.places = places;
    this.discrepancy =
        IntStream.range(0, model.draws().size())
            .parallel()
            .mapToObj(d -> discrepancyFactors(model.discrepancy(), d, places))
            .toArray(double[][]::new);
    this.meterScale = model.draws().stream().mapToDouble(Truth::meterScale).toArray();
  }

  /** Returns the places. */
  public Places places() {
    return places;
  }

  /**
   * The predicted field of a rig.
   *
   * @param solver which solver
   * @param stated the rig as the bench states it; lamps and tank condition come from the model
   */
  public PredictedField predict(FieldSolver solver, Rig stated) {
    List<Truth> truths = new ArrayList<>(List.of(model.best()));
    truths.addAll(model.draws());
    List<UnitFields> fields =
        SideBySide.all(
            truths.size(), t -> solver.unitFields(truths.get(t).applyTo(stated), places));
    return new PredictedField(
        fields.get(0), fields.subList(1, fields.size()), discrepancy, meterScale);
  }

  /**
   * The predicted field as if the most plausible lamp and tank were the true ones: its draws differ
   * by the model's own discrepancy and the meter's scale alone. Costs one solution instead of one a
   * draw; its intervals are too narrow to be told to anyone.
   *
   * @param solver which solver
   * @param stated the rig as the bench states it; lamps and tank condition come from the model
   */
  public PredictedField predictBest(FieldSolver solver, Rig stated) {
    UnitFields best = solver.unitFields(model.best().applyTo(stated), places);
    return new PredictedField(
        best, Collections.nCopies(meterScale.length, best), discrepancy, meterScale);
  }

  /** A smooth random field about 1, the same for one draw whatever the rig. */
  private static double[] discrepancyFactors(double discrepancy, int draw, Places places) {
    double[] factor = new double[places.size()];
    Arrays.fill(factor, 1);
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
