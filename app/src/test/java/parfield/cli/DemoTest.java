package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoTest {
  @TempDir private Path folder;

  @Test
  void leavesTheWholeJobInAFolder() throws IOException {
    Path out = folder.resolve("made/here");

    Run run = Run.parfield("demo", "--out", out, "--json");

    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    JsonNode json = new ObjectMapper().readTree(run.out());
    assertThat(json.get("folder").asText()).isEqualTo(out.toString());
    assertThat(json.get("files").fieldNames())
        .toIterable()
        .containsExactlyInAnyOrderElementsOf(Run.files(out));
    assertThat(Run.files(out))
        .contains(
            "setup.yaml",
            "low.csv",
            "high.csv",
            "spectra/blue.csv",
            "check.txt",
            "statistics.txt",
            "model.json",
            "fit.txt",
            "recommendation.txt",
            "recommendation.json",
            "field.csv",
            "map-15.svg",
            "map-30.svg",
            "map-45.svg",
            "band-stony.svg",
            "section.svg",
            "heights.svg",
            "spacings.svg");
    for (String name : Run.files(out)) {
      if (name.endsWith(".svg")) {
        assertThat(out.resolve(name)).content().startsWith("<svg ").endsWith("</svg>\n");
      }
    }
    assertThat(Files.readString(out.resolve("statistics.txt")))
        .contains("Readings that look wrong")
        .contains("  - low, line 25 ");
    assertThat(Files.readString(out.resolve("fit.txt"))).contains("  - low, line 25 ");
    assertThat(out.resolve("recommendation.txt"))
        .content()
        .contains("Recommendation for setup.yaml\n\n  Hang  2 × bar, ");
    assertThat(new ObjectMapper().readTree(out.resolve("recommendation.json").toFile()))
        .isEqualTo(json.get("recommendation"));

    // The commands do on these files what the demo did.
    Run check = Run.parfield("check", out.resolve("setup.yaml"));
    assertThat(check.out()).isEqualTo(Files.readString(out.resolve("check.txt")));
  }

  @Test
  void doesNotTouchAPersonsOwnSetup() throws IOException {
    Path own = Files.writeString(folder.resolve("setup.yaml"), "parfield: 1\n");

    Run run = Run.parfield("demo", "--out", folder);

    assertThat(run)
        .isEqualTo(
            Run.refused(
                "parfield: " + own + " is not of this demo's making: it is not overwritten",
                "  name another folder with --out"));
    assertThat(own).hasContent("parfield: 1\n");
    assertThat(Run.files(folder)).containsExactly("setup.yaml");
  }
}
