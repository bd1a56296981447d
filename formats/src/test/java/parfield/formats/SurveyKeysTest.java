package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** The keys of surveys in the text of a setup. */
class SurveyKeysTest {
  private static final String SETUP =
      """
      parfield: 1   # 𝄞 beyond the first plane
      surveys:
        flow: {rig: low, readings: low.csv, depth: 10}   # so
        empty: {}
        planned: {rig: low, grid: {depths: [10]}}
        block:
          # before
          rig: low
          Readings: "a file.csv"   # after
        later:
          rig: low
      bands: {}
      """;

  @Test
  void read() {
    assertThat(SurveyKeys.of("setup.yaml", SETUP))
        .containsExactly(
            Map.entry("flow", new SurveyKeys(Optional.of("low.csv"), true, false)),
            Map.entry("planned", new SurveyKeys(Optional.empty(), false, true)),
            Map.entry("block", new SurveyKeys(Optional.of("a file.csv"), false, false)),
            Map.entry("later", new SurveyKeys(Optional.empty(), false, false)));
    assertThat(SurveyKeys.of("setup.yaml", "parfield: 1\n")).isEmpty();
  }

  @Test
  @DisplayName("names of files are changed or added, and nothing else")
  void named() {
    String named =
        SurveyKeys.withReadings(
            "setup.yaml",
            SETUP,
            Map.of(
                "flow", "new.csv",
                "planned", "it's.csv",
                "block", "b.csv",
                "later", "l/1.csv",
                "unknown", "u.csv"));

    assertThat(named)
        .isEqualTo(
            SETUP
                .replace("readings: low.csv", "readings: new.csv")
                .replace("planned: {rig", "planned: {readings: 'it''s.csv', rig")
                .replace("\"a file.csv\"", "b.csv")
                .replace("later:\n    rig", "later:\n    readings: l/1.csv\n    rig"));
    assertThat(SurveyKeys.of("setup.yaml", named).get("planned").readings()).contains("it's.csv");
  }

  @Test
  void notYaml() {
    assertThatThrownBy(() -> SurveyKeys.of("setup.yaml", "a: {"))
        .isInstanceOf(InvalidFile.class)
        .hasMessageContaining("setup.yaml:1:5: this is not YAML");
  }
}
