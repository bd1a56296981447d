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
        new double[] {450, 460},
        new double[] {0, 0},
        "a spectrum must hold photons; this one sums to 0.0 over 450.0 to 460.0 nm");
    refuses(
        new double[] {450, 460},
        new double[] {1, -2},
        "a spectrum must hold photons; this one sums to -5.0 over 450.0 to 460.0 nm");
    assertThatThrownBy(
            () -> new PhotonSpectrum(Wavelengths.of(450, 460), new double[] {1}, Scale.IRRADIANCE))
        .hasMessage(
            "a spectrum needs two or more pairs of wavelength and photon flux; got 2 wavelengths"
                + " and 1 values");
    assertThatThrownBy(() -> PhotonSpectrum.flat().times(0))
        .hasMessage("a spectrum can only be scaled by a number above 0; got 0.0");
    assertThatThrownBy(() -> PhotonSpectrum.flat().onto(Wavelengths.of(800, 900)))
        .hasMessage("no photons of this spectrum lie within 800.0 to 900.0 nm");
  }

  /** A lamp of ultraviolet or infrared light alone is a spectrum too; it has no PAR. */
  @Test
  void holdsLightThatIsNoPar() {
    PhotonSpectrum ultraviolet =
        new PhotonSpectrum(Wavelengths.of(360, 365, 370), new double[] {0, 2, 0}, Scale.IRRADIANCE);

    assertThat(ultraviolet.photons()).isEqualTo(10);
    assertThat(ultraviolet.parPhotons()).isZero();
    assertThat(ultraviolet.ppfd()).hasValue(0);
    assertThatThrownBy(() -> ultraviolet.atPpfd(100))
        .hasMessage("a spectrum without photons within 400-700 nm cannot be scaled to a PPFD");
  }

  @Test
  void hasAPpfdOnlyIfItIsAnIrradiance() {
    PhotonSpectrum flat = PhotonSpectrum.flat();
    assertThat(flat.scale()).isEqualTo(Scale.RELATIVE);
    assertThat(flat.scale().photonUnit()).isEmpty();
    assertThat(flat.ppfd()).isEmpty();
    assertThat(new PhotonSpectrum(Wavelengths.of(400, 700), new double[] {1, 1}, Scale.FLUX).ppfd())
        .isEmpty();

    PhotonSpectrum known = flat.atPpfd(150);
    assertThat(known.scale().photonUnit()).hasValue("µmol m⁻² s⁻¹");
    assertThat(known.ppfd().orElseThrow()).isCloseTo(150, within(1e-12));
    assertThat(known.times(2).ppfd().orElseThrow()).isCloseTo(300, within(1e-12));
    assertThat(known.relative().ppfd()).isEmpty();
  }

  private static void refuses(double[] wavelengths, double[] photons, String message) {
    assertThatThrownBy(() -> new PhotonSpectrum(wavelengths, photons))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(message);
  }
}
