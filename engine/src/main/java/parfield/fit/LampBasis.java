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
 * cosine-power lobe, a smooth departure from it, and smooth azimuthal harmonics that vanish at
 * nadir as a regular function must. The g are Gaussian processes in γ with a Matérn covariance of
 * order 5/2 (Rasmussen and Williams 2006, Gaussian Processes for Machine Learning, eq. 4.17),
 * written as their principal modes, so that every coefficient has a normal prior of its own. The
 * logarithm keeps the intensity positive without constraints. Immutable.
 */
final class LampBasis {
  /** Nodes of γ from 0 to 90°, every 2.5°. */
  static final int NODES = 37;

  private static final double STEP = Math.PI / 2 / (NODES - 1);

  /** Correlation length of the Gaussian processes [rad]. */
  private static final double LENGTH = Math.toRadians(30);

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
   * @param quadrant of the even harmonic cos 2C; half of it for cos 4C
   * @param skew of the odd harmonics, half of it for sin 2C; 0 for a lamp with two planes of
   *     symmetry
   */
  record Freedom(double shape, double quadrant, double skew) {}

  /** What a mode belongs to: how its prior scales with the freedom. */
  private enum Kind {
    LOBE,
    SHAPE,
    QUADRANT,
    FOURFOLD,
    SKEW,
    TWIST;

    double deviation(Freedom freedom) {
      return switch (this) {
        case LOBE -> 1;
        case SHAPE -> freedom.shape();
        case QUADRANT -> freedom.quadrant();
        case FOURFOLD -> freedom.quadrant() / 2;
        case SKEW -> freedom.skew();
        case TWIST -> freedom.skew() / 2;
      };
    }
  }

  /** One function of the family: node values in γ times cos or sin of a multiple of C. */
  private record Mode(Kind kind, int order, boolean sine, double[] nodes) {}

  private final List<Mode> modes = new ArrayList<>();
  private final double[] mean = new double[NODES];

  /**
   * The family about a lobe of a certain level.
   *
   * @param expectedLevel ln of the intensity straight down that is expected [ln µmol s⁻¹ sr⁻¹]
   */
  LampBasis(double expectedLevel) {
    double[] level = new double[NODES];
    double[] lobe = new double[NODES];
    for (int i = 0; i < NODES; i++) {
      double logCosine = Math.log(Math.max(LEAST_COSINE, Math.cos(i * STEP)));
      level[i] = LEVEL_DEVIATION;
      lobe[i] = EXPONENT_DEVIATION * logCosine;
      mean[i] = expectedLevel + EXPONENT_MEAN * logCosine;
    }
    modes.add(new Mode(Kind.LOBE, 0, false, level));
    modes.add(new Mode(Kind.LOBE, 0, false, lobe));
    List<double[]> smooth = smoothModes();
    addHarmonic(smooth, Kind.SHAPE, 0, false);
    addHarmonic(smooth, Kind.QUADRANT, 2, false);
    addHarmonic(smooth, Kind.FOURFOLD, 4, false);
    addHarmonic(smooth, Kind.SKEW, 1, false);
    addHarmonic(smooth, Kind.SKEW, 1, true);
    addHarmonic(smooth, Kind.TWIST, 2, true);
  }

  private void addHarmonic(List<double[]> smooth, Kind kind, int order, boolean sine) {
    for (double[] mode : smooth) {
      double[] nodes = new double[NODES];
      for (int i = 0; i < NODES; i++) {
        nodes[i] = mode[i] * Math.pow(Math.sin(i * STEP), order);
      }
      modes.add(new Mode(kind, order, sine, nodes));
    }
  }

