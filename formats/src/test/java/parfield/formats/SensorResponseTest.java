package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.spectrum.SensorResponse;
import parfield.spectrum.SpectralFactor;
import parfield.survey.Meter;

class SensorResponseTest {
  private static final String METER = "resolution: 0.1}";
  private static final String RESPONSE =
      """
      wavelength_nm,response
      380,0.5
      400,0.6
      500,0.8
      600,1
      700,1
      720,0
      """;

  /** Where the bench states its meter, whatever stands before it. */
  private static final String AT =
      "setup.yaml:"
          + TestBench.FULL.substring(0, TestBench.FULL.indexOf("probe: {")).lines().count();

  @TempDir private Path folder;

  private TestBench stating(String sensor) {
    return TestBench.in(folder)
        .with("probe.csv", RESPONSE)
        .replacing(METER, "resolution: 0.1, " + sensor + "}");
  }

  @Test
  @DisplayName("a meter that states nothing reads as before, and no word is lost on it")
  void leavesAMeterAlone() {
    Setup setup = TestBench.in(folder).read();
    assertThat(setup.sensors()).isEmpty();
    assertThat(setup.surveys().get("low").meter()).isEqualTo(setup.meters().get("probe"));
    assertThat(setup.assumptions()).noneMatch(sentence -> sentence.contains("colour"));
  }

  @Test
  @DisplayName("a measured response multiplies the readings by F of the light, and says so")
  void correctsWithATable() {
    Setup setup = stating("response: probe.csv, calibrated under: illuminant A").read();
    Meter meter = setup.meters().get("probe");
    Meter under = setup.surveys().get("low").meter();
    assertThat(setup.sensors()).containsOnlyKeys("probe");
    // Both channels of the bench have the same spectrum, so that the mix has its factor.
    double factor =
        SpectralFactor.of(
                setup.sensors().get("probe").response(),
                setup.fixtures().get("pendant").channels().get(0).spectrum().orElseThrow(),
                setup.sensors().get("probe").calibration())
            .toOptional()
            .orElseThrow();
    assertThat(factor).isBetween(1.3, 1.6);
    assertThat(under.spectralFactor()).isCloseTo(factor, within(1e-12));
    assertThat(under.ppfd(102)).isCloseTo(factor * meter.ppfd(102), within(1e-9));
    assertThat(under.scaleError())
        .isCloseTo(Math.hypot(0.04, 0.25 * (factor - 1) / factor), within(1e-12));
    assertThat(setup.surveys().get("low").ppfd()[1])
        .isCloseTo(factor * meter.ppfd(420), within(1e-9));
    assertThat(setup.assumptions())
        .contains(
            "low: readings of probe are multiplied by 1.461 for the colour of the light, and the"
                + " scale error is taken as 0.088 instead of 0.04");
  }

  @Test
  @DisplayName("a generic response only widens the scale error, and says so")
  void statesAnErrorWithAGenericResponse() {
    Setup setup = stating("response: generic blue-weak, calibrated under: illuminant D65").read();
    Meter under = setup.surveys().get("low").meter();
    assertThat(under.spectralFactor()).isEqualTo(1);
    assertThat(under.scaleError()).isGreaterThan(0.1);
    assertThat(setup.assumptions())
        .anySatisfy(
            sentence ->
                assertThat(sentence)
                    .startsWith(
                        "low: readings of probe are not corrected for colour, as generic blue-weak"
                            + " is no measured response (it would make them 1.")
                    .endsWith(" instead of 0.04"));
  }

  @Test
  @DisplayName(
      "an ideal sensor changes nothing; signal per energy is turned into signal per photon")
  void readsTheOtherForms() {
    Setup ideal = stating("response: ideal, calibrated under: equal photons").read();
    assertThat(ideal.surveys().get("low").meter()).isEqualTo(ideal.meters().get("probe"));

    Setup energy =
        stating("response: probe.csv, calibrated under: spectra/blue.csv")
            .with("probe.csv", "nm;responsivity (A/W)\n400;0,2\n500;0,25\n700;0,35\n")
            .read();
    SensorResponse response = energy.sensors().get("probe").response();
    for (double nm : new double[] {400, 500, 700}) {
      assertThat(response.at(nm)).isCloseTo(response.at(400), within(1e-15));
    }
    assertThat(energy.assumptions())
        .contains(
            "probe.csv: signal per energy is converted to signal per photon, by 1 over wavelength");
  }

