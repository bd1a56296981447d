package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class PhotonSpectrumTest {
  @Test
  void isLinearBetweenSamplesAndDarkOutside() {
    PhotonSpectrum spectrum =
        new PhotonSpectrum(new double[] {450, 460, 500}, new double[] {2, 6, 0});

    assertThat(spectrum.at(450)).isEqualTo(2);
    assertThat(spectrum.at(455)).isCloseTo(4, within(1e-12));
    assertThat(spectrum.at(480)).isCloseTo(3, within(1e-12));
    assertThat(spectrum.at(449.999)).isZero();
    assertThat(spectrum.at(500.001)).isZero();
    assertThat(spectrum.at(Double.NaN)).isZero();
    assertThat(spectrum.size()).isEqualTo(3);
    assertThat(spectrum.wavelengthNm(1)).isEqualTo(460);
    assertThat(spectrum.photonFlux(1)).isEqualTo(6);
  }

  /** Areas of trapezia, by hand. */
  @Test
  void countsPhotonsExactly() {
    PhotonSpectrum spectrum =
        new PhotonSpectrum(new double[] {450, 460, 500}, new double[] {2, 6, 0});

    assertThat(spectrum.photons(400, 700)).isCloseTo(40 + 120, within(1e-12));
    assertThat(spectrum.photons(455, 460)).isCloseTo(25, within(1e-12));
    assertThat(spectrum.photons(455, 480)).isCloseTo(25 + 90, within(1e-12));
    assertThat(spectrum.photons(300, 450)).isZero();
    assertThat(spectrum.photons(500, 900)).isZero();
    assertThat(spectrum.photons(470, 470)).isZero();
  }

  @Test
  void flatHoldsAsManyPhotonsInEveryNanometre() {
    assertThat(PhotonSpectrum.flat().photons(400, 700)).isCloseTo(300, within(1e-12));
    assertThat(PhotonSpectrum.flat().photons(512.5, 513.5)).isCloseTo(1, within(1e-12));
    assertThat(PhotonSpectrum.flat()).isSameAs(PhotonSpectrum.flat());
  }

  @Test
  void photonsOfAWholeAreThoseOfItsParts() {
    SeededLaw.holds(
        300,
        random -> {
          int n = 2 + random.nextInt(40);
          double[] wavelengths = new double[n];
          double[] photons = new double[n];
          double at = 400 + 20 * random.nextDouble();
          for (int i = 0; i < n; i++) {
            wavelengths[i] = at;
            photons[i] = 0.1 + random.nextDouble();
            at += 0.5 + 10 * random.nextDouble();
          }
          PhotonSpectrum spectrum = new PhotonSpectrum(wavelengths, photons);
          double cut = 370 + 350 * random.nextDouble();
          double whole = spectrum.photons(300, 900);
          assertThat(spectrum.photons(300, cut) + spectrum.photons(cut, 900))
              .isCloseTo(whole, within(1e-12 * whole));
        });
  }

  @Test
  void copiesWhatItIsGiven() {
    double[] wavelengths = {400, 700};
    double[] photons = {1, 1};
    PhotonSpectrum spectrum = new PhotonSpectrum(wavelengths, photons);
    wavelengths[0] = 0;
    photons[0] = 9;

    assertThat(spectrum.at(400)).isEqualTo(1);
  }

  @Test
  void refusesWhatIsNoSpectrum() {
    refuses(
        new double[] {450},
        new double[] {1},
        "a spectrum needs two or more pairs of wavelength and photon flux; got 1 wavelengths and 1"
            + " values");
    refuses(
        new double[] {450, 460},
        new double[] {1},
        "a spectrum needs two or more pairs of wavelength and photon flux; got 2 wavelengths and 1"
            + " values");
    refuses(
        new double[] {450, 460},
        new double[] {1, Double.NaN},
        "sample 2 of a spectrum must be finite; got NaN at 460.0 nm");
    refuses(
        new double[] {450, Double.POSITIVE_INFINITY},
        new double[] {1, 1},
        "sample 2 of a spectrum must be finite; got 1.0 at Infinity nm");
    refuses(
        new double[] {450, 460, 460},
        new double[] {1, 1, 1},
        "wavelengths must ascend; sample 3 is 460.0 nm after 460.0 nm");
    refuses(
        new double[] {750, 800},
        new double[] {1, 1},
        "a spectrum must hold photons within 400-700 nm; this one holds none there");
    refuses(
        new double[] {450, 460},
        new double[] {0, 0},
        "a spectrum must hold photons within 400-700 nm; this one holds none there");
  }

  private static void refuses(double[] wavelengths, double[] photons, String message) {
    assertThatThrownBy(() -> new PhotonSpectrum(wavelengths, photons))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(message);
  }
}
