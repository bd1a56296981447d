package parfield.fit;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import parfield.field.FieldSolver;
import parfield.field.Places;
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
    return at(places).predict(solver, stated);
  }

  /** Prepares to predict the fields of many rigs at the same places. */
  public Predictor at(Places places) {
    return new Predictor(this, places);
  }
}
