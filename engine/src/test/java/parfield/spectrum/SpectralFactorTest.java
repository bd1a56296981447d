package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class SpectralFactorTest {
  /** Sees a photon in proportion to how far it stands above 300 nm. */
  private static final SensorResponse RAMP =
      SensorResponse.table("ramp", Wavelengths.of(300, 800), new double[] {0, 1});

  private static PhotonSpectrum block(double fromNm, double toNm) {
    return new PhotonSpectrum(Wavelengths.of(fromNm, toNm), new double[] {1, 1}, Scale.IRRADIANCE);
  }

  private static double factor(
      SensorResponse response, PhotonSpectrum test, PhotonSpectrum calibration) {
    return SpectralFactor.of(response, test, calibration).toOptional().orElseThrow();
  }

  /**
   * Closed forms of CIE e-ILV 17-25-115 for a response (λ − 300) / 500 calibrated under flat light,
   * of which it shows that of 550 nm, 0.5: light that is even about λ₀ has F = 0.5 · 500 / (λ₀ −
   * 300).
   */
  @Test
  @DisplayName("F is that of the closed forms for flat light, lines and bells")
  void meetsClosedForms() {
    PhotonSpectrum flat = PhotonSpectrum.flat();
    assertThat(factor(RAMP, block(449.9, 450.1), flat)).isCloseTo(250.0 / 150, within(1e-9));
    assertThat(factor(RAMP, block(400, 500), flat)).isCloseTo(250.0 / 150, within(1e-12));
    assertThat(factor(RAMP, block(600, 700), flat)).isCloseTo(250.0 / 350, within(1e-12));
    assertThat(factor(RAMP, Leds.bell(500, 12), flat)).isCloseTo(250.0 / 200, within(1e-9));
    assertThat(factor(RAMP, block(400, 500), block(600, 700)))
        .isCloseTo(350.0 / 150, within(1e-12));
  }

  @Test
  @DisplayName("photons outside 400-700 nm that a sensor sees all the same lower F")
  void countsWhatTheSensorSeesOutsidePar() {
    SensorResponse wide =
        SensorResponse.table("wide", Wavelengths.of(380, 720), new double[] {1, 1});
    assertThat(factor(wide, block(390, 410), PhotonSpectrum.flat())).isCloseTo(0.5, within(1e-12));
  }

  @Test
  @DisplayName("an ideal sensor, or the light it was calibrated under, needs no correction")
  void isOneWhereItShouldBe() {
    SeededLaw.holds(
        100,
        random -> {
          PhotonSpectrum test =
              Leds.bell(410 + 270 * random.nextDouble(), 5 + 40 * random.nextDouble());
          PhotonSpectrum calibration = Leds.bell(550, 60);
          assertThat(factor(SensorResponse.ideal(), test, calibration)).isEqualTo(1);
          for (SensorResponse generic : SensorResponse.generics()) {
            assertThat(factor(generic, test, test.times(5))).isCloseTo(1, within(1e-12));
            double there = factor(generic, test, calibration);
            double back = factor(generic, calibration, test);
            assertThat(there * back).isCloseTo(1, within(1e-12));
          }
        });
  }

  @Test
  @DisplayName("a mix's F weighs its channels by what the sensor shows of them")
  void mixesByWhatIsShown() {
    SeededLaw.holds(
        100,
        random -> {
          List<ChannelLight> channels = Leds.fixture();
          List<Double> outputs = random.doubles(5).boxed().toList();
          PhotonSpectrum calibration = Leds.bell(560, 70);
          SensorResponse response = SensorResponse.generics().get(random.nextInt(3));
          double all = 0;
          double shown = 0;
          for (int c = 0; c < 5; c++) {
            double ppfd = outputs.get(c) * channels.get(c).spectrum().parPhotons();
            all += ppfd;
            shown += ppfd / factor(response, channels.get(c).spectrum(), calibration);
          }
          assertThat(
                  SpectralFactor.ofMix(response, channels, outputs, calibration)
                      .toOptional()
                      .orElseThrow())
              .isCloseTo(all / shown, within(1e-9));
        });
  }

  @Test
  @DisplayName("what no sensor can show has no factor, and the reason is told")
  void isNotDefinedForLightThatIsNotSeen() {
    SensorResponse blind =
        SensorResponse.table("blind", Wavelengths.of(500, 700), new double[] {1, 1});
    assertThat(SpectralFactor.of(blind, block(420, 450), PhotonSpectrum.flat()))
        .isEqualTo(Finding.notDefined("a sensor of response blind shows nothing of it"));
    assertThat(SpectralFactor.of(RAMP, block(350, 390), PhotonSpectrum.flat()))
        .isEqualTo(Finding.notDefined("the light holds no photons within 400 to 700 nm"));
    assertThatThrownBy(() -> SpectralFactor.of(blind, PhotonSpectrum.flat(), block(420, 450)))
        .hasMessage(
            "a sensor of response blind cannot have been calibrated under a light that it does not"
                + " see, or that holds no PAR; name another light");
  }

  @Test
  @DisplayName("generic shapes say by name and standing that they are made up")
  void genericShapesAreMarked() {
    assertThat(SensorResponse.generics())
        .hasSize(3)
        .allSatisfy(
            response -> {
              assertThat(response.name()).startsWith("generic ");
              assertThat(response.standing()).isEqualTo(SensorResponse.Standing.GENERIC);
              assertThat(response.at(350)).isZero();
              assertThat(response.at(550)).isBetween(0.9, 1.0);
              assertThat(response.at(750)).isZero();
            });
    assertThat(SensorResponse.generics().get(0).at(405)).isCloseTo(0.55 + 0.17 / 6, within(1e-12));
  }

  @Test
  void saysWhatIsWrong() {
    Wavelengths two = Wavelengths.of(400, 700);
    assertThatThrownBy(() -> SensorResponse.table("probe", two, new double[] {1, -0.1}))
        .hasMessage("sensor response probe must be 0 or more; got -0.1 at 700.0 nm");
    assertThatThrownBy(() -> SensorResponse.table("probe", two, new double[] {0, 0}))
        .hasMessage(
            "sensor response probe needs a value for each wavelength, one above 0; got 2 values"
                + " for 2 wavelengths, their sum 0.0");
  }
}
