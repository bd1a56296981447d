package parfield.photon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.optics.Attenuation;
import parfield.optics.PhaseFunction;
import parfield.optics.Water;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Tank;

/** Thirty-two wavebands against the integral over the spectrum. */
class WavebandsTest {
  private static PhotonSpectrum bell(double centre, double deviation) {
    double[] wavelengths = new double[301];
    double[] flux = new double[301];
    for (int i = 0; i < 301; i++) {
      wavelengths[i] = 400 + i;
      double t = (wavelengths[i] - centre) / deviation;
      flux[i] = Math.exp(-t * t / 2);
    }
    return new PhotonSpectrum(wavelengths, flux);
  }

  @Test
  void narrowAndBroadLightIsDimmedAsByTheIntegral() {
    SeededLaw.holds(
        40,
        random -> {
          PhotonSpectrum one = bell(405 + 290 * random.nextDouble(), 6 + 10 * random.nextDouble());
          PhotonSpectrum two = bell(405 + 290 * random.nextDouble(), 6 + 60 * random.nextDouble());
          Water water = Water.seaWater(.4 * random.nextDouble());
          Wavebands bands = new Wavebands(List.of(one, two, PhotonSpectrum.flat()), water);
          Layer layer = bands.layer(Tank.of(1, 1, 1).withWater(water));
          for (PhotonSpectrum spectrum : List.of(one, two, PhotonSpectrum.flat())) {
            double[] shares = bands.shares(spectrum);
            for (double way : new double[] {.1, .7, 2}) {
              double[] weight = new double[Wavebands.COUNT];
              java.util.Arrays.fill(weight, 1);
              layer.attenuate(weight, way);
              double expected = Attenuation.of(spectrum, water).transmittance(way);
              assertThat(Packet.dot(shares, weight))
                  .as("%s m", way)
                  .isCloseTo(expected, within(1e-3 * expected));
            }
          }
        });
  }

  /** The table with its cubic is the exponential. */
  @Test
  void theTableIsTheExponential() {
    double[] a = {0, .004, .3, 2.5};
    Layer layer = new Layer(0, 1, 1.34, a, new double[4], PhaseFunction.isotropic(), 1.5);
    SeededLaw.holds(
        200,
        random -> {
          double way = 3 * random.nextDouble();
          double[] weight = {1, 1, 1, 1};
          layer.attenuate(weight, way);
          for (int k = 0; k < 4; k++) {
            assertThat(weight[k])
                .isCloseTo(Math.exp(-a[k] * way), within(1e-8 * Math.exp(-a[k] * way)));
          }
        });
  }
}