  @Test
  @DisplayName("where a lit channel has no spectrum, nothing is corrected and the reason told")
  void saysWhyItCannotCorrect() {
    TestBench bench =
        TestBench.in(folder)
            .with(
                "setup.yaml",
                TestBench.FULL
                    .replace(
                        METER, "resolution: 0.1, response: ideal, calibrated under: illuminant A}")
                    .replace("violet: {spectrum: spectra/blue.csv, ", "violet: {"));
    assertThat(bench.read().assumptions())
        .contains(
            "low: readings of probe are not corrected for the colour of the light, nor is the"
                + " error known: channel violet of fixture pendant has no spectrum");
  }

  @Test
  void saysWhatIsWrong() {
    assertThat(stating("response: probe.csv").faults())
        .containsExactly(
            AT
                + ":10: meters.probe.calibrated under: got nothing; state the light that the"
                + " sensor was calibrated under, as in calibrated under: illuminant A");
    assertThat(stating("calibrated under: illuminant A").faults())
        .containsExactly(
            AT
                + ":151: meters.probe.calibrated under: got illuminant A, allowed nothing"
                + " where no response is stated; state the sensor's response, or delete this");
    assertThat(stating("response: generic blue-weka, calibrated under: illuminant B").faults())
        .containsExactly(
            AT
                + ":143: meters.probe.response: got generic blue-weka, allowed ideal, generic"
                + " blue-weak, generic red-short, generic even, the name of a file; did you mean"
                + " generic blue-weak?",
            AT
                + ":180: meters.probe.calibrated under: got illuminant B, allowed illuminant"
                + " A, illuminant D65, equal photons, the name of a file; did you mean illuminant"
                + " A?");
    assertThat(
            stating("response: probe.csv, calibrated under: spectra/blue.csv")
                .with("probe.csv", "wavelength_nm,response\n600,1\n700,1\n")
                .faults())
        .containsExactly(
            AT
                + ":10: meters.probe: a sensor of response probe.csv cannot have been"
                + " calibrated under a light that it does not see, or that holds no PAR; name"
                + " another light");
  }

  @Test
  void saysWhatIsWrongInAResponse() {
    record Spoiled(String text, List<String> messages) {}
    for (Spoiled spoiled :
        List.of(
            new Spoiled(
                "wavelength_nm,signal\n400,1\n",
                List.of(
                    "probe.csv:1: head of the sensor's response: got wavelength_nm, signal, allowed"
                        + " wavelength_nm and response, or response_per_energy; write the first"
                        + " line as wavelength_nm,response")),
            new Spoiled(
                "wavelength_nm,response\n400,1\n400,-2\n390,x\n380,1\n",
                List.of(
                    "probe.csv:3: response: got -2, allowed 0 to 100000; no signal is negative:"
                        + " subtract the dark signal, or write 0",
                    "probe.csv:4: response: got x, allowed a number; write a number",
                    "probe.csv:5: wavelength: got 380 after 400, allowed ascending wavelengths;"
                        + " sort the lines, each wavelength once")),
            new Spoiled(
                "wavelength_um,response\n0.4,1\n0.7,1\n",
                List.of(
                    "probe.csv:1: unit of wavelength: got um, allowed nm; convert to nm",
                    "probe.csv:2: wavelength: got 0.4, allowed 100 to 4000 nm; give wavelengths in nm",
                    "probe.csv:3: wavelength: got 0.7, allowed 100 to 4000 nm; give wavelengths in nm")),
            new Spoiled(
                "wavelength_nm,response\n400,0\n700,0\n",
                List.of(
                    "probe.csv: samples of the response: got 0 everywhere, allowed 2 or more, one of"
                        + " them above 0; give the signal over 400 to 700 nm")),
            new Spoiled(
                "wavelength_nm,response\n400,1\n",
                List.of(
                    "probe.csv: samples of the response: got 1, allowed 2 or more, one of them above"
                        + " 0; give the signal over 400 to 700 nm")))) {
      assertThat(
              stating("response: probe.csv, calibrated under: equal photons")
                  .with("probe.csv", spoiled.text())
                  .faults())
          .isEqualTo(spoiled.messages());
    }
  }
}
