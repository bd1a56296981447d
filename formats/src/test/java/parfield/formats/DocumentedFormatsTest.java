package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The examples of docs/FORMATS.md, read as they stand there. */
class DocumentedFormatsTest {
  private static final Pattern BLOCK =
      Pattern.compile("<!-- (file: )?([^\n]+) -->\n```[a-z]+\n(.*?)```", Pattern.DOTALL);

  @TempDir private Path folder;

  private static String page() throws IOException {
    // Maven runs in the module's folder, an editor perhaps in the repository's.
    Path page = Path.of("../docs/FORMATS.md");
    return Files.readString(Files.exists(page) ? page : Path.of("docs/FORMATS.md"));
  }

  @Test
  void readsTheExamples() throws IOException {
    Map<String, String> blocks = new LinkedHashMap<>();
    Matcher matcher = BLOCK.matcher(page());
    while (matcher.find()) {
      blocks.put(matcher.group(2), matcher.group(3));
    }
    assertThat(blocks)
        .containsOnlyKeys(
            "setup.yaml",
            "assumptions",
            "low.csv",
            "high.csv",
            "spectra/blue.csv",
            "probe_response.csv",
            "pendant.csv",
            "rocks/tower.obj",
            "rocks/coralline.csv");
    TestBench bench =
        TestBench.in(folder).with("spectra/violet.csv", blocks.get("spectra/blue.csv"));
    blocks.forEach(bench::with);

    Setup setup = bench.read();
    assertThat(String.join("\n", setup.assumptions()) + "\n").isEqualTo(blocks.get("assumptions"));
    assertThat(setup.surveys().get("low").readings()).hasSize(3);
    assertThat(setup.surveys().get("high").readings()).hasSize(9);

    String known = blocks.get("setup.yaml");
    assertThat(known).contains("distribution: fitted");
    bench.with(
        "setup.yaml", known.replace("distribution: fitted", "distribution: {table: pendant.csv}"));
    assertThat(bench.faults()).isEmpty();

    assertThat(known).contains("position_error: 0.5}");
    bench.with(
        "setup.yaml",
        known.replace(
            "position_error: 0.5}",
            "position_error: 0.5, response: probe_response.csv, calibrated under: illuminant A}"));
    assertThat(bench.read().assumptions())
        .anyMatch(sentence -> sentence.startsWith("low: readings of probe are multiplied by "));
  }

  @Test
  void namesEveryKey() throws IOException {
    String page = page();
    String text = TestBench.FULL;
    Matcher keys = Pattern.compile("([a-z][a-z_ ]*):").matcher(text);
    while (keys.find()) {
      String key = keys.group(1);
      boolean named =
          java.util.List.of(
                  "pendant", "blue", "violet", "overall", "low", "probe", "soft", "arch", "boulder")
              .contains(key);
      if (!named) {
        assertThat(page).as("docs/FORMATS.md names the key %s", key).contains(key);
      }
    }
  }
}
