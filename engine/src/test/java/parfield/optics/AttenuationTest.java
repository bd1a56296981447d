package parfield.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parfield.SeededLaw;
import parfield.spectrum.PhotonSpectrum;

class AttenuationTest {
  /** A bell about a wavelength [nm], sampled every nanometre. */
  private static PhotonSpectrum bell(double peak, double width) {
    double[] wavelengths = new double[351];
    double[] photons = new double[351];
    for (int i = 0; i < photons.length; i++) {
      wavelengths[i] = 380 + i;
      photons[i] = Math.exp(-Math.pow((wavelengths[i] - peak) / width, 2) / 2);
    }
    return new PhotonSpectrum(wavelengths, photons);
  }

  /** ∫ S e^(−aL) dλ / ∫ S dλ over 400–700 nm by the trapezoid rule at .05 nm. */
  private static double integral(PhotonSpectrum spectrum, Water water, double metres) {
    double left = 0;
    double all = 0;
    int steps = 6000;
    for (int i = 0; i <= steps; i++) {
      double wavelength = 400 + 300.0 * i / steps;
      double photons = spectrum.at(wavelength) * (i == 0 || i == steps ? .5 : 1);
      left += photons * Math.exp(-water.absorption(wavelength) * metres);
      all += photons;
    }
    return left / all;
  }

  @ParameterizedTest
  @CsvSource({"450, 15, 0.05", "420, 10, 0.4", "520, 20, 0", "660, 10, 0.05", "550, 80, 0.1"})
  void comesWithinAMillionthOfTheIntegral(double peak, double width, double yellowing) {
    PhotonSpectrum spectrum = bell(peak, width);
    Water water = Water.seaWater(yellowing);
    Attenuation attenuation = Attenuation.of(spectrum, water);
    for (double metres : new double[] {0, 0.013, 0.25, 0.7, 1.1, 3.3}) {
      double exact = integral(spectrum, water, metres);
      assertThat(attenuation.transmittance(metres))
          .as("after %s m", metres)
          .isCloseTo(exact, within(1e-6 * exact));
    }
  }

  @Test
  void fallsFromOneAndNeverRises() {
    SeededLaw.holds(
        200,
        random -> {
          Attenuation attenuation =
              Attenuation.of(
                  bell(400 + 300 * random.nextDouble(), 5 + 60 * random.nextDouble()),
                  Water.seaWater(random.nextDouble()));
          double near = 20 * random.nextDouble();
          double far = near + random.nextDouble();
          assertThat(attenuation.transmittance(0)).isEqualTo(1);
          assertThat(attenuation.transmittance(far))
              .isLessThanOrEqualTo(attenuation.transmittance(near))
              .isGreaterThanOrEqualTo(0);
        });
  }

  /** Beyond the table the last slope goes on: Beer and Lambert for the light that is left. */
  @Test
  void goesOnBeyondItsTable() {
    Attenuation attenuation = Attenuation.of(bell(450, 5), Water.seaWater(0.1));
    double end = Attenuation.MAX_METRES;
    double atEnd = attenuation.transmittance(end);
    assertThat(attenuation.transmittance(end + 1e-9)).isCloseTo(atEnd, within(1e-8 * atEnd));
    double step = attenuation.transmittance(end + 2) / attenuation.transmittance(end + 1);
    assertThat(attenuation.transmittance(end + 3) / attenuation.transmittance(end + 2))
        .isCloseTo(step, within(1e-12));
  }

  @Test
  void waterThatTakesNothingLeavesAll() {
    assertThat(Attenuation.none().transmittance(0)).isEqualTo(1);
    assertThat(Attenuation.none().transmittance(7)).isEqualTo(1);
  }

  @Test
  void refusesLightWithoutPar() {
    PhotonSpectrum infrared = new PhotonSpectrum(new double[] {750, 800}, new double[] {1, 1});
    assertThatThrownBy(() -> Attenuation.of(infrared, Water.seaWater(0)))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "the attenuation of PAR needs photons within 400-700 nm; this spectrum holds none"
                + " there");
  }
}
