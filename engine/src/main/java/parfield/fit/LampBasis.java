package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.EigenDecomposition_F64;
import parfield.lamp.HarmonicIntensity;

/**
 * The family of intensity distributions that a fit searches: how an unknown lamp may look.
 *
 * <p>ln I(γ, C) = level + exponent · ln cos γ + g₀(γ) + Σ_k sin^k γ · g_k(γ) · {cos kC, sin kC}: a
 * cosine-power lobe, a smooth departure from it, and smooth azimuthal harmonics that vanish at nadir
 * as a regular function must. The g are Gaussian processes in γ with a Matérn covariance of order
 * 5/2 (Rasmussen and Williams 2006, Gaussian Processes for Machine Learning, eq. 4.17), written as
 * their principal modes, so that every coefficient has a standard normal prior. The logarithm keeps
 * the intensity positive without constraints.
 */
final class LampBasis {
  /** Nodes of γ from 0 to 90°, every 2.5°. */
  static final int NODES = 37;

  private static final double STEP = Math.PI / 2 / (NODES - 1);

  /** Correlation length of the Gaussian processes [rad]. */
  private static final double LENGTH = Math.toRadians(22);

  /** Modes with less than this share of the variance are dropped. */
  private static final double LEAST_SHARE = 3e-4;

  /** The cosine is kept above this, so that the logarithm stays finite at the horizon. */
  private static final double LEAST_COSINE = 0.03;

  private static final double LEVEL_DEVIATION = 3;
  private static final double EXPONENT_MEAN = 2;
  private static final double EXPONENT_DEVIATION = 2;

  /**
   * How far lamps may depart from a round cosine-power lobe.
   *
   * @param shape standard deviation of g₀, in ln I
   * @param quadrant of the even harmonics cos 2C and cos 4C
   * @param skew of the odd harmonics and sin 2C; 0 for a lamp with two planes of symmetry
   */
  record Freedom(double shape, double quadrant, double skew) {}

  /**
   * One function of the family: a row of node values times cos or sin of a multiple of C.
   *
   * @param order k
   * @param sine whether it goes with sin kC
   * @param nodes values at the γ nodes
   */
  private record Mode(int order, boolean sine, double[] nodes) {}

  private final List<Mode> modes = new ArrayList<>();
  private final double[] mean = new double[NODES];
  private final int orders;

  LampBasis(Freedom freedom, double expectedLevel) {
    double[] level = new double[NODES];
    double[] lobe = new double[NODES];
    for (int i = 0; i < NODES; i++) {
      double logCosine = Math.log(Math.max(LEAST_COSINE, Math.cos(i * STEP)));
      level[i] = LEVEL_DEVIATION;
      lobe[i] = EXPONENT_DEVIATION * logCosine;
      mean[i] = expectedLevel + EXPONENT_MEAN * logCosine;
    }
    modes.add(new Mode(0, false, level));
    modes.add(new Mode(0, false, lobe));
    List<double[]> smooth = smoothModes();
    addHarmonic(smooth, 0, false, freedom.shape());
    addHarmonic(smooth, 2, false, freedom.quadrant());
    addHarmonic(smooth, 4, false, freedom.quadrant() / 2);
    addHarmonic(smooth, 1, false, freedom.skew());
    addHarmonic(smooth, 1, true, freedom.skew());
    addHarmonic(smooth, 2, true, freedom.skew() / 2);
    orders = 1 + modes.stream().mapToInt(Mode::order).max().orElseThrow();
  }

  private void addHarmonic(List<double[]> smooth, int order, boolean sine, double deviation) {
    if (deviation == 0) {
      return;
    }
    for (double[] mode : smooth) {
      double[] nodes = new double[NODES];
      for (int i = 0; i < NODES; i++) {
        nodes[i] = deviation * mode[i] * Math.pow(Math.sin(i * STEP), order);
      }
      modes.add(new Mode(order, sine, nodes));
    }
  }

