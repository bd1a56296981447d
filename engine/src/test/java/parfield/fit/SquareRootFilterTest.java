package parfield.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * The update against Kalman's formula: x + K (y − H x), (I − K H) P, K = P Hᵀ (H P Hᵀ + R)⁻¹
 * (Kalman 1960, J. Basic Eng. 82:35; as in Gelb 1974, Applied Optimal Estimation, table 4.2-1).
 */
class SquareRootFilterTest {
  private static double[][] sample(int members, int size, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double[][] sample = new double[members][size];
    for (double[] member : sample) {
      double common = random.nextGaussian();
      for (int i = 0; i < size; i++) {
        member[i] = i + common + (0.5 + 0.2 * i) * random.nextGaussian();
      }
    }
    return sample;
  }

  private static Matrix covariance(double[][] sample) {
    double[] mean = SquareRootFilter.mean(sample);
    Matrix covariance = Matrix.zeros(mean.length, mean.length);
    for (double[] member : sample) {
      for (int i = 0; i < mean.length; i++) {
        for (int j = 0; j < mean.length; j++) {
          covariance.set(
              i,
              j,
              covariance.get(i, j)
                  + (member[i] - mean[i]) * (member[j] - mean[j]) / (sample.length - 1));
        }
      }
    }
    return covariance;
  }

  @Test
  void meanAndCovarianceAreThoseOfKalmansFormula() {
    double[][] members = sample(40, 5, 1);
    Matrix h = Matrix.of(new double[][] {{1, 0, 2, 0, 0}, {0, 1, 0, -1, 0.5}});
    Matrix r = Matrix.of(new double[][] {{0.3, 0.1}, {0.1, 0.2}});
    double[] observed = {5.5, -0.7};
    double[][] predicted = new double[members.length][];
    for (int m = 0; m < members.length; m++) {
      Matrix said = h.times(Matrix.column(members[m]));
      predicted[m] = new double[] {said.get(0, 0), said.get(1, 0)};
    }

    double[][] updated =
        SquareRootFilter.of(predicted, observed, new double[][] {{0.3, 0.1}, {0.1, 0.2}})
            .update(members);

    Matrix p = covariance(members);
    Matrix x = Matrix.column(SquareRootFilter.mean(members));
    Matrix gain = p.times(h.transposed()).times(h.times(p).times(h.transposed()).plus(r).inverse());
    Matrix y = Matrix.column(observed);
    Matrix mean = x.plus(gain.times(y.minus(h.times(x))));
    Matrix left = Matrix.identity(5).minus(gain.times(h)).times(p);
    double[] found = SquareRootFilter.mean(updated);
    Matrix spread = covariance(updated);
    for (int i = 0; i < 5; i++) {
      assertThat(found[i]).isCloseTo(mean.get(i, 0), within(1e-10));
      for (int j = 0; j < 5; j++) {
        assertThat(spread.get(i, j)).isCloseTo(left.get(i, j), within(1e-10));
      }
    }
  }

  /** Prior 10 ± 2, reading 12 ± 1: 10 + 4/5 · 2 = 11.6, variance 4/5; worked by hand. */
  @Test
  void oneReadingOfOneNumberWorkedByHand() {
    double[][] members = {{8 - 1}, {12 + 1}, {10}};
    double stretch = 2 / Math.sqrt(covariance(members).get(0, 0));
    for (double[] member : members) {
      member[0] = 10 + stretch * (member[0] - 10);
    }

    double[][] updated =
        SquareRootFilter.of(members, new double[] {12}, new double[][] {{1}}).update(members);

    assertThat(SquareRootFilter.mean(updated)[0]).isCloseTo(11.6, within(1e-12));
    assertThat(covariance(updated).get(0, 0)).isCloseTo(0.8, within(1e-12));
  }

  @Test
  void twoPassesOfTwiceTheVarianceAreOnePassWhereAllIsLinear() {
    double[][] members = sample(30, 1, 2);
    double[] observed = {1.3};
    double[][] once =
        SquareRootFilter.of(members, observed, new double[][] {{0.2}}).update(members);
    double[][] half =
        SquareRootFilter.of(members, observed, new double[][] {{0.4}}).update(members);
    double[][] twice = SquareRootFilter.of(half, observed, new double[][] {{0.4}}).update(half);

    for (int m = 0; m < members.length; m++) {
      assertThat(twice[m][0]).isCloseTo(once[m][0], within(1e-10));
    }
  }

  @Test
  void thePointMovesByItsOwnInnovation() {
    double[][] members = sample(30, 1, 3);
    double mean = SquareRootFilter.mean(members)[0];
    double variance = covariance(members).get(0, 0);
    SquareRootFilter filter =
        SquareRootFilter.of(members, new double[] {2}, new double[][] {{0.5}});

    double[] moved = filter.moved(new double[] {mean + 1}, new double[] {2 - mean - 1}, members);

    assertThat(moved[0])
        .isCloseTo(mean + 1 + variance / (variance + 0.5) * (1 - mean), within(1e-10));
  }
}
