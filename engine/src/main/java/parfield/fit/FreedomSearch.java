package parfield.fit;

import java.util.Arrays;
import parfield.fit.LampBasis.Freedom;
import parfield.fit.Posterior.Terms;

/**
 * Chooses, by the marginal likelihood, how freely the lamps may be shaped and how large the model's
 * own error is; then tests whether the lamps have two planes of symmetry.
 */
final class FreedomSearch {
  private static final double[] SHAPES = {0.1, 0.3, 0.9};
  private static final double[] QUADRANTS = {0, 0.15, 0.5, 1.2};

  /** The least is what the fast solver itself may miss by. */
  private static final double[] DISCREPANCIES = {0.01, 0.015, 0.025, 0.04, 0.08};

  /** Half-normal prior of the discrepancy: what the solver's assumptions are expected to cost. */
  private static final double EXPECTED_DISCREPANCY = 0.02;

  /** Discrepancy of the first rough pass, so that no blunder pulls it far. */
  private static final double ROUGH = 0.15;

  private static final double SKEW = 0.12;

  /** Gain in log evidence that a lamp without symmetry must bring: odds of twenty to one. */
  private static final double SKEW_GAIN = Math.log(20);

  private static final int ROUNDS = 2;

  /**
   * The posterior under the chosen freedoms.
   *
   * @param posterior of the coefficients
   * @param basis what the coefficients mean
   * @param freedom of the lamps
   * @param discrepancy relative error of the model itself
   * @param skewGain gain in log evidence of lamps without symmetry over lamps with it
   */
  record Chosen(
      Posterior posterior, LampBasis basis, Freedom freedom, double discrepancy, double skewGain) {
    /** Log of evidence times the prior of the discrepancy, up to a constant. */
    double merit() {
      double ratio = discrepancy / EXPECTED_DISCREPANCY;
      return posterior.logEvidence() - ratio * ratio / 2;
    }
  }

  private final LampBasis basis;
  private final int groups;
  private final int conditions;
  private final boolean[] kept;
  private Forward forward;

  private FreedomSearch(LampBasis basis, Forward forward, int groups, int conditions) {
    this.basis = basis;
    this.forward = forward;
    this.groups = groups;
    this.conditions = conditions;
    kept = new boolean[forward.observations().size()];
    Arrays.fill(kept, true);
  }

  static Chosen run(Observations observations, Conditions conditions, int groups) {
    LampBasis basis = new LampBasis(expectedLevel(observations, conditions, groups));
    double[] start = new double[groups * basis.size() + conditions.size()];
    Forward forward = new Forward(observations, conditions, basis, groups, start);
    return new FreedomSearch(basis, forward, groups, conditions.size()).run(start);
  }

  /** Level of ln I at which a plain lobe predicts the median reading. */
  private static double expectedLevel(
      Observations observations, Conditions conditions, int groups) {
    LampBasis basis = new LampBasis(0);
    double[] zero = new double[groups * basis.size() + conditions.size()];
    double[] predicted =
        new Forward(observations, conditions, basis, groups, zero).predict(zero, null, null);
    double[] logRatios = new double[predicted.length];
    int count = 0;
    for (int i = 0; i < predicted.length; i++) {
      if (predicted[i] > 0 && observations.ppfd(i) > 0) {
        logRatios[count++] = Math.log(observations.ppfd(i) / predicted[i]);
      }
    }
    if (count == 0) {
      throw new UnfittableException(
          "no light of the stated rigs can reach the places that were read; check positions, rim"
              + " and braces");
    }
    double[] found = Arrays.copyOf(logRatios, count);
    Arrays.sort(found);
    return found[count / 2];
  }

  private Chosen run(double[] start) {
    Freedom freedom = new Freedom(SHAPES[1], QUADRANTS[1], 0);
    Posterior rough = Posterior.seek(forward, terms(freedom, ROUGH), start);
    forward = forward.about(rough.mode());
    Chosen best = attempt(freedom, DISCREPANCIES[2], rough.mode());
    forward = forward.about(best.posterior().mode());
    best = attempt(freedom, DISCREPANCIES[2], best.posterior().mode());
    for (int round = 0; round < ROUNDS; round++) {
      Chosen before = best;
      for (double shape : SHAPES) {
        Freedom f = best.freedom();
        best = better(best, new Freedom(shape, f.quadrant(), 0), best.discrepancy());
      }
      for (double quadrant : QUADRANTS) {
        Freedom f = best.freedom();
        best = better(best, new Freedom(f.shape(), quadrant, 0), best.discrepancy());
      }
      for (double discrepancy : DISCREPANCIES) {
        best = better(best, best.freedom(), discrepancy);
      }
      if (best.equals(before)) {
        break;
      }
    }
    Freedom skewed = new Freedom(best.freedom().shape(), best.freedom().quadrant(), SKEW);
    Chosen asymmetric = attempt(skewed, best.discrepancy(), best.posterior().mode());
    double gain = asymmetric.posterior().logEvidence() - best.posterior().logEvidence();
    Chosen chosen = gain > SKEW_GAIN ? asymmetric : best;
    forward = forward.about(chosen.posterior().mode());
    Chosen last = attempt(chosen.freedom(), chosen.discrepancy(), chosen.posterior().mode());
    return new Chosen(last.posterior(), basis, last.freedom(), last.discrepancy(), gain);
  }

  private Chosen better(Chosen best, Freedom freedom, double discrepancy) {
    if (freedom.equals(best.freedom()) && discrepancy == best.discrepancy()) {
      return best;
    }
    Chosen rival = attempt(freedom, discrepancy, best.posterior().mode());
    return rival.merit() > best.merit() ? rival : best;
  }

  private Chosen attempt(Freedom freedom, double discrepancy, double[] start) {
    Posterior posterior = Posterior.seek(forward, terms(freedom, discrepancy), start);
    return new Chosen(posterior, basis, freedom, discrepancy, 0);
  }

  private Terms terms(Freedom freedom, double discrepancy) {
    double[] lamp = basis.deviations(freedom);
    double[] deviations = new double[groups * lamp.length + conditions];
    Arrays.fill(deviations, 1);
    for (int g = 0; g < groups; g++) {
      System.arraycopy(lamp, 0, deviations, g * lamp.length, lamp.length);
    }
    return new Terms(deviations, discrepancy, kept);
  }
}
