package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class PeakTest {
  private static RadiantSpectrum bells(
      Wavelengths wavelengths, double noise, SplittableRandom random, double[]... bells) {
    double[] power = new double[wavelengths.size()];
    for (int i = 0; i < power.length; i++) {
      for (double[] bell : bells) {
        double z = (wavelengths.nm(i) - bell[1]) / bell[2];
        power[i] += bell[0] * Math.exp(-z * z / 2);
      }
      power[i] += noise * random.nextGaussian();
    }
    return new RadiantSpectrum(wavelengths, power, Scale.RELATIVE);
  }

  /** A normal curve is as wide as 2.3548 of its standard deviations, wherever the samples lie. */
  @Test
  void findsABellBetweenTheSamples() {
    SeededLaw.holds(
        200,
        random -> {
          double centre = 420 + 200 * random.nextDouble();
          double sigma = 6 + 20 * random.nextDouble();
          List<Peak> peaks =
              Peak.of(
                  bells(Wavelengths.even(380, 780, 1), 0, random, new double[] {2, centre, sigma}));
          assertThat(peaks).hasSize(1);
          assertThat(peaks.get(0).centreNm()).isCloseTo(centre, within(0.1));
          assertThat(peaks.get(0).height()).isCloseTo(2, within(0.02));
          double width = 2 * Math.sqrt(2 * Math.log(2)) * sigma;
          assertThat(peaks.get(0).widthNm().toOptional().orElseThrow())
              .isCloseTo(width, within(0.01 * width));
        });
  }

  /** Noise of 1 % makes no peaks and moves them little. */
  @Test
  void isNotMisledByNoise() {
    SeededLaw.holds(
        200,
        random -> {
          List<Peak> peaks =
              Peak.of(
                  bells(
                      Wavelengths.even(380, 780, 1),
                      0.01,
                      random,
                      new double[] {1, 450, 9},
                      new double[] {0.4, 560, 45}));
          assertThat(peaks).hasSize(2);
          assertThat(peaks.get(0).centreNm()).isCloseTo(450, within(0.8));
          assertThat(peaks.get(0).height()).isCloseTo(1.02, within(0.03));
          assertThat(peaks.get(0).widthNm().toOptional().orElseThrow())
              .isCloseTo(21.5, within(1.2));
          assertThat(peaks.get(1).centreNm()).isCloseTo(560, within(8.0));
          assertThat(peaks.get(1).height()).isCloseTo(0.4, within(0.02));
        });
  }

  /** Two channels 25 nm apart: the valley between them is above the lower one's half height. */
  @Test
  void saysWhereAWidthIsNotDefined() {
    SplittableRandom none = new SplittableRandom(1);
    List<Peak> peaks =
        Peak.of(
            bells(
                Wavelengths.even(380, 780, 1),
                0,
                none,
                new double[] {1, 450, 9},
                new double[] {0.6, 478, 10}));
    assertThat(peaks).hasSize(2);
    assertThat(peaks.get(1).widthNm())
        .isEqualTo(Finding.notDefined("another peak rises before a flank falls to half the peak"));
    List<Peak> cut =
        Peak.of(bells(Wavelengths.even(445, 600, 1), 0, none, new double[] {1, 450, 9}));
    assertThat(cut.get(0).widthNm())
        .isEqualTo(Finding.notDefined("the spectrum ends before a flank falls to half the peak"));
  }

  /** Light that only rises to the spectrum's end has no peak there. */
  @Test
  void anEndIsNoPeak() {
    assertThat(Peak.of(new RadiantSpectrum(new double[] {400, 500, 600}, new double[] {1, 2, 3})))
        .isEmpty();
  }

  /** A plateau of two equal samples is one peak. */
  @Test
  void twoEqualSamplesAreOnePeak() {
    List<Peak> peaks =
        Peak.of(
            new PhotonSpectrum(
                new double[] {400, 410, 420, 430, 440, 450}, new double[] {0, 1, 3, 3, 1, 0}));
    assertThat(peaks).hasSize(1);
    assertThat(peaks.get(0).centreNm()).isCloseTo(425, within(5.0));
  }
}
