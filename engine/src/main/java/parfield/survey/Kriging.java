package parfield.survey;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.interfaces.decomposition.CholeskyDecomposition_F64;
import parfield.tank.Place;
import parfield.tank.Tank;

/**
 * Kriging: what a smooth field through all other readings says at the place of one.
 *
 * <p>The values are a Gaussian process over the tank: a level, a level of each depth, a profile
 * along x, one along y, and their interaction, plus independent noise. Each falls off with distance
 * as a Matérn function of smoothness 5/2 (Rasmussen and Williams 2006, Gaussian Processes for
 * Machine Learning, eq. 4.17), and a share of each profile is symmetric about the tank's middle.
 * The overall variance is integrated out under an inverse-gamma prior, which leaves a Student
 * density. The few other parameters are the most plausible ones on a coarse grid: how steep and how
 * symmetric the field is, is read off the readings themselves.
 *
 * <p>Not thread-safe: it keeps the factors of the correlations it has met.
 */
final class Kriging {
  /** Lengths of correlation [m]. */
  private static final double[] LENGTHS = {0.06, 0.09, 0.13, 0.2, 0.3, 0.45, 0.7, 1};

  private static final double[] INTERACTIONS = {1, 0.3, 0.1, 0.03, 0.01};
  private static final double[] ASYMMETRIES = {1, 0.2, 0.04, 0.01};
  private static final double[] NOISES = {3e-5, 1e-4, 3e-4, 1e-3, 3e-3, 1e-2, 3e-2, 0.1, 0.3};

  /** Variance of the level, and of that of each depth, over that of the variation. */
  private static final double LEVEL = 0.5;

  /** Inverse-gamma prior of the variance, for values that are logarithms of PPFD: shape. */
  private static final double VARIANCE_SHAPE = 1;

  /** The same: scale. */
  private static final double VARIANCE_SCALE = 0.1;

  /**
   * Parameters of the correlation, as indices into the grids above.
   *
   * @param lengthX length of correlation along x
   * @param lengthY length of correlation along y
   * @param lengthDepth length of correlation along depth
   * @param interaction share of the variance that is no sum of a profile along x and one along y
   * @param asymmetryX share of the variance along x that is not symmetric left to right
   * @param asymmetryY share of the variance along y that is not symmetric front to back
   * @param noise variance of the noise over that of the field
   */
  private record Shape(
      int lengthX,
      int lengthY,
      int lengthDepth,
      int interaction,
      int asymmetryX,
      int asymmetryY,
      int noise) {
    static final Shape START = new Shape(3, 3, 3, 1, 1, 1, 3);

    static final int PARAMETERS = 7;

    /** The shape one step along in one parameter, if its grid goes on that far. */
    Optional<Shape> step(int parameter, int by) {
      int[] at = {lengthX, lengthY, lengthDepth, interaction, asymmetryX, asymmetryY, noise};
      int[] sizes = {
        LENGTHS.length,
        LENGTHS.length,
        LENGTHS.length,
        INTERACTIONS.length,
        ASYMMETRIES.length,
        ASYMMETRIES.length,
        NOISES.length
      };
      at[parameter] += by;
      return at[parameter] < 0 || at[parameter] >= sizes[parameter]
          ? Optional.empty()
          : Optional.of(new Shape(at[0], at[1], at[2], at[3], at[4], at[5], at[6]));
    }

    /**
     * Log prior density but for a constant. Centres and spreads are about those that the parameters
     * take on simulated surveys; symmetric fields are the rule.
     */
    double logPrior() {
      return -square(LENGTHS[lengthX], 0.18, 0.8)
          - square(LENGTHS[lengthY], 0.18, 0.8)
          - square(LENGTHS[lengthDepth], 0.27, 0.6)
          - square(NOISES[noise], 2.5e-3, 1)
          - 0.4 * Math.log(ASYMMETRIES[asymmetryX] / ASYMMETRIES[ASYMMETRIES.length - 1])
          - 0.4 * Math.log(ASYMMETRIES[asymmetryY] / ASYMMETRIES[ASYMMETRIES.length - 1]);
    }

    private static double square(double value, double usual, double spread) {
      double deviation = Math.log(value / usual) / spread;
      return deviation * deviation / 2;
    }
  }

  /** Inverse of a correlation matrix and its log determinant. */
  private record Factor(double[][] inverse, double logDeterminant) {}

  private final List<Place> places;
  private final Tank tank;
  private final Map<Shape, Factor> factors = new HashMap<>();

  /**
   * Kriging at fixed places.
   *
   * @param places of the readings, at least one
   * @param tank that they lie in
   */
  Kriging(List<Place> places, Tank tank) {
    this.places = places;
    this.tank = tank;
  }

