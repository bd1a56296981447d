package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parfield.SeededLaw;

/** Weights and limits of IEC 62471:2006 and Directive 2006/25/EC. */
class EyeExposureValidationTest {
  private static final ViewedSource LARGE = new ViewedSource(0.1, 0.1, 0.2);

  /** Light of one wavelength, {@code irradiance} W m⁻² at the eye. */
  private static RadiantSpectrum line(double nm, double irradiance) {
    return new RadiantSpectrum(
        Wavelengths.of(nm - 0.01, nm, nm + 0.01),
        new double[] {0, 100 * irradiance, 0},
        Scale.IRRADIANCE);
  }

  private static double seconds(EyeExposure exposure, int limit) {
    return exposure.limits().get(limit).longestSeconds().orElseThrow();
  }

  /** 450 nm, 1000 W m⁻² sr⁻¹: L_B 940 W m⁻² sr⁻¹, 1063.8 s. */
  @Test
  void weighsBlueRadiance() {
    EyeExposure exposure = EyeExposure.of(line(450, 1000 * LARGE.projectedSolidAngle()), LARGE);
    assertThat(exposure.blueRadiance()).isCloseTo(940, within(0.5));
    assertThat(seconds(exposure, 0)).isCloseTo(1063.8, within(0.6));
    assertThat(exposure.limits().get(0).about()).isEqualTo("retina, blue light");
  }

  /** K_B,v in mW per lm: A .3070, D65 .9854, LED-B5 .8856, SYN4_BLUE 2.699. */
  @ParameterizedTest
  @CsvSource({
    "illuminant_A_D65_5nm.csv, A, .3070",
    "illuminant_A_D65_5nm.csv, D65, .9854",
    "illuminants_LED_5nm.csv, LED-B5, .8856",
    "synthetic_SYN4_BLUE_1nm.csv, S, 2.699"
  })
  void weighsBlueLightPerLumen(String file, String column, double expected) {
    RadiantSpectrum light =
        ReferenceSpectra.column(file, column).onto(Wavelengths.even(380, 780, 1));
    assertThat(1000 * EyeExposure.blueLightPerLumen(light).toOptional().orElseThrow())
        .isCloseTo(expected, within(0.002 * expected));
  }

  /** B(λ), table 4.2: 500–600 nm is 10^((450−λ)/50). */
  @Test
  void blueWeightFollowsItsFormula() {
    for (double nm = 500; nm <= 600; nm += 5) {
      assertThat(EyeExposure.blueLightWeight().at(nm))
          .isCloseTo(Math.pow(10, (450 - nm) / 50), within(6e-4));
    }
    assertThat(EyeExposure.blueLightWeight().at(437)).isEqualTo(1);
    assertThat(EyeExposure.blueLightWeight().at(701)).isZero();
    assertThat(EyeExposure.actinicWeight().at(270)).isEqualTo(1);
  }

  /** Large source: 10⁶ J m⁻² sr⁻¹ up to 10⁴ s, then 100 W m⁻² sr⁻¹ without end. */
  @Test
  void largeSourcesAreLimitedByRadiance() {
    double angle = LARGE.projectedSolidAngle();
    assertThat(EyeExposure.of(line(440, 99 * angle), LARGE).limits().get(0).longestSeconds())
        .isEmpty();
    assertThat(seconds(EyeExposure.of(line(440, 101 * angle), LARGE), 0))
        .isCloseTo(9901, within(2.0));
  }

  /** Small source: 100 J m⁻² (Directive). */
  @Test
  void smallSourcesAreLimitedByIrradiance() {
    ViewedSource small = new ViewedSource(0.005, 0.005, 0.5);
    assertThat(small.small()).isTrue();
    EyeExposure exposure = EyeExposure.of(line(440, 2), small);
    assertThat(exposure.limits().get(0).about()).isEqualTo("retina, blue light, small source");
    assertThat(seconds(exposure, 0)).isCloseTo(50, within(1e-6));
    assertThat(EyeExposure.of(line(440, 0.009), small).limits().get(0).longestSeconds()).isEmpty();
  }

  /** Actinic: 30 J m⁻² in 8 h. Near: 10⁴ J m⁻² up to 1000 s, then 10 W m⁻² (IEC). */
  @Test
  void ultravioletIsLimitedByDose() {
    EyeExposure deep = EyeExposure.of(line(270, 0.1), LARGE);
    assertThat(deep.actinicIrradiance()).isCloseTo(0.1, within(1e-4));
    assertThat(seconds(deep, 1)).isCloseTo(300, within(0.5));
    assertThat(deep.limits().get(2).longestSeconds()).isEmpty();

    EyeExposure near = EyeExposure.of(line(365, 20), LARGE);
    assertThat(near.nearUltraviolet()).isCloseTo(20, within(1e-9));
    assertThat(seconds(near, 2)).isCloseTo(500, within(1e-6));
    assertThat(EyeExposure.of(line(365, 9), LARGE).limits().get(2).longestSeconds()).isEmpty();
    assertThat(seconds(EyeExposure.of(line(365, 1), LARGE), 3)).isCloseTo(1e4, within(1e-5));
    assertThat(near.fromNm()).isEqualTo(364.99);
  }

  /** Radiance of an even disc or square far away is irradiance over area over distance squared. */
  @Test
  void solidAngleIsThatOfASquare() {
    ViewedSource far = new ViewedSource(0.1, 0.2, 10);
    assertThat(far.projectedSolidAngle()).isCloseTo(0.1 * 0.2 / 100, within(1e-7));
    assertThat(far.angle()).isCloseTo(0.015, within(1e-6));
    assertThat(far.small()).isFalse();
    assertThat(new ViewedSource(1e6, 1e6, 1).projectedSolidAngle())
        .as("a whole half space")
        .isCloseTo(Math.PI, within(1e-5));
  }

  /** Twice as far from a small source: a quarter of the irradiance, the same radiance. */
  @Test
  void radianceDoesNotFallWithDistance() {
    SeededLaw.holds(
        100,
        random -> {
          double distance = 1 + 3 * random.nextDouble();
          ViewedSource near = new ViewedSource(0.05, 0.05, distance);
          ViewedSource far = new ViewedSource(0.05, 0.05, 2 * distance);
          double radiance = 10 + 1000 * random.nextDouble();
          EyeExposure atNear =
              EyeExposure.of(line(450, radiance * near.projectedSolidAngle()), near);
          EyeExposure atFar = EyeExposure.of(line(450, radiance * far.projectedSolidAngle()), far);
          assertThat(atFar.blueRadiance())
              .isCloseTo(atNear.blueRadiance(), within(1e-9 * atNear.blueRadiance()));
          assertThat(atNear.blueIrradiance() / atFar.blueIrradiance()).isCloseTo(4, within(0.01));
        });
  }

  @Test
  void refusesWhatIsNoIrradiance() {
    assertThatThrownBy(
            () ->
                EyeExposure.of(
                    new RadiantSpectrum(new double[] {400, 700}, new double[] {1, 1}), LARGE))
        .hasMessage(
            "exposure of eyes needs a spectrum in W m⁻² nm⁻¹ at the eye; this one's scale is"
                + " unknown; scale it with a PPFD that was measured there");
    assertThatThrownBy(() -> new ViewedSource(0, 0.1, 1))
        .hasMessage(
            "a viewed source has sides and a distance above 0 m; got 0.0 x 0.1 m seen from 1.0 m");
  }
}
