package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class SuperpositionTest {
  private static PhotonSpectrum random(java.util.SplittableRandom random) {
    Wavelengths wavelengths =
        RandomSpectra.wavelengths(
            random, 380 + 40 * random.nextDouble(), 650 + 100 * random.nextDouble(), 1, 12);
    return new PhotonSpectrum(
        wavelengths, RandomSpectra.values(random, wavelengths), Scale.IRRADIANCE);
  }

  @Test
  @DisplayName("photons of a sum are the sum of photons in any range, whatever the samples")
  void photonsAdd() {
    SeededLaw.holds(
        500,
        random -> {
          List<PhotonSpectrum> spectra = List.of(random(random), random(random), random(random));
          List<Double> factors = List.of(random.nextDouble(), 2 * random.nextDouble(), 0.5);
          PhotonSpectrum sum = Superposition.of(spectra, factors);
          double from = 370 + 300 * random.nextDouble();
          double to = from + 100 * random.nextDouble();
          double apart = 0;
          for (int k = 0; k < 3; k++) {
            apart += factors.get(k) * spectra.get(k).photons(from, to);
          }
          assertThat(sum.photons(from, to)).isCloseTo(apart, within(1e-9 * sum.parPhotons()));
          assertThat(sum.scale()).isEqualTo(Scale.IRRADIANCE);
        });
  }

  @Test
  void oneSpectrumStaysWhatItIs() {
    PhotonSpectrum bell = Leds.bell(450, 10);
    PhotonSpectrum sum = Superposition.of(List.of(bell, Leds.bell(500, 9)), List.of(2.0, 0.0));
    assertThat(sum.wavelengths()).isEqualTo(bell.wavelengths());
    assertThat(sum.photonFluxes()).containsExactly(bell.times(2).photonFluxes());
  }

  @Test
  void saysWhatIsWrong() {
    PhotonSpectrum bell = Leds.bell(450, 10);
    assertThatThrownBy(() -> Superposition.of(List.of(bell), List.of()))
        .hasMessage("a sum of spectra needs one factor for each; got 1 spectra and 0 factors");
    assertThatThrownBy(() -> Superposition.of(List.of(bell), List.of(-1.0)))
        .hasMessage("a factor of a spectrum must be 0 or more; got -1.0");
    assertThatThrownBy(() -> Superposition.of(List.of(bell), List.of(0.0)))
        .hasMessage("a sum of spectra needs one factor above 0; all are 0: there is no light");
    assertThatThrownBy(() -> Superposition.of(List.of(bell, bell.relative()), List.of(1.0, 1.0)))
        .hasMessage(
            "spectra of different scales do not add: IRRADIANCE and RELATIVE; scale them alike"
                + " first");
  }
}
