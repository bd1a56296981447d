package parfield.photon;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Evenly spread points: what defines Sobol's sequence, kept by Owen's scrambling. */
class QuasiRandomTest {
  /**
   * Of the first 2^m points exactly one lies in each of 2^m equal intervals, in every coordinate.
   */
  @Test
  void everyCoordinateIsStratified() {
    QuasiRandom sequence = new QuasiRandom();
    sequence.restart(new SplittableRandom(1));
    int count = 1024;
    int[][] hits = new int[QuasiRandom.DIMENSIONS][count];
    double[] point = new double[QuasiRandom.DIMENSIONS];
    for (int i = 0; i < count; i++) {
      sequence.next(point);
      for (int d = 0; d < point.length; d++) {
        assertThat(point[d]).isBetween(0.0, Math.nextDown(1.0));
        hits[d][(int) (point[d] * count)]++;
      }
    }
    for (int[] coordinate : hits) {
      assertThat(coordinate).containsOnly(1);
    }
  }

  /** The first two coordinates are a (0, m, 2)-net: one point in every elementary rectangle. */
  @Test
  void theFirstTwoCoordinatesAreANet() {
    int m = 10;
    for (int a = 0; a <= m; a++) {
      QuasiRandom sequence = new QuasiRandom();
      sequence.restart(new SplittableRandom(2));
      int[] hits = new int[1 << m];
      double[] point = new double[QuasiRandom.DIMENSIONS];
      for (int i = 0; i < 1 << m; i++) {
        sequence.next(point);
        int column = (int) (point[0] * (1 << a));
        int row = (int) (point[1] * (1 << (m - a)));
        hits[(column << (m - a)) + row]++;
      }
      assertThat(hits).as("2^%d columns", a).containsOnly(1);
    }
  }

  /** Scramblings differ, and each coordinate averages to a half. */
  @Test
  void scramblingsAreUnbiased() {
    QuasiRandom sequence = new QuasiRandom();
    SplittableRandom random = new SplittableRandom(3);
    double[] point = new double[QuasiRandom.DIMENSIONS];
    double[] first = new double[QuasiRandom.DIMENSIONS];
    for (int i = 0; i < 2000; i++) {
      sequence.restart(random);
      sequence.next(point);
      for (int d = 0; d < point.length; d++) {
        first[d] += point[d] / 2000;
      }
    }
    for (double mean : first) {
      // Five standard errors of the mean of 2,000 even draws.
      assertThat(mean).isBetween(0.5 - 5 * 0.00645, 0.5 + 5 * 0.00645);
    }
  }
}
