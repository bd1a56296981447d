package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.Approved;

class CheckAndStatsTest {
  @TempDir private Path folder;

  private static String answer(Object... args) {
    Run run = Run.parfield(args);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    return run.out();
  }

  @Test
  void checkTellsWhatASoundSetupHolds() {
    Approved.check("check.txt", answer("check", Run.bench(folder)));
  }

  @Test
  void checkAnswersInJson() {
    Approved.check("check.json", answer("check", Run.bench(folder), "--json"));
  }

  @Test
  void checkTellsWhatWasAssumed() {
    Path setup =
        Run.bench(
            folder,
            "setup.yaml",
            """
            demands:
              - {band: stony, coverage: 0.60}
              - {retention: 0.80, of: lowest height}
            """,
            "");
    assertThat(answer("check", setup))
        .contains("Assumed\n")
        .contains(
            "  - No demand was stated; assumed 70 % of the water volume in stony (150–350 µmol m⁻²"
                + " s⁻¹) (common practice, no source).\n");
  }

  @Test
  void checkTellsHazeAndFreeboard() {
    Path setup =
        Run.bench(
            folder, "setup.yaml", "  yellowing: 0.05\n", "  scattering: 0.1\n  freeboard: 3\n");

    assertThat(answer("check", setup))
        .contains("opening     3 cm above the water line\n")
        .contains(" at 440 nm, scattering 0.1 1/m at 550 nm, surface still\n");
  }

  @Test
  void lengthsAreShownInInchesOnRequest() {
    assertThat(answer("check", Run.bench(folder), "--length", "in"))
        .contains("tank        23.62 × 15.75 in inside, water 15.75 in deep\n")
        .contains("height (in)")
        .doesNotContain(" cm");
  }

  @Test
  void checkTellsTheRocks() {
    Path setup =
        Run.bench(
            folder,
            "setup.yaml",
            "  surface: still\n",
            """
              surface: still
              aquascape:
                arch: {box: {length: 20, width: 15, height: 10}, x: 20, y: 20, reflectance: 0.2}
                boulder: {ellipsoid: {length: 16, width: 12, height: 10}, x: 45, y: 20, above bottom: -1}
            """);
    assertThat(answer("check", setup))
        .contains(
            """
            rocks       arch: box of 20 × 15 × 10 cm, x 10 to 30, y 12.5 to 27.5, 0 to 10 cm above the bottom, reflects 20 % of the light
                        boulder: ellipsoid of 16 × 12 × 10 cm, x 37 to 53, y 14 to 26, -1 to 9 cm above the bottom, reflects 15 % of the light
            """)
        .contains("tank.aquascape.boulder does not state, so taken: reflectance 0.15");
    assertThat(answer("check", setup, "--json"))
        .contains("\"name\" : \"boulder\",\n      \"from_x_cm\" : 37.0,")
        .contains("\"to_depth_cm\" : 41.0");
  }

  @Test
  void statsTellTheReadings() {
    Approved.check("stats.txt", answer("stats", Run.bench(folder)));
  }

  @Test
  void statsAnswerInJsonWithLengthsInCentimetresAlways() {
    Path setup = Run.bench(folder);
    String json = answer("stats", setup, "--json");

    Approved.check("stats.json", json);
    assertThat(answer("stats", setup, "--json", "--length", "in")).isEqualTo(json);
  }

  @Test
  void aReadingThatLooksWrongIsNamedWithLineAndReason() throws Exception {
    Path setup = Run.bench(folder, "low.csv", "22.5,20,15,379", "22.5,20,15,3790");

    Run check = Run.parfield("check", setup);
    assertThat(check.code()).isZero();
    assertThat(check.out())
        .contains("Readings that look wrong")
        .contains("  - low, line 8 (x 22.5, y 20, depth 15 cm, 3790): ");
    assertThat(Run.parfield("check", setup, "--strict").code()).isEqualTo(1);
    assertThat(Run.parfield("stats", setup).out()).contains("  - low, line 8 ");

    JsonNode json = new ObjectMapper().readTree(Run.parfield("stats", setup, "--json").out());
    JsonNode suspicion = json.get("suspicious_readings").get(0);
    assertThat(suspicion.get("survey").asText()).isEqualTo("low");
    assertThat(suspicion.get("kind").asText()).isEqualTo("decimal_slip");
    assertThat(suspicion.get("readings").get(0).get("line").asInt()).isEqualTo(8);
    assertThat(suspicion.get("readings").get(0).get("x_cm").asDouble()).isEqualTo(22.5);
  }

  @Test
  void strictIsContentWithReadingsThatLookRight() {
    assertThat(Run.parfield("check", Run.bench(folder), "--strict").code()).isZero();
  }

  @Test
  void surveysThatCannotBeComparedAreToldWhy() {
    Path setup = Run.bench(folder, "high.csv", "58,38,15,", "57,38,15,");

    assertThat(answer("stats", setup))
        .contains("Retention beside low: cannot be taken: retention needs both heights");
  }

  @Test
  void withoutASurveyThereAreNoStatistics() {
    Path setup =
        Run.bench(
            folder,
            "setup.yaml",
            """
            surveys:
              low: {rig: low, meter: probe, readings: low.csv}
              high: {rig: high, meter: probe, readings: high.csv}
            """,
            "");
    assertThat(answer("check", setup))
        .contains("No survey is stated: there is nothing to fit yet.\n");
    assertThat(Run.parfield("stats", setup))
        .isEqualTo(
            new Run(
                2,
                "",
                "parfield: setup.yaml states no survey\n  add one under surveys, as in low: {rig:"
                    + " low, meter: probe, readings: low.csv}\n"));
  }
}
