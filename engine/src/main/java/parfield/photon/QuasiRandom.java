package parfield.photon;

import java.util.SplittableRandom;

/**
 * Points that fill the five-dimensional unit cube more evenly than chance does: Sobol's sequence
 * with the direction numbers of Joe and Kuo (2008, SIAM J. Sci. Comput. 30:2635), scrambled after
 * Owen by the hash of Burley (2020, J. Comput. Graph. Tech. 9(4)). Numbers from memory; a test
 * holds them to the property that defines them.
 *
 * <p>Each scrambling is an unbiased sample of its own, so that several of them show the error.
 * Single-threaded.
 */
final class QuasiRandom {
  static final int DIMENSIONS = 5;

  private static final int BITS = 32;

  /** Degree, inner coefficients and first direction numbers of dimensions 2 to 5. */
  private static final int[][] POLYNOMIALS = {
    {1, 0, 1}, {2, 1, 1, 3}, {3, 1, 1, 3, 1}, {3, 2, 1, 1, 1}
  };

  private static final int[][] DIRECTIONS = directions();

  private final int[] point = new int[DIMENSIONS];
  private final int[] seeds = new int[DIMENSIONS];
  private int index;

  /** Starts a freshly scrambled sequence. */
  void restart(SplittableRandom random) {
    index = 0;
    for (int d = 0; d < DIMENSIONS; d++) {
      point[d] = 0;
      seeds[d] = random.nextInt();
    }
  }

  /** Fills {@code values} with the next point, each coordinate in [0, 1). */
  void next(double[] values) {
    for (int d = 0; d < DIMENSIONS; d++) {
      values[d] = (scrambled(point[d], seeds[d]) >>> 1) * 0x1p-31;
    }
    // Gray code order: one direction number a step.
    int bit = Integer.numberOfTrailingZeros(++index);
    for (int d = 0; d < DIMENSIONS; d++) {
      point[d] ^= DIRECTIONS[d][bit];
    }
  }

  private static int scrambled(int value, int seed) {
    int x = Integer.reverse(value);
    x += seed;
    x ^= x * 0x6c50b47c;
    x ^= x * 0xb82f1e52;
    x ^= x * 0xc7afe638;
    x ^= x * 0x8d22f6e6;
    return Integer.reverse(x);
  }

  private static int[][] directions() {
    int[][] directions = new int[DIMENSIONS][BITS];
    for (int bit = 0; bit < BITS; bit++) {
      directions[0][bit] = 1 << (BITS - 1 - bit);
    }
    for (int d = 1; d < DIMENSIONS; d++) {
      int[] polynomial = POLYNOMIALS[d - 1];
      int degree = polynomial[0];
      int[] v = directions[d];
      for (int bit = 0; bit < BITS; bit++) {
        if (bit < degree) {
          v[bit] = polynomial[2 + bit] << (BITS - 1 - bit);
        } else {
          v[bit] = v[bit - degree] ^ (v[bit - degree] >>> degree);
          for (int k = 1; k < degree; k++) {
            v[bit] ^= (polynomial[1] >> (degree - 1 - k) & 1) * v[bit - k];
          }
        }
      }
    }
    return directions;
  }
}
