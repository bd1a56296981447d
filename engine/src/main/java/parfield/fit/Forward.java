package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import parfield.field.PathBundle;
import parfield.lamp.HarmonicIntensity;

/**
 * What the readings should be for a set of coefficients near a reference, with derivatives.
 *
 * <p>The coefficient vector holds the lamps' coefficients group by group, then the conditions'. E
 * is linear in the lamps' intensities, which are exponentials of linear functions of the
 * coefficients: exact. The conditions move ln E linearly about the reference; slopes are central
 * differences, and the reference is renewed as the fit goes on. Immutable.
 */
final class Forward {
  private static final double CONDITION_STEP = 0.3;

  /** One group's paths in one survey, and what each lamp coefficient does along them. */
  private record Lit(Observations.Beam beam, double[] mean, double[][] modes) {}

  private final Observations observations;
  private final Conditions conditions;
  private final LampBasis basis;
  private final int groups;
  private final double[] reference;
  private final List<Lit> lit;
  private final double[][] slopes;
  private final double[] logGradient;

  /** Everything about one reference except slopes and gradient, which start at zero. */
  Forward(
      Observations observations,
      Conditions conditions,
      LampBasis basis,
      int groups,
      double[] reference) {
    this(observations, conditions, basis, groups, reference, null, null);
  }

  private Forward(
      Observations observations,
      Conditions conditions,
      LampBasis basis,
      int groups,
      double[] reference,
      double[][] slopes,
      double[] logGradient) {
    this.observations = observations;
    this.conditions = conditions;
    this.basis = basis;
    this.groups = groups;
    this.reference = reference;
    int n = observations.size();
    this.slopes = slopes == null ? new double[conditions.size()][n] : slopes;
    this.logGradient = logGradient == null ? new double[n] : logGradient;
    lit = new ArrayList<>();
    for (Observations.Beam beam : observations.beams(conditions, reference, firstCondition())) {
      lit.add(lit(beam));
    }
  }

  private Lit lit(Observations.Beam beam) {
    PathBundle bundle = beam.bundle();
    double[] mean = new double[bundle.size()];
    double[][] modes = new double[basis.size()][bundle.size()];
    for (int i = 0; i < mean.length; i++) {
      double output = beam.output()[bundle.hanging(i)];
      if (bundle.gamma(i) > Math.PI / 2 || output == 0) {
        continue;
      }
      mean[i] = output * Math.exp(basis.meanAt(bundle.gamma(i)));
      double[] derivatives = basis.derivatives(bundle.gamma(i), bundle.azimuth(i));
      for (int m = 0; m < derivatives.length; m++) {
        modes[m][i] = derivatives[m];
      }
    }
    return new Lit(beam, mean, modes);
  }

  /** This model renewed about other coefficients, slopes and gradient computed there. */
  Forward about(double[] coefficients) {
    double[][] newSlopes = new double[conditions.size()][];
    for (int k = 0; k < newSlopes.length; k++) {
      double[] up = shifted(coefficients, k, CONDITION_STEP);
      double[] down = shifted(coefficients, k, -CONDITION_STEP);
      double[] slope = new double[up.length];
      for (int i = 0; i < slope.length; i++) {
        slope[i] = Math.log(up[i] / down[i]) / (2 * CONDITION_STEP);
      }
      newSlopes[k] = slope;
    }
    double[] gradient =
        observations.logGradient(
            conditions, coefficients, firstCondition(), beams -> direct(beams, coefficients));
    return new Forward(
        observations, conditions, basis, groups, coefficients.clone(), newSlopes, gradient);
  }

  /** Number of coefficients. */
  int size() {
    return firstCondition() + conditions.size();
  }

  /** Index of the first coefficient of a condition. */
  int firstCondition() {
    return groups * basis.size();
  }

  /** The readings. */
  Observations observations() {
    return observations;
  }

  /** Size of the horizontal gradient of ln E at a reading [1/m]. */
  double logGradient(int reading) {
    return logGradient[reading];
  }

