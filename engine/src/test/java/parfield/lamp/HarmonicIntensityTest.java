package parfield.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class HarmonicIntensityTest {
  private static final double[][] NONE = {};

  private static double[][] rows(SplittableRandom random, int orders, int nodes) {
    double[][] rows = new double[orders][nodes];
    for (double[] row : rows) {
      for (int i = 0; i < nodes; i++) {
        row[i] = random.nextDouble() - 0.5;
      }
    }
    return rows;
  }

  /** At a node nothing is interpolated: the series itself, by hand. */
  @Test
  void isTheExponentialOfItsSeriesAtTheNodes() {
    HarmonicIntensity lamp =
        new HarmonicIntensity(
            new double[][] {{4, 3, 1}, {0, 0.2, 0.1}, {0, 0.3, 0.4}},
            new double[][] {{0, 0, 0}, {0, -0.1, 0.5}, {0, 0.05, 0}});
    double gamma = Math.PI / 4;
    double azimuth = 0.7;
    double log =
        3
            + 0.2 * Math.cos(azimuth)
            + 0.3 * Math.cos(2 * azimuth)
            - 0.1 * Math.sin(azimuth)
            + 0.05 * Math.sin(2 * azimuth);
    assertThat(lamp.intensity(gamma, azimuth)).isCloseTo(Math.exp(log), within(1e-9));
    assertThat(lamp.intensity(0, 1.9)).isCloseTo(Math.exp(4), within(1e-9));
    assertThat(lamp.intensity(Math.PI / 2, 0)).isCloseTo(Math.exp(1.5), within(1e-9));
  }

  /** Catmull–Rom pieces reproduce a parabola about nadir away from the horizon. */
  @Test
  void interpolatesSmoothlyInGamma() {
    int nodes = 19;
    double[] row = new double[nodes];
    for (int i = 0; i < nodes; i++) {
      row[i] = 5 - 0.01 * i * i;
    }
    HarmonicIntensity lamp = new HarmonicIntensity(new double[][] {row}, NONE);
    for (double position = 0; position < nodes - 3; position += 0.1) {
      double gamma = Math.PI / 2 * position / (nodes - 1);
      assertThat(Math.log(lamp.intensity(gamma, 0)))
          .isCloseTo(5 - 0.01 * position * position, within(1e-12));
    }
  }

  @Test
  void isPositiveBelowTheHorizonAndDarkAboveIt() {
    SeededLaw.holds(
        200,
        random -> {
          int nodes = 2 + random.nextInt(20);
          HarmonicIntensity lamp =
              new HarmonicIntensity(rows(random, 3, nodes), rows(random, 3, nodes));
          double azimuth = 20 * (random.nextDouble() - 0.5);
          double gamma = Math.PI / 2 * random.nextDouble();
          assertThat(lamp.intensity(gamma, azimuth)).isPositive();
          assertThat(lamp.intensity(gamma, azimuth + 2 * Math.PI))
              .isCloseTo(lamp.intensity(gamma, azimuth), within(1e-9));
          assertThat(lamp.around(gamma, new double[] {0.3, azimuth})[1])
              .isEqualTo(lamp.intensity(gamma, azimuth));
          assertThat(lamp.intensity(Math.PI / 2 + 1e-9 + random.nextDouble(), azimuth)).isZero();
          assertThat(lamp.intensity(Double.NaN, azimuth)).isZero();
        });
  }

  @Test
  void knowsItsSymmetry() {
    SeededLaw.holds(
        100,
        random -> {
          double[][] even = rows(random, 5, 6);
          even[1] = new double[6];
          even[3] = new double[6];
          HarmonicIntensity quadrant = new HarmonicIntensity(even, NONE);
          double gamma = Math.PI / 2 * random.nextDouble();
          double azimuth = 7 * random.nextDouble();
          double here = quadrant.intensity(gamma, azimuth);
          assertThat(quadrant.quadrantSymmetric()).isTrue();
          assertThat(quadrant.axiallySymmetric()).isFalse();
          assertThat(quadrant.intensity(gamma, -azimuth)).isCloseTo(here, within(1e-9));
          assertThat(quadrant.intensity(gamma, Math.PI - azimuth)).isCloseTo(here, within(1e-9));
        });
    assertThat(new HarmonicIntensity(new double[][] {{1, 2}}, NONE).axiallySymmetric()).isTrue();
    assertThat(new HarmonicIntensity(new double[][] {{1, 2}, {0, 1}}, NONE).quadrantSymmetric())
        .isFalse();
    assertThat(
            new HarmonicIntensity(
                    new double[][] {{1, 2}, {0, 0}}, new double[][] {{0, 0}, {0, 0.1}})
                .quadrantSymmetric())
        .isFalse();
  }

  @Test
  void handsOutCopies() {
    double[][] cosine = {{1, 2}};
    HarmonicIntensity lamp = new HarmonicIntensity(cosine, NONE);
    cosine[0][0] = 9;
    lamp.cosine()[0][0] = 8;

    assertThat(lamp.cosine()).isDeepEqualTo(new double[][] {{1, 2}});
    assertThat(lamp.sine()).isEmpty();
  }

  @Test
  void refusesWhatIsNoSeries() {
    refuses(
        new double[0][],
        NONE,
        "a harmonic distribution needs at least one row of two coefficients");
    refuses(
        new double[][] {{1}},
        NONE,
        "a harmonic distribution needs at least one row of two coefficients");
    refuses(
        new double[][] {{1, 2}, {0, 0}},
        new double[][] {{0, 0}},
        "sine rows must be none or as many as cosine rows; got 1 and 2");
    refuses(new double[][] {{1, 2}, {0, 0, 0}}, NONE, "row 1 has 3 coefficients, expected 2");
    refuses(new double[][] {{1, Double.NaN}}, NONE, "row 0 holds NaN; coefficients must be finite");
    refuses(
        new double[][] {{1, 2}},
        new double[][] {{0, Double.POSITIVE_INFINITY}},
        "row 0 holds Infinity; coefficients must be finite");
  }

  private static void refuses(double[][] cosine, double[][] sine, String message) {
    assertThatThrownBy(() -> new HarmonicIntensity(cosine, sine))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(message);
  }
}
