package parfield.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class TabulatedIntensityTest {
  private static final double QUARTER = Math.PI / 2;

  @Test
  void keepsItsNodesAndIsLinearBetweenThem() {
    TabulatedIntensity table =
        new TabulatedIntensity(
            new double[] {0, 0.5, 1},
            new double[] {0, QUARTER},
            new double[][] {{100, 100}, {80, 40}, {20, 10}});

    assertThat(table.intensity(0.5, 0)).isEqualTo(80);
    assertThat(table.intensity(0.5, QUARTER)).isEqualTo(40);
    assertThat(table.intensity(0.25, 0)).isCloseTo(90, within(1e-12));
    assertThat(table.intensity(0.75, QUARTER / 2)).isCloseTo((60 + 15) / 2.0, within(1e-12));
    assertThat(table.intensity(1.0001, 0)).isZero();
    assertThat(table.intensity(Double.NaN, 0)).isZero();
    assertThat(table.quadrantSymmetric()).isTrue();
    assertThat(table.axiallySymmetric()).isFalse();
  }

  @Test
  void onePlaneHoldsForEveryAzimuth() {
    TabulatedIntensity table =
        new TabulatedIntensity(new double[] {0, 1}, new double[] {0}, new double[][] {{10}, {0}});

    assertThat(table.axiallySymmetric()).isTrue();
    assertThat(table.intensity(0.5, 123)).isCloseTo(5, within(1e-12));
  }

  @Test
  void theLastPlaneSaysTheSymmetry() {
    SplittableRandom random = new SplittableRandom(17);
    for (double turns : new double[] {0.25, 0.5, 1}) {
      double last = 2 * Math.PI * turns;
      TabulatedIntensity table =
          new TabulatedIntensity(
              new double[] {0, 1},
              new double[] {0, last / 3, last},
              new double[][] {{5, 5, 5}, {9, 4, turns == 1 ? 9 : 2}});
      for (int i = 0; i < 1000; i++) {
        double azimuth = (random.nextDouble() - 0.5) * 40;
        double here = table.intensity(0.7, azimuth);
        assertThat(table.intensity(0.7, azimuth + 2 * Math.PI)).isCloseTo(here, within(1e-9));
        if (turns <= 0.5) {
          assertThat(table.intensity(0.7, -azimuth)).isCloseTo(here, within(1e-9));
        }
        if (turns == 0.25) {
          assertThat(table.intensity(0.7, Math.PI - azimuth)).isCloseTo(here, within(1e-9));
        }
      }
    }
  }

  @Test
  void aTableOfACosineLobeComesCloseToTheLobe() {
    CosinePower lobe = CosinePower.ofBeamAngle(100, Math.toRadians(90));
    double[] gammas = new double[91];
    double[][] rows = new double[91][1];
    for (int i = 0; i <= 90; i++) {
      gammas[i] = Math.toRadians(i);
      rows[i][0] = lobe.intensity(gammas[i], 0);
    }
    TabulatedIntensity table = new TabulatedIntensity(gammas, new double[] {0}, rows);
    for (double gamma = 0; gamma < 1.5; gamma += 0.013) {
      // Linear interpolation errs by at most h²/8 times the second derivative: 2 m I(0) here.
      assertThat(table.intensity(gamma, 1))
          .isCloseTo(lobe.intensity(gamma, 1), within(100 * 4 * Math.pow(Math.PI / 180, 2) / 8));
    }
  }

  @Test
  void refusesTablesThatMeanNothing() {
    assertThatThrownBy(
            () ->
                new TabulatedIntensity(
                    new double[] {0, 1}, new double[] {0, 1}, new double[][] {{1, 1}, {1, 1}}))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageStartingWith(
            "azimuths must be 0 alone or run from 0 to 90, 180 or 360 degrees; got 57.29");
    assertThatThrownBy(
            () ->
                new TabulatedIntensity(
                    new double[] {0, 1},
                    new double[] {0, 2 * Math.PI},
                    new double[][] {{1, 1}, {1, 2}}))
        .hasMessageStartingWith("azimuth 360 must repeat azimuth 0; got 2.0 and 1.0 at 57.29");
    assertThatThrownBy(
            () ->
                new TabulatedIntensity(
                    new double[] {0, 1}, new double[] {0}, new double[][] {{1}, {-1}}))
        .hasMessageStartingWith("an intensity must be 0 or more; got -1.0 at 57.29");
    assertThatThrownBy(
            () -> new TabulatedIntensity(new double[] {0}, new double[] {0}, new double[][] {{1}}))
        .hasMessage("an intensity table needs two polar angles and one azimuth; got 1 and 1");
    assertThatThrownBy(
            () ->
                new TabulatedIntensity(
                    new double[] {0, 4}, new double[] {0}, new double[][] {{1}, {1}}))
        .hasMessageStartingWith("polar angles must ascend to 180.0 degrees at most; got 229.18");
    assertThatThrownBy(
            () ->
                new TabulatedIntensity(
                    new double[] {0.1, 1}, new double[] {0}, new double[][] {{1}, {1}}))
        .hasMessageStartingWith("polar angles must begin at 0 degrees; got 5.72");
    assertThatThrownBy(
            () ->
                new TabulatedIntensity(new double[] {0, 1}, new double[] {0}, new double[][] {{1}}))
        .hasMessage("an intensity table needs one row a polar angle; got 1 rows for 2");
    assertThatThrownBy(
            () ->
                new TabulatedIntensity(
                    new double[] {0, 1}, new double[] {0}, new double[][] {{1}, {1, 2}}))
        .hasMessageStartingWith(
            "an intensity table needs one value an azimuth; got 2 for 1 at 57.29");
  }
}
