package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.lamp.CosinePower;
import parfield.lamp.HarmonicIntensity;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.TabulatedIntensity;

class IntensityTableTest {
  private static final HarmonicIntensity OVAL =
      new HarmonicIntensity(
          new double[][] {{4, 3.8, 3, 1, -1}, {0, 0, 0, 0, 0}, {0, .1, .3, .4, .2}},
          new double[0][]);
  private static final HarmonicIntensity SKEWED =
      new HarmonicIntensity(
          new double[][] {{4, 3.8, 3, 1, -1}, {0, .1, .2, .3, 0}},
          new double[][] {{0, 0, 0, 0, 0}, {0, -.1, .1, .2, .1}});

  @Test
  void keepsToItsDistribution() {
    for (IntensityDistribution lamp :
        new IntensityDistribution[] {new CosinePower(55, 2.2), OVAL, SKEWED}) {
      IntensityTable table = IntensityTable.of(lamp);
      assertThat(table.axial()).isEqualTo(lamp.axiallySymmetric());
      SeededLaw.holds(
          500,
          random -> {
            double gamma = Math.PI / 2 * random.nextDouble() * .999;
            double azimuth = 2 * Math.PI * random.nextDouble();
            double size = .01 + random.nextDouble();
            assertThat(table.at(gamma, size * Math.cos(azimuth), size * Math.sin(azimuth)))
                .isCloseTo(lamp.intensity(gamma, azimuth), within(1e-4 * 55));
          });
      // One step of the coarser table beyond the horizon.
      assertThat(table.at(Math.toRadians(90.36), 1, 0)).as("above the horizon").isZero();
      assertThat(table.at(Math.PI, 0, 1)).isZero();
    }
  }

  @Test
  void keepsWhatALampSendsUpward() {
    TabulatedIntensity bare =
        new TabulatedIntensity(
            new double[] {0, Math.PI}, new double[] {0}, new double[][] {{10}, {20}});
    IntensityTable table = IntensityTable.of(bare);
    assertThat(table.at(Math.PI / 2, 1, 0)).isCloseTo(15, within(1e-9));
    assertThat(table.at(Math.PI, 1, 0)).isCloseTo(20, within(1e-9));
  }

  @Test
  void aDarkLampIsDark() {
    IntensityTable table = IntensityTable.of(new CosinePower(0, 1));
    assertThat(table.at(0, 0, 0)).isZero();
    assertThat(table.at(1, 1, 0)).isZero();
  }
}
