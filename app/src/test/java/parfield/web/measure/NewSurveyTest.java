package parfield.web.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.demo.DemoBench;
import parfield.formats.Setup;
import parfield.formats.SetupFile;

/** A survey added to a setup's text. */
class NewSurveyTest {
  private static final NewSurvey GOOD = new NewSurvey("later", "low", "probe", "10; 25", "5", "3");

  private String text;
  private Map<String, byte[]> files;
  private Setup setup;

  @BeforeEach
  void demo() {
    Map<String, String> all = new LinkedHashMap<>(DemoBench.files(1));
    text = all.remove(DemoBench.SETUP);
    files =
        all.entrySet().stream()
            .collect(
                Collectors.toMap(
                    Map.Entry::getKey,
                    entry -> entry.getValue().getBytes(java.nio.charset.StandardCharsets.UTF_8)));
    setup = read(text);
  }

  private Setup read(String changed) {
    return SetupFile.read(
        "bench",
        changed,
        files,
        Map.of("low", List.of(), "high", List.of(), "later", List.of(), "a: \"b\" <i>", List.of()));
  }

  @Test
  void isReadBack() {
    Setup with = read(GOOD.addedTo(text));

    assertThat(with.plans()).containsKeys("low", "high", "later");
    assertThat(with.plans().get("later").rig().name()).isEqualTo("low");
    assertThat(
            with.plans().get("later").grid().orElseThrow().places().stream()
                .map(place -> place.depth())
                .distinct())
        .containsExactly(0.10, 0.25);
  }

  @Test
  @DisplayName("all that stood there stands there still")
  void leavesTheRest() {
    String line = GOOD.entry();

    assertThat(
            GOOD.addedTo(text)
                .replaceFirst("(?m)^ *" + java.util.regex.Pattern.quote(line) + "\n", ""))
        .isEqualTo(text);
  }

  @Test
  void anyNameIsQuoted() {
    NewSurvey odd = new NewSurvey("a: \"b\" <i>", "low", "probe", "10", "", "");

    assertThat(read(odd.addedTo(text)).plans()).containsKey("a: \"b\" <i>");
  }

  @Test
  void underEveryFormOfTheKey() {
    assertThat(GOOD.addedTo("a: 1")).isEqualTo("a: 1\nsurveys:\n  " + GOOD.entry() + "\n");
    assertThat(GOOD.addedTo("surveys:\na: 1\n"))
        .isEqualTo("surveys:\n  " + GOOD.entry() + "\na: 1\n");
    assertThat(GOOD.addedTo("surveys: {}\na: 1\n"))
        .isEqualTo("surveys:\n  " + GOOD.entry() + "\na: 1\n");
    assertThat(GOOD.addedTo("surveys: {b: {rig: x}}\n"))
        .isEqualTo("surveys: {" + GOOD.entry() + ", b: {rig: x}}\n");
    assertThat(GOOD.addedTo("# ü 𝛼\nsurveys:\n    b: {rig: x}\n"))
        .isEqualTo("# ü 𝛼\nsurveys:\n    " + GOOD.entry() + "\n    b: {rig: x}\n");
  }

  @Test
  void faultsStandAtTheirFields() {
    assertThat(GOOD.faults(setup)).isEmpty();
    assertThat(new NewSurvey("low", "nowhere", "none", "80", "5", "").faults(setup))
        .containsExactly(
            Map.entry("name", "The bench has a survey low: choose another name"),
            Map.entry("rig", "Choose one of the bench's rigs: low, high"),
            Map.entry("meter", "Choose one of the bench's meters: probe"),
            Map.entry(
                "depths", "80: type depths from the surface down, above 0 to 50 cm, as in 10 25"),
            Map.entry("rows", "Fill in both columns and rows, or neither"));
    assertThat(new NewSurvey(" ", "low", "probe", "", "0", "2.5").faults(setup))
        .containsEntry("name", "Give the survey a name, as in low or 2 weeks later")
        .containsEntry(
            "depths", "No depth: type depths from the surface down, above 0 to 50 cm, as in 10 25")
        .containsEntry("columns", "0: type a whole number from 1 to 100")
        .containsEntry("rows", "2.5: type a whole number from 1 to 100");
  }
}
