package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.ejml.data.DMatrixRMaj;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class BoundedLeastSquaresTest {
  private static DMatrixRMaj random(SplittableRandom random, int rows, int columns) {
    DMatrixRMaj a = new DMatrixRMaj(rows, columns);
    for (int i = 0; i < a.data.length; i++) {
      a.data[i] = random.nextGaussian();
    }
    return a;
  }

  private static double[] residual(DMatrixRMaj a, double[] b, double[] x) {
    double[] residual = b.clone();
    for (int i = 0; i < b.length; i++) {
      for (int j = 0; j < x.length; j++) {
        residual[i] -= a.get(i, j) * x[j];
      }
    }
    return residual;
  }

  private static double squares(double[] values) {
    return Arrays.stream(values).map(v -> v * v).sum();
  }

  /**
   * The conditions of Karush, Kuhn and Tucker, which for a convex problem hold at its optima and
   * nowhere else (Nocedal and Wright 2006, Numerical Optimization, th. 12.1; from memory), computed
   * here from A itself.
   */
  private static void assertOptimal(
      DMatrixRMaj a, double[] b, double[] low, double[] high, double[] x) {
    double[] residual = residual(a, b, x);
    double length = Math.sqrt(squares(b));
    for (int j = 0; j < x.length; j++) {
      double slope = 0;
      double column = 0;
      for (int i = 0; i < b.length; i++) {
        slope += a.get(i, j) * residual[i];
        column += a.get(i, j) * a.get(i, j);
      }
      double allowed = 1e-10 * length * Math.sqrt(column);
      assertThat(x[j]).isBetween(low[j], high[j]);
      if (x[j] > low[j]) {
        assertThat(slope).as("cannot gain by less of %d", j).isGreaterThan(-allowed);
      }
      if (x[j] < high[j]) {
        assertThat(slope).as("cannot gain by more of %d", j).isLessThan(allowed);
      }
    }
  }

  @Test
  @DisplayName("every answer meets the conditions that only an optimum meets")
  void meetsTheConditionsOfAnOptimum() {
    SeededLaw.holds(
        2_000,
        random -> {
          int n = 1 + random.nextInt(9);
          int rows = 1 + random.nextInt(14);
          DMatrixRMaj a = random(random, rows, n);
          if (n > 2 && random.nextInt(4) == 0) {
            for (int i = 0; i < rows; i++) {
              a.set(i, 0, a.get(i, 1) + (random.nextBoolean() ? 0 : 1e-9) * a.get(i, 2));
            }
          }
          double[] b = random.doubles(rows, -3, 3).toArray();
          double[] low = random.doubles(n, 0, 0.4).map(v -> v < .2 ? 0 : v).toArray();
          double[] high = new double[n];
          for (int j = 0; j < n; j++) {
            high[j] =
                random.nextInt(3) == 0 ? Double.POSITIVE_INFINITY : low[j] + random.nextDouble();
          }
          assertOptimal(a, b, low, high, new BoundedLeastSquares(a, b).solve(low, high));
        });
  }

  @Test
  @DisplayName("no choice of which coefficients stand at a bound does better, of all there are")
  void bruteForceFindsNothingBetter() {
    SeededLaw.holds(
        300,
        random -> {
          DMatrixRMaj a = random(random, 8, 4);
          double[] b = random.doubles(8, -2, 2).toArray();
          double[] low = new double[4];
          double[] high = {.3, .6, 1, Double.POSITIVE_INFINITY};
          double found = squares(residual(a, b, new BoundedLeastSquares(a, b).solve(low, high)));
          double least = Double.POSITIVE_INFINITY;
          for (int choice = 0; choice < 81; choice++) {
            int[] state = {choice % 3, choice / 3 % 3, choice / 9 % 3, choice / 27};
            if (state[3] == 2) {
              continue;
            }
            double[] x = NormalEquations.solve(a, b, state, low, high);
            boolean inside = true;
            for (int j = 0; j < 4; j++) {
              inside &= x[j] >= low[j] - 1e-12 && x[j] <= high[j] + 1e-12;
            }
            if (inside) {
              least = Math.min(least, squares(residual(a, b, x)));
            }
          }
          assertThat(found).isCloseTo(least, within(1e-9 * squares(b)));
        });
  }

  @Test
  @DisplayName("columns that all but coincide keep the digits that normal equations would lose")
  void keepsDigitsOfAlikeColumns() {
    double e = 1e-5;
    DMatrixRMaj lauchli = new DMatrixRMaj(new double[][] {{1, 1}, {e, 0}, {0, e}});
    double[] b = {3, e, 2 * e};
    double[] bounds = {0, 0};
    double[] open = {Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY};
    double[] x = new BoundedLeastSquares(lauchli, b).solve(bounds, open);
    assertThat(x[0]).isCloseTo(1, within(1e-10));
    assertThat(x[1]).isCloseTo(2, within(1e-10));
  }

  @Test
  void leavesAColumnWithoutLightAtItsLowerBound() {
    DMatrixRMaj a = new DMatrixRMaj(new double[][] {{1, 0}, {0, 0}});
    double[] x =
        new BoundedLeastSquares(a, new double[] {2, 1}).solve(new double[2], new double[] {5, 5});
    assertThat(x).containsExactly(2, 0);
  }

  /** An independent way: Gauss elimination on the normal equations of the free coefficients. */
  private static final class NormalEquations {
    static double[] solve(DMatrixRMaj a, double[] b, int[] state, double[] low, double[] high) {
      int n = state.length;
      double[][] m = new double[n][n + 1];
      for (int j = 0; j < n; j++) {
        if (state[j] != 1) {
          m[j][j] = 1;
          m[j][n] = state[j] == 0 ? low[j] : high[j];
          continue;
        }
        for (int i = 0; i < b.length; i++) {
          for (int k = 0; k < n; k++) {
            m[j][k] += a.get(i, j) * a.get(i, k);
          }
          m[j][n] += a.get(i, j) * b[i];
        }
      }
      for (int p = 0; p < n; p++) {
        int pivot = p;
        for (int i = p + 1; i < n; i++) {
          pivot = Math.abs(m[i][p]) > Math.abs(m[pivot][p]) ? i : pivot;
        }
        double[] row = m[p];
        m[p] = m[pivot];
        m[pivot] = row;
        for (int i = 0; i < n; i++) {
          if (i != p) {
            double factor = m[i][p] / m[p][p];
            for (int k = p; k <= n; k++) {
              m[i][k] -= factor * m[p][k];
            }
          }
        }
      }
      double[] x = new double[n];
      for (int j = 0; j < n; j++) {
        x[j] = m[j][n] / m[j][j];
      }
      return x;
    }
  }
}
