package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class UnmixingTest {
  private static final List<ChannelLight> CHANNELS = Leds.fixture();

  private static PhotonSpectrum mix(List<Double> levels) {
    return Superposition.of(CHANNELS.stream().map(ChannelLight::spectrum).toList(), levels);
  }

  private static List<Double> levels(SplittableRandom random) {
    List<Double> levels = new ArrayList<>();
    for (int c = 0; c < CHANNELS.size(); c++) {
      levels.add(0.2 + 0.8 * random.nextDouble());
    }
    return levels;
  }

  private static double peak(PhotonSpectrum spectrum) {
    double peak = 0;
    for (double value : spectrum.photonFluxes()) {
      peak = Math.max(peak, value);
    }
    return peak;
  }

  /**
   * A measured spectrum with noise.
   *
   * @param even part of the noise that is the same everywhere, of the peak
   * @param own part that grows with the light, of each sample
   */
  private static PhotonSpectrum noisy(
      PhotonSpectrum clean, double even, double own, SplittableRandom random) {
    double[] values = clean.photonFluxes();
    double peak = peak(clean);
    for (int i = 0; i < values.length; i++) {
      values[i] += even * peak * random.nextGaussian() + own * values[i] * random.nextGaussian();
    }
    return new PhotonSpectrum(clean.wavelengths(), values, clean.scale());
  }

  @Test
  @DisplayName("a known mix with 1 % noise comes back within 2 % per channel, 1,000 times of 1,000")
  void recoversAKnownMix() {
    SeededLaw.holds(
        1_000,
        random -> {
          List<Double> truth = levels(random);
          Unmixing found = Unmixing.of(noisy(mix(truth), 0, 0.01, random), CHANNELS);
          for (int c = 0; c < truth.size(); c++) {
            assertThat(found.levels().get(c).level())
                .as(CHANNELS.get(c).name())
                .isCloseTo(truth.get(c), within(0.02 * truth.get(c)));
          }
          assertThat(found.residual()).isLessThan(0.02);
        });
  }

  @Test
  @DisplayName("noise of 1 % of the peak at every sample costs no channel 2 % of its full output")
  void recoversAMixUnderEvenNoise() {
    SeededLaw.holds(
        1_000,
        random -> {
          List<Double> truth = levels(random);
          Unmixing found = Unmixing.of(noisy(mix(truth), 0.01, 0, random), CHANNELS);
          for (int c = 0; c < truth.size(); c++) {
            assertThat(found.levels().get(c).level())
                .as(CHANNELS.get(c).name())
                .isCloseTo(truth.get(c), within(0.02));
          }
        });
  }

  @Test
  @DisplayName("two standard errors hold the truth as often as they should, whatever the noise")
  void standardErrorsHold() {
    for (double[] noise : new double[][] {{0.01, 0}, {0, 0.01}, {0.003, 0.03}}) {
      SplittableRandom random = new SplittableRandom(20_260);
      int held = 0;
      int all = 0;
      for (int i = 0; i < 400; i++) {
        List<Double> truth = levels(random);
        Unmixing found = Unmixing.of(noisy(mix(truth), noise[0], noise[1], random), CHANNELS);
        for (int c = 0; c < truth.size(); c++) {
          Unmixing.Level level = found.levels().get(c);
          held += Math.abs(level.level() - truth.get(c)) <= 2 * level.standardError() ? 1 : 0;
          all++;
        }
      }
      // 95.4 % of a normal law; 2,000 correlated cases scatter by less than 1.5 points.
      assertThat((double) held / all).isCloseTo(0.954, within(0.02));
    }
  }

  @Test
  @DisplayName("without noise the mix comes back exactly, a dark channel as dark")
  void isExactWithoutNoise() {
    List<Double> truth = List.of(0.5, 1.0, 0.0, 0.25, 0.0);
    Unmixing found = Unmixing.of(mix(truth), CHANNELS);
    for (int c = 0; c < truth.size(); c++) {
      assertThat(found.levels().get(c).level()).isCloseTo(truth.get(c), within(1e-12));
      assertThat(found.levels().get(c).standardError()).isLessThan(1e-12);
    }
    assertThat(found.residual()).isLessThan(1e-13);
    assertThat(found.warning()).isEmpty();
  }

  @Test
  @DisplayName(
      "levels follow the measured light in proportion, and the order of channels is nothing")
  void isLinearAndBlindToOrder() {
    SeededLaw.holds(
        200,
        random -> {
          PhotonSpectrum measured = noisy(mix(levels(random)), 0.02, 0.02, random);
          List<ChannelLight> backward = new ArrayList<>(CHANNELS);
          Collections.reverse(backward);
          Unmixing one = Unmixing.of(measured, CHANNELS);
          Unmixing other = Unmixing.of(measured.times(3), backward);
          for (int c = 0; c < CHANNELS.size(); c++) {
            Unmixing.Level a = one.levels().get(c);
            Unmixing.Level b = other.levels().get(CHANNELS.size() - 1 - c);
            assertThat(b.channel()).isEqualTo(a.channel());
            assertThat(b.level()).isCloseTo(3 * a.level(), within(1e-10));
            assertThat(b.standardError()).isCloseTo(3 * a.standardError(), within(1e-10));
          }
        });
  }

  /**
   * Two spectra of angle φ have a condition of √((1 + cos φ) / (1 − cos φ)): the singular values of
   * two unit vectors.
   */
  @Test
  @DisplayName("nearly alike channels are named, with the condition that two vectors have")
  void warnsOfAlikeChannels() {
    List<ChannelLight> channels = new ArrayList<>(CHANNELS);
    channels.add(new ChannelLight("royal", Leds.bell(450.4, 10)));
    Unmixing found = Unmixing.of(mix(List.of(.5, .5, .5, .5, .5)), channels);
    assertThat(found.alike()).containsExactly("blue", "royal");
    assertThat(found.warning().orElseThrow())
        .startsWith("channels blue, royal are nearly alike (condition ")
        .endsWith("their single levels hardly; measure them one by one");

    List<ChannelLight> two = List.of(channels.get(1), channels.get(5));
    double cosine = Math.exp(-Math.pow(0.4 / (2 * 10), 2));
    assertThat(Unmixing.of(mix(List.of(.5, .5, .5, .5, .5)), two).condition())
        .isCloseTo(Math.sqrt((1 + cosine) / (1 - cosine)), within(0.01));
  }

  @Test
  void saysWhatIsWrong() {
    PhotonSpectrum measured = mix(List.of(1.0, 1.0, 1.0, 1.0, 1.0));
    assertThatThrownBy(() -> Unmixing.of(measured, List.of()))
        .hasMessage(
            "taking a spectrum apart needs one channel or more, and more samples than channels;"
                + " got 0 channels and 401 samples");
    PhotonSpectrum infrared =
        new PhotonSpectrum(Wavelengths.of(900, 950), new double[] {1, 1}, Scale.IRRADIANCE);
    assertThatThrownBy(() -> Unmixing.of(measured, List.of(new ChannelLight("infrared", infrared))))
        .hasMessage(
            "channel infrared has no light within the measured 380.0 to 780.0 nm; measure further");
  }
}
