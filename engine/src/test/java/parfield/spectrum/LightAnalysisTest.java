package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class LightAnalysisTest {
  private static RadiantSpectrum random(SplittableRandom random, double widest) {
    Wavelengths wavelengths = RandomSpectra.wavelengths(random, 300, 850, 0.5, widest);
    double[] power = RandomSpectra.values(random, wavelengths);
    for (int i = 0; i < power.length; i++) {
      power[i] += 0.1; // so that every figure is defined
    }
    return new RadiantSpectrum(wavelengths, power, Scale.IRRADIANCE);
  }

  /** The figures found at once are those of each definition alone. */
  @Test
  void agreesWithEachDefinition() {
    SeededLaw.holds(
        60,
        r -> {
          RadiantSpectrum light = random(r, 9);
          PhotonSpectrum photons = light.toPhotons();
          LightFigures found = LightAnalysis.of(light);
          assertThat(found.parPhotons())
              .isCloseTo(photons.parPhotons(), within(1e-9 * found.parPhotons()));
          assertThat(found.ultravioletPhotons())
              .isCloseTo(photons.photons(280, 400), within(1e-9 * found.parPhotons()));
          assertThat(found.farRedPhotons())
              .isCloseTo(photons.photons(700, 800), within(1e-9 * found.parPhotons()));
          for (int i = 0; i < 6; i++) {
            assertThat(found.bandShares().toOptional().orElseThrow().get(i))
                .isCloseTo(
                    WaveBands.COMMON.shares(photons).toOptional().orElseThrow().get(i),
                    within(1e-9));
          }
          assertThat(found.usableShare().toOptional().orElseThrow())
              .isCloseTo(
                  SymbiontAbsorption.usableShare(photons).toOptional().orElseThrow(), within(1e-9));
          assertThat(found.blueLightPerLumen().toOptional().orElseThrow())
              .isCloseTo(
                  EyeExposure.blueLightPerLumen(light).toOptional().orElseThrow(), within(1e-12));
          Chromaticity colour = Chromaticity.of(light).toOptional().orElseThrow();
          Chromaticity same = found.chromaticity().toOptional().orElseThrow();
          assertThat(same.distance(colour)).isCloseTo(0, within(1e-12));
          assertThat(found.peaks()).isEqualTo(Peak.of(light));
        });
  }

  /** Twice the power: twice the sums, the same ratios and colour. */
  @Test
  void isLinearInPower() {
    SeededLaw.holds(
        60,
        r -> {
          RadiantSpectrum light = random(r, 5);
          double factor = Math.exp(6 * r.nextDouble() - 3);
          LightAnalysis analysis = LightAnalysis.on(light.wavelengths(), WaveBands.COMMON);
          LightFigures one = analysis.figures(light);
          LightFigures many = analysis.figures(light.times(factor));
          assertThat(many.parPhotons())
              .isCloseTo(factor * one.parPhotons(), within(1e-12 * many.parPhotons()));
          assertThat(many.luminous())
              .isCloseTo(factor * one.luminous(), within(1e-12 * many.luminous()));
          assertThat(many.luxPerPpfd().toOptional().orElseThrow())
              .isCloseTo(one.luxPerPpfd().toOptional().orElseThrow(), within(1e-11));
          assertThat(many.centroidNm()).isCloseTo(one.centroidNm(), within(1e-9));
          assertThat(many.peaks()).hasSameSizeAs(one.peaks());
          Chromaticity colour = one.chromaticity().toOptional().orElseThrow();
          assertThat(many.chromaticity().toOptional().orElseThrow().distance(colour))
              .isCloseTo(0, within(1e-12));
        });
  }

  /** Ultraviolet light alone has no PPFD, no colour and no lux, and says so. */
  @Test
  void saysWhatUltravioletLightLacks() {
    RadiantSpectrum ultraviolet =
        new RadiantSpectrum(
            Wavelengths.of(360, 365, 370), new double[] {0, 1, 0}, Scale.IRRADIANCE);
    LightFigures found = LightAnalysis.of(ultraviolet);
    assertThat(found.parPhotons()).isZero();
    assertThat(found.ultravioletPhotons()).isCloseTo(5 * 365 / 119.626566, within(1e-6));
    assertThat(found.ultravioletShare().toOptional().orElseThrow()).isCloseTo(1, within(1e-12));
    assertThat(found.farRedShare()).isEqualTo(Finding.of(0.0));
    assertThat(found.luxPerPpfd()).isEqualTo(Finding.notDefined("no photons within 400 to 700 nm"));
    assertThat(found.luminousEfficacy())
        .isEqualTo(Finding.notDefined("no power within 380 to 780 nm"));
    assertThat(found.micromolesPerJoule())
        .isEqualTo(Finding.notDefined("no power within 400 to 700 nm"));
    assertThat(found.bandShares()).isEqualTo(Finding.notDefined("no photons within 380 to 700 nm"));
    assertThat(found.usableShare())
        .isEqualTo(Finding.notDefined("no photons within 400 to 700 nm"));
    assertThat(found.blueLightPerLumen())
        .isEqualTo(Finding.notDefined("no light that the eye sees, within 380 to 780 nm"));
    assertThat(found.colourTemperature()).isInstanceOf(Finding.NotDefined.class);
    assertThat(found.colourRendering()).isInstanceOf(Finding.NotDefined.class);
    assertThat(found.peaks()).hasSize(1);
    assertThat(found.centroidNm()).isCloseTo(365, within(1e-9));
  }

  /** An unknown scale has no unit. */
  @Test
  void printsNoUnitThatWasNotMeasured() {
    RadiantSpectrum flat = new RadiantSpectrum(new double[] {400, 700}, new double[] {1, 1});
    assertThat(LightAnalysis.of(flat).photometricUnit()).isEmpty();
    RadiantSpectrum flux = new RadiantSpectrum(flat.wavelengths(), flat.powers(), Scale.FLUX);
    assertThat(LightAnalysis.of(flux).photometricUnit()).hasValue("lm");
    PhotonSpectrum irradiance = flat.toPhotons().atPpfd(100);
    assertThat(LightAnalysis.of(irradiance).photometricUnit()).hasValue("lx");
    assertThat(LightAnalysis.of(irradiance).parPhotons()).isCloseTo(100, within(1e-9));
  }

  @Test
  void refusesOtherWavelengths() {
    LightAnalysis analysis = LightAnalysis.on(Wavelengths.even(380, 780, 5), WaveBands.COMMON);
    assertThatThrownBy(
            () ->
                analysis.figures(new RadiantSpectrum(new double[] {400, 700}, new double[] {1, 1})))
        .hasMessage(
            "this analysis is for 81 wavelengths from 380.0 to 780.0 nm; got a spectrum of 2"
                + " wavelengths from 400.0 to 700.0 nm");
  }
}
