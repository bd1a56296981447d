package parfield.fit;

import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import org.ejml.interfaces.linsol.LinearSolverDense;
import parfield.survey.Meter;

/**
 * The posterior of the coefficients about its mode, as a normal distribution (Laplace's method).
 *
 * <p>The mode is found by damped Gauss–Newton steps on the penalised sum of squares; blunders lose
 * weight by Huber's rule, and more beyond {@value #REDESCEND} standard errors.
 */
final class Posterior {
  /** Residuals up to this many standard errors count in full (Huber 1981, Robust Statistics). */
  private static final double HUBER = 2;

  /** Beyond this many standard errors a reading loses weight with the square of its residual. */
  private static final double REDESCEND = 4;

  private static final int MOST_STEPS = 25;
  private static final double SETTLED = 3e-3;
  private static final double LONGEST_STEP = 3;
  private static final int MOST_HALVINGS = 10;

  /** Least standard error of any reading [µmol m⁻² s⁻¹]. */
  private static final double FLOOR = 0.5;

  private final Forward forward;
  private final double[] mode;
  private final double[] deviations;
  private final double[] predicted;
  private final double[] sigma;
  private final double[] weight;
  private final double[][] lower;
  private final double[][] scaledJacobian;
  private final double logEvidence;
  private final Terms terms;

  private Posterior(
      Forward forward,
      double[] mode,
      Terms terms,
      Linear at,
      double[][] lower,
      double logEvidence) {
    this.forward = forward;
    this.mode = mode;
    this.terms = terms;
    deviations = terms.deviations();
    predicted = at.predicted;
    sigma = at.sigma;
    weight = at.weight;
    scaledJacobian = at.jacobian;
    this.lower = lower;
    this.logEvidence = logEvidence;
  }

  /**
   * What is held fixed while the mode is sought.
   *
   * @param deviations standard deviations of the coefficients' normal priors; 0 fixes one at 0
   * @param discrepancy relative error of the model itself
   * @param kept whether each reading takes part
   */
  record Terms(double[] deviations, double discrepancy, boolean[] kept) {}

  /** The problem linearised at one point. */
  private record Linear(
      double[] predicted,
      double[] sigma,
      double[] weight,
      double[][] jacobian,
      double[][] hessian,
      double[] gradient) {}

  /** Standard error of reading {@code i} where the model says {@code predicted}. */
  private static double sigma(Forward forward, double discrepancy, int i, double predicted) {
    Meter meter = forward.observations().survey(i).meter();
    double position = meter.positionError() * forward.logGradient(i);
    double relative =
        Math.sqrt(
            meter.repeatError() * meter.repeatError()
                + discrepancy * discrepancy
                + position * position);
    double floor = FLOOR + meter.resolution() / Math.sqrt(12);
    return Math.hypot(relative * predicted, floor);
  }

  /**
   * Finds the mode from a start.
   *
   * @param forward the model about its reference
   * @param terms priors, discrepancy, readings that take part
   * @param start coefficients to start from
   */
  static Posterior seek(Forward forward, Terms terms, double[] start) {
    double[] point = start.clone();
    for (int a = 0; a < point.length; a++) {
      point[a] = terms.deviations()[a] == 0 ? 0 : point[a];
    }
    for (int step = 0; ; step++) {
      Linear at = linearise(forward, terms, point);
      double[] move = solve(at.hessian, at.gradient);
      double largest = 0;
      for (double value : move) {
        largest = Math.max(largest, Math.abs(value));
      }
      if (largest < SETTLED || step == MOST_STEPS) {
        return finished(forward, terms, point, at);
      }
      double damping = Math.min(1, LONGEST_STEP / largest);
      double before = objective(forward, terms, point, at);
      double[] next = point;
      for (int halving = 0; halving < MOST_HALVINGS; halving++, damping /= 2) {
        next = point.clone();
        for (int a = 0; a < next.length; a++) {
          next[a] += damping * move[a] * terms.deviations()[a];
        }
        if (objective(forward, terms, next, at) <= before) {
          break;
        }
      }
      point = next;
    }
  }

  /** Gauss–Newton system in coefficients over their prior deviations. */
  private static Linear linearise(Forward forward, Terms terms, double[] point) {
    Observations observations = forward.observations();
    int n = observations.size();
    int p = forward.size();
    double[] deviations = terms.deviations();
    boolean[] used = new boolean[p];
    for (int a = 0; a < p; a++) {
      used[a] = deviations[a] > 0;
    }
    double[][] jacobian = new double[n][p];
    double[] predicted = forward.predict(point, jacobian, used);
    double[] sigma = new double[n];
    double[] weight = new double[n];
    double[][] hessian = new double[p][p];
    double[] gradient = new double[p];
    for (int a = 0; a < p; a++) {
      hessian[a][a] = 1;
      gradient[a] = used[a] ? -point[a] / deviations[a] : 0;
    }
    for (int i = 0; i < n; i++) {
      sigma[i] = sigma(forward, terms.discrepancy(), i, predicted[i]);
      double residual = (observations.ppfd(i) - predicted[i]) / sigma[i];
      weight[i] = terms.kept()[i] ? weight(residual) : 0;
      double[] row = jacobian[i];
      for (int a = 0; a < p; a++) {
        row[a] *= deviations[a] / sigma[i];
        double weighted = weight[i] * row[a];
        if (weighted == 0) {
          continue;
        }
        gradient[a] += weighted * residual;
        for (int b = 0; b <= a; b++) {
          hessian[a][b] += weighted * row[b];
        }
      }
    }
    for (int a = 0; a < p; a++) {
      for (int b = 0; b < a; b++) {
        hessian[b][a] = hessian[a][b];
      }
    }
    return new Linear(predicted, sigma, weight, jacobian, hessian, gradient);
  }