  /** Principal modes of the Matérn process, mirrored about nadir, scaled to unit coefficients. */
  private static List<double[]> smoothModes() {
    DMatrixRMaj covariance = new DMatrixRMaj(NODES, NODES);
    for (int i = 0; i < NODES; i++) {
      for (int j = 0; j < NODES; j++) {
        covariance.set(i, j, matern((i - j) * STEP) + matern((i + j) * STEP));
      }
    }
    EigenDecomposition_F64<DMatrixRMaj> eigen = DecompositionFactory_DDRM.eig(NODES, true, true);
    if (!eigen.decompose(covariance)) {
      throw new ArithmeticException("the smooth modes of a lamp could not be computed");
    }
    double total = 0;
    for (int i = 0; i < NODES; i++) {
      total += Math.max(0, eigen.getEigenvalue(i).getReal());
    }
    List<double[]> modes = new ArrayList<>();
    for (int i = 0; i < NODES; i++) {
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

  /** Number of coefficients. */
  int size() {
    return modes.size();
  }

  /** Standard deviations of the coefficients' normal priors; 0 where a harmonic is left out. */
  double[] deviations(Freedom freedom) {
    return modes.stream().mapToDouble(mode -> mode.kind.deviation(freedom)).toArray();
  }

  /**
   * The distribution of a set of coefficients.
   *
   * @param coefficients from index {@code from}
   * @param from index of the first
   * @param share every intensity is multiplied by this, above 0
   */
  HarmonicIntensity distribution(double[] coefficients, int from, double share) {
    int orders = 1 + modes.stream().mapToInt(Mode::order).max().orElseThrow();
    double[][] cosine = new double[orders][NODES];
    double[][] sine = new double[orders][NODES];
    boolean anySine = false;
    for (int i = 0; i < NODES; i++) {
      cosine[0][i] = mean[i] + Math.log(share);
    }
    for (int m = 0; m < modes.size(); m++) {
      double coefficient = coefficients[from + m];
      if (coefficient == 0) {
        continue;
      }
      Mode mode = modes.get(m);
      double[] row = mode.sine ? sine[mode.order] : cosine[mode.order];
      anySine |= mode.sine;
      for (int i = 0; i < NODES; i++) {
        row[i] += coefficient * mode.nodes[i];
      }
    }
    return new HarmonicIntensity(cosine, anySine ? sine : new double[0][]);
  }

  /** Mean of ln I at γ [rad] before the coefficients come in. */
  double meanAt(double gamma) {
    return new Weights(gamma).apply(mean);
  }

  /**
   * Derivatives of ln I along one direction by each coefficient.
   *
   * @param gamma polar angle [rad], 0 to π/2
   * @param azimuth C [rad]
   */
  double[] derivatives(double gamma, double azimuth) {
    Weights weights = new Weights(gamma);
    double[] derivatives = new double[modes.size()];
    for (int m = 0; m < derivatives.length; m++) {
      Mode mode = modes.get(m);
      double value = weights.apply(mode.nodes);
      if (mode.order > 0) {
        double angle = mode.order * azimuth;
        value *= mode.sine ? Math.sin(angle) : Math.cos(angle);
      }
      derivatives[m] = value;
    }
    return derivatives;
  }

  /** The cubic Hermite piece that {@link HarmonicIntensity} puts through its nodes, at one γ. */
  private static final class Weights {
    private final int node;
    private final double h00;
    private final double h01;
    private final double h10;
    private final double h11;

    Weights(double gamma) {
      double position = Math.min(Math.max(0, gamma) / STEP, NODES - 1);
      node = Math.min((int) position, NODES - 2);
      double t = position - node;
      double u = 1 - t;
      h00 = u * u * (1 + 2 * t);
      h01 = t * t * (3 - 2 * t);
      h10 = t * u * u;
      h11 = -t * t * u;
    }

    double apply(double[] nodes) {
      double here = nodes[node];
      double next = nodes[node + 1];
      double before = node == 0 ? next : nodes[node - 1];
      double after = node + 2 >= NODES ? 2 * next - here : nodes[node + 2];
      return h00 * here + h01 * next + h10 * (next - before) / 2 + h11 * (after - here) / 2;
    }
  }
}
