package parfield.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.Finding;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.SensorResponse;
import parfield.spectrum.Wavelengths;
import parfield.tank.Tank;

class SpectralCorrectionTest {
  private static final Tank TANK = Tank.of(0.9, 0.6, 0.5);

  /** Shows of a photon (λ − 300) / 500; of flat light, 550 nm on average, one half. */
  private static final SensorResponse RAMP =
      SensorResponse.table("ramp", Wavelengths.of(300, 800), new double[] {0, 1});

  private static final SpectralSensor SENSOR = new SpectralSensor(RAMP, PhotonSpectrum.flat());

  private static Channel channel(String name, double fromNm, double toNm, double watts) {
    return new Channel(
        name,
        Optional.of(new PhotonSpectrum(new double[] {fromNm, toNm}, new double[] {1, 1})),
        watts > 0 ? OptionalDouble.of(watts) : OptionalDouble.empty(),
        OutputCurve.proportional(),
        Optional.empty());
  }

  private static Rig rig(Setting setting, Channel... channels) {
    Fixture fixture =
        new Fixture("lamp", 0, 0, List.of(new Emitter(0, 0, 0)), List.of(channels), List.of());
    return new Rig(
        "low", TANK, List.of(Hanging.level(fixture, 0.4, 0.3, 0.2).withSetting(setting)));
  }

  private static SpectralCorrection correction(Rig rig, SpectralSensor sensor) {
    return SpectralCorrection.of(rig, sensor).toOptional().orElseThrow();
  }

  private static final Channel BLUE = channel("blue", 400, 500, 60);
  private static final Channel RED = channel("red", 600, 700, 20);

  /** Blue is shown as 0.3 / 0.5 = 0.6, red as 0.7 / 0.5 = 1.4 of itself. */
  @Test
  @DisplayName("readings of one colour are multiplied by its factor, worked out by hand")
  void correctsOneColour() {
    Rig blue = rig(new Setting(Map.of("red", 0.0)), BLUE, RED);
    SpectralCorrection found = correction(blue, SENSOR);
    assertThat(found.parts()).hasSize(1);
    assertThat(found.parts().get(0).shownOverTrue()).isCloseTo(0.6, within(1e-12));
    assertThat(found.factor()).isCloseTo(1 / 0.6, within(1e-12));
    assertThat(found.error()).isCloseTo(0.25 * (1 - 0.6), within(1e-12));

    Meter meter = new Meter("probe", 1.2, false, 2, 0.05, 0.02, 0.005, 1);
    Meter under = meter.under(found);
    assertThat(under.ppfd(102)).isCloseTo(100 * 1.2 / 0.6, within(1e-9));
    assertThat(under.shown(under.ppfd(77))).isCloseTo(77, within(1e-12));
    assertThat(under.scaleError()).isCloseTo(Math.sqrt(0.0025 + 0.01), within(1e-12));
    assertThat(under.repeatError()).isEqualTo(meter.repeatError());
  }

  /** Shares .75 and .25 by watts: shown .75 · .6 + .25 · 1.4 = .8. */
  @Test
  @DisplayName("a mix is weighed by watts and dials, and what is guessed about that is an error")
  void weighsAMix() {
    SpectralCorrection found = correction(rig(Setting.full(), BLUE, RED), SENSOR);
    assertThat(found.factor()).isCloseTo(1.25, within(1e-12));
    double blueShare = 0.75 - 0.75 * 0.6 / 0.8;
    double redShare = 0.25 - 0.25 * 1.4 / 0.8;
    double byShares = 0.5 * Math.hypot(blueShare, redShare);
    assertThat(found.error()).isCloseTo(Math.hypot(byShares, 0.25 * 0.2), within(1e-12));

    SpectralCorrection dim =
        correction(rig(new Setting(Map.of("blue", 100.0 / 3)), BLUE, RED), SENSOR);
    assertThat(dim.factor()).isCloseTo(1, within(1e-9));

    Rig even = rig(Setting.full(), channel("blue", 400, 500, 0), RED);
    assertThat(correction(even, SENSOR).factor()).isCloseTo(1, within(1e-12));
  }

