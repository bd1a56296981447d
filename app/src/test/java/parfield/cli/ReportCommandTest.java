package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command {@code report}, as a person runs it. */
class ReportCommandTest {
  @TempDir private Path folder;

  @Test
  @DisplayName("leaves a page, a paper and the numbers that recommend prints")
  void leaves() throws Exception {
    Path setup = Run.bench(folder);
    Path model = folder.resolve("model.json");
    assertThat(Run.parfield("fit", setup, "--out", model).code()).isZero();
    Run recommend = Run.parfield("recommend", setup, "--model", model, "--json");
    Path out = folder.resolve("advice");

    Run report =
        Run.parfield(
            "report",
            setup,
            "--model",
            model,
            "--out",
            out,
            "--paper",
            "a4,letter",
            "--title",
            "Our light",
            "--date",
            "1 May");

    assertThat(report.code()).isEqualTo(recommend.code());
    assertThat(report.err()).isEmpty();
    assertThat(Run.files(out))
        .containsExactly(
            "recommendation.json", "report-a4.pdf", "report-letter.pdf", "report.html");
    assertThat(Files.readString(out.resolve("recommendation.json"))).isEqualTo(recommend.out());
    assertThat(Files.readString(out.resolve("report.html")))
        .contains("<h1>Our light</h1>", "1 May.");
    assertThat(
            new String(
                Files.readAllBytes(out.resolve("report-a4.pdf")), StandardCharsets.ISO_8859_1))
        .startsWith("%PDF-");
    assertThat(report.out()).contains("report.html", "the report on Letter");

    Path tanks = folder.resolve("tanks.csv");
    Files.writeString(tanks, "name,length,width,water\nmy own,31,24,20\n");
    Run inches =
        Run.parfield(
            "report",
            setup,
            "--model",
            model,
            "--out",
            out,
            "--length",
            "in",
            "--json",
            "--tanks",
            tanks);
    JsonNode json = new ObjectMapper().readTree(inches.out());
    assertThat(json.path("files").properties())
        .extracting(java.util.Map.Entry::getKey)
        .containsExactly("report.html", "report-letter.pdf", "recommendation.json");
    assertThat(Files.readString(out.resolve("report.html")))
        .contains(" in above the water", "my own", "31 × 24 × 20");
  }

  @Test
  @DisplayName("refuses papers that are none, and a folder that is a file")
  void refuses() throws Exception {
    Path setup = Run.bench(folder);
    assertThat(Run.parfield("report", setup, "--out", folder, "--paper", "a5").err())
        .contains("a paper is a4 or letter; got a5");
    Run blocked = Run.parfield("report", setup, "--out", setup);
    assertThat(blocked.code()).isEqualTo(ExitCode.FAILED);
    assertThat(blocked.err()).contains("setup.yaml cannot be written: it is no folder");
  }
}
