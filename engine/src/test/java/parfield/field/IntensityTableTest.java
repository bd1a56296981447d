package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
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
      IntensityTable table = IntensityTable.of(List.of(lamp));
      assertThat(table.axial()).isEqualTo(lamp.axiallySymmetric());
      SeededLaw.holds(
          500,
          random -> {
            double gamma = Math.PI / 2 * random.nextDouble() * .999;
            double azimuth = 2 * Math.PI * random.nextDouble();
            double size = .01 + random.nextDouble();
            assertThat(at(table, gamma, size * Math.cos(azimuth), size * Math.sin(azimuth)))
                .isCloseTo(lamp.intensity(gamma, azimuth), within(1e-4 * 55));
          });
      // One step of the coarser table beyond the horizon.
      assertThat(at(table, Math.toRadians(90.36), 1, 0)).as("above the horizon").isZero();
      assertThat(at(table, Math.PI, 0, 1)).isZero();
    }
  }

  @Test
  void keepsWhatALampSendsUpward() {
    TabulatedIntensity bare =
        new TabulatedIntensity(
            new double[] {0, Math.PI}, new double[] {0}, new double[][] {{10}, {20}});
    IntensityTable table = IntensityTable.of(List.of(bare));
    assertThat(at(table, Math.PI / 2, 1, 0)).isCloseTo(15, within(1e-9));
    assertThat(at(table, Math.PI, 1, 0)).isCloseTo(20, within(1e-9));
  }

  @Test
  void aDarkLampIsDark() {
    IntensityTable table = IntensityTable.of(List.of(new CosinePower(0, 1)));
    assertThat(at(table, 0, 0, 0)).isZero();
    assertThat(at(table, 1, 1, 0)).isZero();
  }

  /** Channels of unlike symmetry share one table. */
  @Test
  void keepsEachChannelOfAFixtureApart() {
    List<IntensityDistribution> channels = List.of(new CosinePower(55, 2.2), OVAL, SKEWED);
    IntensityTable table = IntensityTable.of(channels);
    assertThat(table.axial()).isFalse();
    assertThat(table.channels()).isEqualTo(3);
    double[] intensities = new double[3];
    SeededLaw.holds(
        500,
        random -> {
          double gamma = Math.PI / 2 * random.nextDouble() * .999;
          double azimuth = 2 * Math.PI * random.nextDouble();
          table.at(gamma, Math.cos(azimuth), Math.sin(azimuth), intensities);
          for (int c = 0; c < intensities.length; c++) {
            assertThat(intensities[c])
                .isCloseTo(channels.get(c).intensity(gamma, azimuth), within(1e-4 * 55));
          }
        });
  }

  private static double at(IntensityTable table, double gamma, double dx, double dy) {
    double[] intensity = new double[1];
    table.at(gamma, dx, dy, intensity);
    return intensity[0];
  }
}