  /** The most plausible process through values [one a place], kept. */
  Fit fit(double[] values) {
    return climb(Shape.START, values);
  }

  /** The most plausible process through values, sought from the shape of another. */
  Fit fit(double[] values, Fit start) {
    return climb(start.shape, values);
  }

  /** Steps one parameter at a time for as long as that makes the values likelier. */
  private Fit climb(Shape start, double[] values) {
    Fit best = new Fit(start, factor(start), values);
    boolean improved = true;
    while (improved) {
      improved = false;
      for (int parameter = 0; parameter < Shape.PARAMETERS; parameter++) {
        for (int by = -1; by <= 1; by += 2) {
          Optional<Shape> next = best.shape.step(parameter, by);
          while (next.isPresent()) {
            Fit fit = new Fit(next.orElseThrow(), factor(next.orElseThrow()), values);
            if (!(fit.logPosterior() > best.logPosterior() + 1e-9)) {
              break;
            }
            best = fit;
            improved = true;
            next = best.shape.step(parameter, by);
          }
        }
      }
    }
    return best;
  }

  private Factor factor(Shape shape) {
    return factors.computeIfAbsent(shape, this::factorise);
  }

  private Factor factorise(Shape shape) {
    int n = places.size();
    double mixed = INTERACTIONS[shape.interaction];
    double[][] alongX = profile(shape.lengthX, shape.asymmetryX, tank.length(), true);
    double[][] alongY = profile(shape.lengthY, shape.asymmetryY, tank.width(), false);
    DMatrixRMaj matrix = new DMatrixRMaj(n, n);
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double x = alongX[i][j];
        double y = alongY[i][j];
        double vertical =
            matern((places.get(i).depth() - places.get(j).depth()) / LENGTHS[shape.lengthDepth]);
        double sum =
            LEVEL * (1 + vertical) + vertical * ((1 - mixed) * (x + y) / 2 + mixed * x * y);
        matrix.set(i, j, i == j ? sum + NOISES[shape.noise] : sum);
        matrix.set(j, i, matrix.get(i, j));
      }
    }
    DMatrixRMaj lower = cholesky(matrix);
    return new Factor(inverse(lower), logDeterminant(lower));
  }

  /** Correlation along one axis, lower triangle: a share free, the rest symmetric. */
  private double[][] profile(int lengthIndex, int asymmetry, double side, boolean alongX) {
    double length = LENGTHS[lengthIndex];
    double free = ASYMMETRIES[asymmetry];
    int n = places.size();
    double[][] profile = new double[n][];
    for (int i = 0; i < n; i++) {
      profile[i] = new double[i + 1];
      double a = alongX ? places.get(i).x() : places.get(i).y();
      for (int j = 0; j <= i; j++) {
        double b = alongX ? places.get(j).x() : places.get(j).y();
        double near = matern((a - b) / length);
        double mirrored = free == 1 ? near : matern((a + b - side) / length);
        profile[i][j] = free * near + (1 - free) / 2 * (near + mirrored);
      }
    }
    return profile;
  }

  private static double matern(double distance) {
    double scaled = Math.sqrt(5) * Math.abs(distance);
    return (1 + scaled + scaled * scaled / 3) * Math.exp(-scaled);
  }

  /** Lower Cholesky factor of a symmetric positive matrix. */
  private static DMatrixRMaj cholesky(DMatrixRMaj matrix) {
    CholeskyDecomposition_F64<DMatrixRMaj> cholesky =
        DecompositionFactory_DDRM.chol(matrix.numRows, true);
    if (!cholesky.decompose(matrix)) {
      throw new IllegalStateException(
          "a correlation of readings has no Cholesky factor; are many of them at one place?");
    }
    return cholesky.getT(null);
  }

  private static double logDeterminant(DMatrixRMaj lower) {
    double sum = 0;
    for (int i = 0; i < lower.numRows; i++) {
      sum += 2 * Math.log(lower.get(i, i));
    }
    return sum;
  }

  /** Inverse of L Lᵀ. */
  private static double[][] inverse(DMatrixRMaj lower) {
    int n = lower.numRows;
    double[][] columns = new double[n][n]; // of L⁻¹, by forward substitution
    for (int j = 0; j < n; j++) {
      double[] column = columns[j];
      column[j] = 1 / lower.get(j, j);
      for (int i = j + 1; i < n; i++) {
        double sum = 0;
        int row = i * n;
        for (int k = j; k < i; k++) {
          sum -= lower.data[row + k] * column[k];
        }
        column[i] = sum / lower.data[row + i];
      }
    }
    double[][] inverse = new double[n][n];
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        double sum = 0;
        for (int k = i; k < n; k++) {
          sum += columns[i][k] * columns[j][k];
        }
        inverse[i][j] = sum;
        inverse[j][i] = sum;
      }
    }
    return inverse;
  }

  /** A process fitted to values. Immutable. */
  static final class Fit {
    private final Shape shape;
    private final Factor factor;
    private final double[] values;
    private final double[] weights;
    private final double square;

    private Fit(Shape shape, Factor factor, double[] values) {
      this.shape = shape;
      this.factor = factor;
      this.values = values;
      this.weights = new double[values.length];
      double sum = 0;
      for (int i = 0; i < values.length; i++) {
        double[] row = factor.inverse[i];
        for (int j = 0; j < values.length; j++) {
          weights[i] += row[j] * values[j];
        }
        sum += values[i] * weights[i];
      }
      this.square = sum;
    }

    /** Log prior of the parameters plus log density of the values, but for a constant. */
    double logPosterior() {
      return shape.logPrior() + logDensity(values.length, factor.logDeterminant, square);
    }

    /** Gain in log density if the values at some places were others [one a place of {@code at}]. */
    double gain(int[] at, double[] others) {
      double changed = square;
      for (int a = 0; a < at.length; a++) {
        double change = others[a] - values[at[a]];
        changed += 2 * change * weights[at[a]];
        for (int b = 0; b < at.length; b++) {
          changed += change * factor.inverse[at[a]][at[b]] * (others[b] - values[at[b]]);
        }
      }
      return logDensity(values.length, factor.logDeterminant, changed)
          - logDensity(values.length, factor.logDeterminant, square);
    }

    /** What all other values say at some places [one a place of {@code at}]. */
    double[] expected(int[] at) {
      // μ = v − (Q_BB)⁻¹ (Q v)_B with Q the inverse correlation (Rasmussen and Williams, eq. 5.12).
      DMatrixRMaj lower = block(at);
      double[] solved = solveLower(lower, at);
      double[] expected = new double[at.length];
      for (int a = at.length - 1; a >= 0; a--) {
        double sum = solved[a];
        for (int b = a + 1; b < at.length; b++) {
          sum -= lower.get(b, a) * expected[b];
        }
        expected[a] = sum / lower.get(a, a);
      }
      for (int a = 0; a < at.length; a++) {
        expected[a] = values[at[a]] - expected[a];
      }
      return expected;
    }

    /** Log density of the values at some places, given all others. */
    double conditional(int[] at) {
      DMatrixRMaj lower = block(at);
      double removed = 0;
      for (double part : solveLower(lower, at)) {
        removed += part * part;
      }
      return logDensity(values.length, factor.logDeterminant, square)
          - logDensity(
              values.length - at.length,
              factor.logDeterminant + logDeterminant(lower),
              square - removed);
    }

    /** Cholesky factor of a block of the inverse correlation. */
    private DMatrixRMaj block(int[] at) {
      DMatrixRMaj block = new DMatrixRMaj(at.length, at.length);
      for (int a = 0; a < at.length; a++) {
        for (int b = 0; b < at.length; b++) {
          block.set(a, b, factor.inverse[at[a]][at[b]]);
        }
      }
      return cholesky(block);
    }

    private double[] solveLower(DMatrixRMaj lower, int[] at) {
      double[] solved = new double[at.length];
      for (int a = 0; a < at.length; a++) {
        double sum = weights[at[a]];
        for (int b = 0; b < a; b++) {
          sum -= lower.get(a, b) * solved[b];
        }
        solved[a] = sum / lower.get(a, a);
      }
      return solved;
    }

    /** Student density of {@code n} values: the normal one with the variance integrated out. */
    private static double logDensity(int n, double logDeterminant, double square) {
      double shape = VARIANCE_SHAPE + n / 2.0;
      return logGamma(shape)
          - logGamma(VARIANCE_SHAPE)
          - n / 2.0 * Math.log(2 * Math.PI * VARIANCE_SCALE)
          - 0.5 * logDeterminant
          - shape * Math.log1p(Math.max(0, square) / (2 * VARIANCE_SCALE));
    }

    /** Stirling's series, the argument raised to 10 first (Abramowitz and Stegun 6.1.41). */
    private static double logGamma(double z) {
      double raised = z;
      double shift = 0;
      while (raised < 10) {
        shift += Math.log(raised);
        raised++;
      }
      return (raised - 0.5) * Math.log(raised)
          - raised
          + 0.5 * Math.log(2 * Math.PI)
          + 1 / (12 * raised)
          - 1 / (360 * raised * raised * raised)
          - shift;
    }
  }
}
