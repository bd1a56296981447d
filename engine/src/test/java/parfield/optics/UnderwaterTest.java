package parfield.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.spectrum.Finding;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.Scale;
import parfield.spectrum.WaveBands;
import parfield.spectrum.Wavelengths;

class UnderwaterTest {
  private static PhotonSpectrum white() {
    Wavelengths wavelengths = Wavelengths.even(380, 720, 2);
    double[] photons = new double[wavelengths.size()];
    for (int i = 0; i < photons.length; i++) {
      double blue = (wavelengths.nm(i) - 450) / 12;
      double broad = (wavelengths.nm(i) - 580) / 60;
      photons[i] = Math.exp(-blue * blue) + 0.6 * Math.exp(-broad * broad);
    }
    return new PhotonSpectrum(wavelengths, photons, Scale.IRRADIANCE).atPpfd(400);
  }

  /** Beer and Lambert at one wavelength: Pope and Fry's .340 per metre at 650 nm. */
  @Test
  void absorbsEachWavelengthByItself() {
    PhotonSpectrum there = Underwater.spectrum(white(), Water.seaWater(0), 1.5);
    assertThat(there.at(650)).isCloseTo(white().at(650) * Math.exp(-.340 * 1.5), within(1e-12));
    assertThat(there.scale()).isEqualTo(Scale.IRRADIANCE);
  }

  /** Two ways to the same PAR: this spectrum's, and the attenuation of the channel. */
  @Test
  void agreesWithTheAttenuationOfTheChannel() {
    SeededLaw.holds(
        50,
        random -> {
          Water water = Water.seaWater(0.3 * random.nextDouble());
          double metres = 2 * random.nextDouble();
          double left =
              Underwater.spectrum(white(), water, metres).parPhotons() / white().parPhotons();
          assertThat(left)
              .isCloseTo(Attenuation.of(white(), water).transmittance(metres), within(2e-4));
        });
  }

  /** One metre, then another, is two metres. */
  @Test
  void pathsAddUp() {
    Water water = Water.seaWater(0.1);
    PhotonSpectrum once = Underwater.spectrum(white(), water, 2);
    PhotonSpectrum twice = Underwater.spectrum(Underwater.spectrum(white(), water, 1), water, 1);
    for (int i = 0; i < once.size(); i++) {
      assertThat(twice.photonFlux(i)).isCloseTo(once.photonFlux(i), within(1e-12));
    }
  }

  /** Clear water takes red and leaves blue; yellowed water takes violet too. */
  @Test
  void sharesShiftFromTopToBottom() {
    List<Underwater.AtDepth> clear =
        Underwater.shift(white(), Water.seaWater(0), WaveBands.COMMON, List.of(0.0, 0.5, 1.0));
    assertThat(clear.get(0).parLeft()).isEqualTo(Finding.of(1.0));
    assertThat(clear.get(0).shares()).isEqualTo(WaveBands.COMMON.shares(white()));
    assertThat(share(clear.get(1), 5)).isLessThan(share(clear.get(0), 5));
    assertThat(share(clear.get(2), 5)).isLessThan(share(clear.get(1), 5));
    assertThat(share(clear.get(2), 2)).isGreaterThan(share(clear.get(0), 2));
    assertThat(clear.get(2).parLeft().toOptional().orElseThrow()).isBetween(0.85, 1.0);

    List<Underwater.AtDepth> yellowed =
        Underwater.shift(white(), Water.seaWater(0.5), WaveBands.COMMON, List.of(0.0, 1.0));
    assertThat(share(yellowed.get(1), 1)).isLessThan(share(yellowed.get(0), 1));
  }

  private static double share(Underwater.AtDepth there, int band) {
    return there.shares().toOptional().orElseThrow().get(band);
  }

  @Test
  void ultravioletHasNoPar() {
    PhotonSpectrum ultraviolet = new PhotonSpectrum(new double[] {350, 370}, new double[] {1, 1});
    List<Underwater.AtDepth> there =
        Underwater.shift(ultraviolet, Water.seaWater(0), WaveBands.COMMON, List.of(1.0));
    assertThat(there.get(0).parLeft())
        .isEqualTo(Finding.notDefined("no photons within 400 to 700 nm"));
  }

  @Test
  void refusesNegativePaths() {
    assertThatThrownBy(() -> Underwater.spectrum(white(), Water.seaWater(0), -1))
        .hasMessage("a path in water must be 0 m or longer; got -1.0 m");
  }
}