  /**
   * The polar angle below which a share of the light at the readings left the lamps [rad].
   *
   * @param coefficients near the reference
   * @param group of channels
   * @param share 0 to 1
   */
  double angleBelow(double[] coefficients, int group, double share) {
    double[] byDegree = new double[91];
    double total = 0;
    for (Lit part : lit) {
      if (part.beam.group() != group) {
        continue;
      }
      PathBundle bundle = part.beam.bundle();
      double[] intensity = intensities(part, coefficients, group * basis.size());
      for (int i = 0; i < intensity.length; i++) {
        int degree = (int) Math.min(90, Math.toDegrees(bundle.gamma(i)));
        byDegree[degree] += bundle.weight(i) * intensity[i];
        total += bundle.weight(i) * intensity[i];
      }
    }
    double sum = 0;
    int degree = 0;
    while (degree < 90 && sum + byDegree[degree] < share * total) {
      sum += byDegree[degree++];
    }
    return Math.toRadians(degree + 1.0);
  }

  /**
   * Predicted PPFD as the meters would show it.
   *
   * @param coefficients near the reference
   * @param jacobian if not null takes ∂E/∂coefficient, [reading][coefficient]; zero on entry
   * @param used which coefficients to differentiate by
   */
  double[] predict(double[] coefficients, double[][] jacobian, boolean[] used) {
    int n = observations.size();
    double[] predicted = new double[n];
    double[] factor = conditionFactors(coefficients);
    for (Lit part : lit) {
      PathBundle bundle = part.beam.bundle();
      int from = part.beam.group() * basis.size();
      double[] intensity = intensities(part, coefficients, from);
      int first = observations.first(part.beam.survey());
      double[] field = bundle.gather(intensity);
      for (int i = 0; i < field.length; i++) {
        predicted[first + i] += field[i] * factor[first + i];
      }
      if (jacobian == null) {
        continue;
      }
      double[] along = new double[intensity.length];
      for (int m = 0; m < part.modes.length; m++) {
        if (!used[from + m]) {
          continue;
        }
        double[] mode = part.modes[m];
        for (int i = 0; i < along.length; i++) {
          along[i] = intensity[i] * mode[i];
        }
        double[] derivative = bundle.gather(along);
        for (int i = 0; i < derivative.length; i++) {
          jacobian[first + i][from + m] += derivative[i] * factor[first + i];
        }
      }
    }
    if (jacobian != null) {
      for (int k = 0; k < slopes.length; k++) {
        for (int i = 0; i < n; i++) {
          jacobian[i][firstCondition() + k] = predicted[i] * slopes[k][i];
        }
      }
    }
    return predicted;
  }

  private double[] conditionFactors(double[] coefficients) {
    double[] factor = new double[observations.size()];
    for (int i = 0; i < factor.length; i++) {
      double log = 0;
      for (int k = 0; k < slopes.length; k++) {
        int at = firstCondition() + k;
        log += slopes[k][i] * (coefficients[at] - reference[at]);
      }
      factor[i] =
          Math.exp(log)
              / conditions.meterScale(reference, firstCondition(), observations.survey(i));
    }
    return factor;
  }

  private static double[] intensities(Lit part, double[] coefficients, int from) {
    double[] log = new double[part.mean.length];
    for (int m = 0; m < part.modes.length; m++) {
      double coefficient = coefficients[from + m];
      if (coefficient == 0) {
        continue;
      }
      double[] mode = part.modes[m];
      for (int i = 0; i < log.length; i++) {
        log[i] += coefficient * mode[i];
      }
    }
    for (int i = 0; i < log.length; i++) {
      log[i] = part.mean[i] * Math.exp(log[i]);
    }
    return log;
  }

  private double[] shifted(double[] coefficients, int condition, double step) {
    double[] moved = coefficients.clone();
    moved[firstCondition() + condition] += step;
    return direct(observations.beams(conditions, moved, firstCondition()), moved);
  }

  /** Predicted PPFD for beams of any conditions, nothing linearised. */
  private double[] direct(List<Observations.Beam> beams, double[] coefficients) {
    double[] predicted = new double[observations.size()];
    for (Observations.Beam beam : beams) {
      PathBundle bundle = beam.bundle();
      HarmonicIntensity lamp = basis.distribution(coefficients, beam.group() * basis.size(), 1);
      double[] intensity = new double[bundle.size()];
      for (int i = 0; i < intensity.length; i++) {
        intensity[i] =
            beam.output()[bundle.hanging(i)] * lamp.intensity(bundle.gamma(i), bundle.azimuth(i));
      }
      double[] field = bundle.gather(intensity);
      int first = observations.first(beam.survey());
      for (int i = 0; i < field.length; i++) {
        predicted[first + i] +=
            field[i]
                / conditions.meterScale(
                    coefficients, firstCondition(), observations.survey(first + i));
      }
    }
    return predicted;
  }
}