  private static double weight(double standardised) {
    double size = Math.abs(standardised);
    if (size <= HUBER) {
      return 1;
    }
    if (size <= REDESCEND) {
      return HUBER / size;
    }
    return HUBER / REDESCEND * (REDESCEND / size) * (REDESCEND / size);
  }

  private static double objective(Forward forward, Terms terms, double[] point, Linear at) {
    double[] predicted = forward.predict(point, null, null);
    double sum = 0;
    for (int i = 0; i < predicted.length; i++) {
      double residual = (forward.observations().ppfd(i) - predicted[i]) / at.sigma[i];
      sum += at.weight[i] * residual * residual;
    }
    return sum + penalty(terms, point);
  }

  private static double penalty(Terms terms, double[] point) {
    double sum = 0;
    for (int a = 0; a < point.length; a++) {
      if (terms.deviations()[a] > 0) {
        double z = point[a] / terms.deviations()[a];
        sum += z * z;
      }
    }
    return sum;
  }

  private static Posterior finished(Forward forward, Terms terms, double[] point, Linear at) {
    int p = point.length;
    CholeskyDecomposition_F64<DMatrixRMaj> cholesky = DecompositionFactory_DDRM.chol(p, true);
    if (!cholesky.decompose(new DMatrixRMaj(at.hessian))) {
      throw new ArithmeticException("the posterior's precision is not positive definite");
    }
    DMatrixRMaj t = cholesky.getT(null);
    double[][] lower = new double[p][p];
    double evidence = -penalty(terms, point) / 2;
    for (int a = 0; a < p; a++) {
      for (int b = 0; b <= a; b++) {
        lower[a][b] = t.get(a, b);
      }
      evidence -= Math.log(lower[a][a]);
    }
    for (int i = 0; i < at.sigma.length; i++) {
      if (terms.kept()[i]) {
        double residual = (forward.observations().ppfd(i) - at.predicted[i]) / at.sigma[i];
        evidence -= loss(residual) + Math.log(at.sigma[i]);
      }
    }
    return new Posterior(forward, point, terms, at, lower, evidence);
  }

  /** The loss whose weights {@link #weight} gives: quadratic, linear, then logarithmic. */
  private static double loss(double standardised) {
    double size = Math.abs(standardised);
    if (size <= HUBER) {
      return size * size / 2;
    }
    if (size <= REDESCEND) {
      return HUBER * size - HUBER * HUBER / 2;
    }
    return HUBER * REDESCEND - HUBER * HUBER / 2 + HUBER * REDESCEND * Math.log(size / REDESCEND);
  }

  private static double[] solve(double[][] matrix, double[] right) {
    LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.symmPosDef(right.length);
    DMatrixRMaj solution = new DMatrixRMaj(right.length, 1);
    if (!solver.setA(new DMatrixRMaj(matrix))) {
      throw new ArithmeticException("the normal equations of the fit are not positive definite");
    }
    solver.solve(new DMatrixRMaj(right), solution);
    return solution.getData();
  }

  /** The posterior of some of the readings only, everything else alike. */
  Posterior without(boolean[] kept) {
    return seek(forward, new Terms(deviations, terms.discrepancy(), kept), mode);
  }

  /** The model about whose reference the mode was sought. */
  Forward forward() {
    return forward;
  }

  /** The most plausible coefficients; not to be changed. */
  double[] mode() {
    return mode;
  }

  /** PPFD of the mode at reading {@code i}. */
  double predicted(int i) {
    return predicted[i];
  }

  /** Standard error of reading {@code i} about the mode. */
  double sigma(int i) {
    return sigma[i];
  }

  /** How much a reading counted, 0 to 1; below one half only beyond four standard errors. */
  double weight(int i) {
    return weight[i];
  }

  /** Laplace's approximation of the log marginal likelihood, up to a constant. */
  double logEvidence() {
    return logEvidence;
  }

  /** Leverage of a reading: how far the mode follows it, 0 to 1. */
  double leverage(int i) {
    int p = mode.length;
    double[] solved = new double[p];
    double sum = 0;
    for (int a = 0; a < p; a++) {
      double value = scaledJacobian[i][a];
      for (int b = 0; b < a; b++) {
        value -= lower[a][b] * solved[b];
      }
      solved[a] = value / lower[a][a];
      sum += solved[a] * solved[a];
    }
    return weight[i] * sum;
  }

  /** One draw of the coefficients: the mode plus L⁻ᵀ times standard normal numbers. */
  double[] draw(SplittableRandom random) {
    int p = mode.length;
    double[] sample = new double[p];
    for (int a = 0; a < p; a++) {
      sample[a] = random.nextGaussian();
    }
    for (int a = p - 1; a >= 0; a--) {
      for (int b = a + 1; b < p; b++) {
        sample[a] -= lower[b][a] * sample[b];
      }
      sample[a] /= lower[a][a];
    }
    for (int a = 0; a < p; a++) {
      sample[a] = mode[a] + deviations[a] * sample[a];
    }
    return sample;
  }
}
