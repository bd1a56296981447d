package parfield.spectrum;

import java.util.Arrays;
import java.util.Locale;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.CommonOps_DDRM;
import org.ejml.dense.row.factory.DecompositionFactory_DDRM;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.decomposition.QRDecomposition;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Least squares within bounds: min ‖A x − b‖ over low ≤ x ≤ high, by an active set.
 *
 * <p>The method of Stark and Parker (1995, Computational Statistics 10:129), which with bounds of 0
 * and infinity is that of Lawson and Hanson (1974, Solving Least Squares Problems, ch. 23). Columns
 * are scaled to unit length; A is reduced once by Householder QR, so that its condition is never
 * squared. The problem is convex: a point that meets the conditions of Karush, Kuhn and Tucker is a
 * global optimum, and the method stops only at such a point.
 */
final class BoundedLeastSquares {
  /** Slope, relative to ‖b‖, below which no coefficient is worth moving. */
  private static final double TOLERANCE = 1e-14;

  private final DMatrixRMaj r;
  private final double[] q;
  private final double[] scale;
  private final double slopeTolerance;

  /**
   * Reduces a problem.
   *
   * @param a rows × coefficients, any number of rows, kept as it is
   * @param b one value a row
   */
  BoundedLeastSquares(DMatrixRMaj a, double[] b) {
    int n = a.numCols;
    scale = new double[n];
    for (int row = 0; row < a.numRows; row++) {
      for (int j = 0; j < n; j++) {
        scale[j] = Math.hypot(scale[j], a.get(row, j));
      }
    }
    DMatrixRMaj joined = new DMatrixRMaj(Math.max(a.numRows, n + 1), n + 1);
    double length = 0;
    for (int row = 0; row < a.numRows; row++) {
      for (int j = 0; j < n; j++) {
        joined.set(row, j, scale[j] > 0 ? a.get(row, j) / scale[j] : 0);
      }
      joined.set(row, n, b[row]);
      length = Math.hypot(length, b[row]);
    }
    QRDecomposition<DMatrixRMaj> qr = DecompositionFactory_DDRM.qr(joined.numRows, joined.numCols);
    if (!Double.isFinite(length + CommonOps_DDRM.elementSum(joined))) {
      throw new IllegalArgumentException(
          "a least squares problem holds values that are not finite");
    }
    // The decomposition holds even where it reports a column that depends on those before it.
    qr.decompose(joined);
    DMatrixRMaj triangle = qr.getR(null, true);
    r = CommonOps_DDRM.extract(triangle, 0, n + 1, 0, n);
    q = new double[n + 1];
    for (int row = 0; row <= n; row++) {
      q[row] = triangle.get(row, n);
    }
    slopeTolerance = TOLERANCE * length;
  }

  /**
   * The optimum.
   *
   * @param low lowest value of each coefficient, finite
   * @param high highest value of each, not below {@code low}, may be infinite
   */
  double[] solve(double[] low, double[] high) {
    int n = scale.length;
    double[] from = new double[n];
    double[] to = new double[n];
    for (int j = 0; j < n; j++) {
      from[j] = scaled(low[j], j);
      to[j] = scaled(high[j], j);
    }
    double[] x = from.clone();
    boolean[] free = new boolean[n];
    boolean[] barred = new boolean[n];
    int most = 50 + 20 * n;
    for (int round = 0; ; round++) {
      if (round > most) {
        throw new IllegalStateException(
            String.format(
                Locale.ROOT, "least squares within bounds did not settle in %d rounds", most));
      }
      int entering = steepest(slopes(x), x, from, to, free, barred);
      if (entering < 0) {
        break;
      }
      free[entering] = true;
      if (settle(x, from, to, free, entering)) {
        Arrays.fill(barred, false);
      } else {
        barred[entering] = true;
      }
    }
    for (int j = 0; j < n; j++) {
      if (x[j] == from[j]) {
        x[j] = low[j];
      } else if (x[j] == to[j]) {
        x[j] = high[j];
      } else {
        x[j] = Math.max(low[j], Math.min(high[j], x[j] / scale[j]));
      }
    }
    return x;
  }

  private double scaled(double bound, int j) {
    return scale[j] > 0 ? bound * scale[j] : 0;
  }