  /** Principal modes of the Matérn process, mirrored about nadir, scaled to unit coefficients. */
  private static List<double[]> smoothModes() {
    DMatrixRMaj covariance = new DMatrixRMaj(NODES, NODES);
    for (int i = 0; i < NODES; i++) {
      for (int j = 0; j < NODES; j++) {
        double value = matern((i - j) * STEP) + matern((i + j) * STEP);
        covariance.set(i, j, value);
      }
    }
    EigenDecomposition_F64<DMatrixRMaj> eigen =
        DecompositionFactory_DDRM.eig(NODES, true, true);
    if (!eigen.decompose(covariance)) {
      throw new ArithmeticException("the smooth modes of a lamp could not be computed");
    }
    double total = 0;
    for (int i = 0; i < NODES; i++) {
      total += Math.max(0, eigen.getEigenvalue(i).getReal());
    }
    List<double[]> modes = new ArrayList<>();
    for (int i = NODES - 1; i >= 0; i--) {
      double value = eigen.getEigenvalue(i).getReal();
      if (value < LEAST_SHARE * total) {
        continue;
      }
      DMatrixRMaj vector = eigen.getEigenVector(i);
      double[] mode = new double[NODES];
      for (int k = 0; k < NODES; k++) {
        mode[k] = Math.sqrt(value) * vector.get(k);
      }
      modes.add(mode);
    }
    return modes;
  }

  private static double matern(double distance) {
    double s = Math.sqrt(5) * Math.abs(distance) / LENGTH;
    return (1 + s + s * s / 3) * Math.exp(-s);
  }

  /** Number of coefficients, each with a standard normal prior. */
  int size() {
    return modes.size();
  }

  /** The distribution of a set of coefficients, intensities multiplied by {@code share}. */
  HarmonicIntensity distribution(double[] coefficients, int from, double share) {
    double[][] cosine = new double[orders][NODES];
    double[][] sine = new double[orders][NODES];
    boolean anySine = false;
    for (int i = 0; i < NODES; i++) {
      cosine[0][i] = mean[i] + Math.log(share);
    }
    for (int m = 0; m < modes.size(); m++) {
      Mode mode = modes.get(m);
      double[] row = mode.sine ? sine[mode.order] : cosine[mode.order];
      anySine |= mode.sine;
      double coefficient = coefficients[from + m];
      for (int i = 0; i < NODES; i++) {
        row[i] += coefficient * mode.nodes[i];
      }
    }
    return new HarmonicIntensity(cosine, anySine ? sine : new double[0][]);
  }

  /**
   * Derivatives of ln I along one direction: by each coefficient.
   *
   * @param gamma polar angle [rad], 0 to π/2
   * @param azimuth C [rad]
   * @param out takes the derivatives, {@link #size()} of them
   */
  void derivatives(double gamma, double azimuth, double[] out) {
    double position = Math.min(Math.max(0, gamma) / STEP, NODES - 1);
    int i = Math.min((int) position, NODES - 2);
    double t = position - i;
    double u = 1 - t;
    double h00 = u * u * (1 + 2 * t);
    double h01 = t * t * (3 - 2 * t);
    double h10 = t * u * u;
    double h11 = -t * t * u;
    for (int m = 0; m < out.length; m++) {
      Mode mode = modes.get(m);
      double[] nodes = mode.nodes;
      double before = i == 0 ? nodes[1] : nodes[i - 1];
      double after = i + 2 >= NODES ? 2 * nodes[NODES - 1] - nodes[NODES - 2] : nodes[i + 2];
      double value =
          h00 * nodes[i]
              + h01 * nodes[i + 1]
              + h10 * (nodes[i + 1] - before) / 2
              + h11 * (after - nodes[i]) / 2;
      if (mode.order > 0) {
        double angle = mode.order * azimuth;
        value *= mode.sine ? Math.sin(angle) : Math.cos(angle);
      }
      out[m] = value;
    }
  }
}