  @Test
  @DisplayName("a generic response changes no reading, its whole deviation is an error")
  void onlyStatesWhatAGenericResponseDoes() {
    SpectralSensor generic =
        new SpectralSensor(SensorResponse.generics().get(0), PhotonSpectrum.flat());
    SpectralCorrection found = correction(rig(new Setting(Map.of("red", 0.0)), BLUE, RED), generic);
    assertThat(found.factor()).isEqualTo(1);
    assertThat(found.spectralFactor()).isGreaterThan(1.1);
    assertThat(found.error()).isCloseTo(found.spectralFactor() - 1, within(1e-12));
  }

  @Test
  @DisplayName("an ideal sensor, or no statement at all, leaves every number as it is")
  void leavesNumbersAlone() {
    SpectralSensor ideal = new SpectralSensor(SensorResponse.ideal(), PhotonSpectrum.flat());
    Meter meter = new Meter("probe", 1.31, false, 3, 0.05, 0.02, 0.005, 1);
    assertThat(meter.under(correction(rig(Setting.full(), BLUE, RED), ideal))).isEqualTo(meter);
    assertThat(meter.spectralFactor()).isEqualTo(1);
    SeededLaw.holds(
        1_000,
        random -> {
          double shown = 2000 * random.nextDouble();
          assertThat(meter.ppfd(shown)).isEqualTo((shown - 3) * 1.31);
          assertThat(meter.shown(shown)).isEqualTo(shown / 1.31 + 3);
        });
  }

  @Test
  @DisplayName("the order of channels and the number of like fixtures are nothing")
  void isBlindToOrderAndNumber() {
    SpectralCorrection one = correction(rig(Setting.full(), BLUE, RED), SENSOR);
    SpectralCorrection other = correction(rig(Setting.full(), RED, BLUE), SENSOR);
    Rig single = rig(Setting.full(), BLUE, RED);
    Rig twice =
        new Rig(
            "two",
            TANK,
            List.of(single.hangings().get(0), single.hangings().get(0).at(0.6, 0.3, 0.2)));
    SpectralCorrection two = correction(twice, SENSOR);
    assertThat(two.parts()).hasSize(2);
    for (SpectralCorrection same : List.of(other, two)) {
      assertThat(same.factor()).isCloseTo(one.factor(), within(1e-12));
      assertThat(same.error()).isCloseTo(one.error(), within(1e-12));
    }
  }

  @Test
  @DisplayName("what cannot be corrected is told with its reason")
  void saysWhatIsMissing() {
    Channel unknown =
        new Channel(
            "white",
            Optional.empty(),
            OptionalDouble.empty(),
            OutputCurve.proportional(),
            Optional.empty());
    assertThat(SpectralCorrection.of(rig(Setting.full(), BLUE, unknown), SENSOR))
        .isEqualTo(Finding.notDefined("channel white of fixture lamp has no spectrum"));
    assertThat(SpectralCorrection.of(rig(new Setting(Map.of("white", 0.0)), BLUE, unknown), SENSOR))
        .isInstanceOf(Finding.Defined.class);
    assertThat(SpectralCorrection.of(rig(new Setting(Map.of("blue", 0.0)), BLUE), SENSOR))
        .isEqualTo(Finding.notDefined("every channel of rig low is dark"));
    SensorResponse red = SensorResponse.table("red", Wavelengths.of(600, 700), new double[] {1, 1});
    assertThat(
            SpectralCorrection.of(
                rig(Setting.full(), BLUE), new SpectralSensor(red, PhotonSpectrum.flat())))
        .isEqualTo(Finding.notDefined("a sensor of response red shows nothing of it"));
    assertThatThrownBy(
            () ->
                new SpectralSensor(
                    red, new PhotonSpectrum(new double[] {410, 450}, new double[] {1, 1})))
        .hasMessageStartingWith("a sensor of response red cannot have been calibrated under");
    assertThatThrownBy(() -> new Meter("probe", 1, true, 0, 0, 0, 0, 0, 0))
        .hasMessage("meter probe: spectral factor must be above 0; got 0.0");
  }
}