  /** −½ of the derivative of ‖A x − b‖² by each scaled coefficient. */
  private double[] slopes(double[] x) {
    int n = x.length;
    double[] residual = q.clone();
    for (int row = 0; row <= n; row++) {
      for (int j = row; j < n; j++) {
        residual[row] -= r.get(row, j) * x[j];
      }
    }
    double[] slopes = new double[n];
    for (int j = 0; j < n; j++) {
      for (int row = 0; row <= j; row++) {
        slopes[j] += r.get(row, j) * residual[row];
      }
    }
    return slopes;
  }

  /**
   * ½ of the derivative of ‖A x − b‖² by each coefficient.
   *
   * @param x coefficients, not scaled
   */
  double[] gradient(double[] x) {
    double[] scaledX = new double[x.length];
    for (int j = 0; j < x.length; j++) {
      scaledX[j] = x[j] * scale[j];
    }
    double[] gradient = slopes(scaledX);
    for (int j = 0; j < x.length; j++) {
      gradient[j] *= -scale[j];
    }
    return gradient;
  }

  private int steepest(
      double[] slopes, double[] x, double[] from, double[] to, boolean[] free, boolean[] barred) {
    int best = -1;
    double most = slopeTolerance;
    for (int j = 0; j < x.length; j++) {
      if (free[j] || barred[j] || from[j] == to[j]) {
        continue;
      }
      double gain = x[j] == from[j] ? slopes[j] : -slopes[j];
      if (gain > most) {
        best = j;
        most = gain;
      }
    }
    return best;
  }

  /**
   * Moves to the optimum of the free coefficients, binding those that meet a bound on the way.
   *
   * @return false, with nothing moved, if rounding alone made the entering one look worthwhile
   */
  private boolean settle(double[] x, double[] from, double[] to, boolean[] free, int entering) {
    boolean rising = x[entering] == from[entering];
    boolean first = true;
    while (true) {
      double[] wanted = freeOptimum(x, free);
      if (first
          && (rising ? !(wanted[entering] > x[entering]) : !(wanted[entering] < x[entering]))) {
        free[entering] = false;
        return false;
      }
      first = false;
      double step = 1;
      for (int j = 0; j < x.length; j++) {
        if (free[j] && wanted[j] < from[j]) {
          step = Math.min(step, (from[j] - x[j]) / (wanted[j] - x[j]));
        } else if (free[j] && wanted[j] > to[j]) {
          step = Math.min(step, (to[j] - x[j]) / (wanted[j] - x[j]));
        }
      }
      if (step >= 1) {
        System.arraycopy(wanted, 0, x, 0, x.length);
        return true;
      }
      for (int j = 0; j < x.length; j++) {
        if (!free[j]) {
          continue;
        }
        double moved = x[j] + step * (wanted[j] - x[j]);
        boolean below = wanted[j] < from[j] && (from[j] - x[j]) / (wanted[j] - x[j]) <= step;
        boolean above = wanted[j] > to[j] && (to[j] - x[j]) / (wanted[j] - x[j]) <= step;
        free[j] = !below && !above;
        x[j] = below ? from[j] : above ? to[j] : Math.max(from[j], Math.min(to[j], moved));
      }
    }
  }

  /** Coefficients with the free ones at their optimum, whatever their bounds. */
  private double[] freeOptimum(double[] x, boolean[] free) {
    int n = x.length;
    int count = 0;
    for (boolean one : free) {
      count += one ? 1 : 0;
    }
    double[] wanted = x.clone();
    if (count == 0) {
      return wanted;
    }
    DMatrixRMaj columns = new DMatrixRMaj(n + 1, count);
    DMatrixRMaj right = new DMatrixRMaj(n + 1, 1);
    for (int row = 0; row <= n; row++) {
      double value = q[row];
      int at = 0;
      for (int j = 0; j < n; j++) {
        if (free[j]) {
          columns.set(row, at++, r.get(row, j));
        } else {
          value -= r.get(row, j) * x[j];
        }
      }
      right.set(row, 0, value);
    }
    LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.leastSquares(n + 1, count);
    DMatrixRMaj solution = new DMatrixRMaj(count, 1);
    if (!solver.setA(columns)) {
      throw new IllegalStateException("columns of length 1 could not be decomposed");
    }
    solver.solve(right, solution);
    int at = 0;
    for (int j = 0; j < n; j++) {
      if (free[j]) {
        wanted[j] = solution.get(at++, 0);
      }
    }
    return wanted;
  }
}
