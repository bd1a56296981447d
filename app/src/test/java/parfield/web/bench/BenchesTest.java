package parfield.web.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.demo.DemoBench;
import parfield.formats.InvalidFile;
import parfield.survey.Reading;
import parfield.tank.Place;
import parfield.workspace.Entry;
import parfield.workspace.Location;
import parfield.workspace.ReadingWrite;
import parfield.workspace.Workspace;

/** A stored bench, read. */
class BenchesTest {
  @TempDir private Path folder;
  private Workspace workspace;
  private Benches benches;
  private UUID id;
  private String text;

  @BeforeEach
  void open() {
    workspace = Workspace.open(Location.parse(folder.resolve("workspace.db").toString()));
    benches = new Benches(workspace, "test");
    Map<String, String> demo = new LinkedHashMap<>(DemoBench.files(1));
    text = demo.remove(DemoBench.SETUP);
    Map<String, byte[]> files = new LinkedHashMap<>();
    demo.forEach(
        (name, content) -> {
          if (name.startsWith("spectra/")) {
            files.put(name, content.getBytes(StandardCharsets.UTF_8));
          }
        });
    id = workspace.benches().create("Bars", true, text, files, "me").bench();
  }

  @AfterEach
  void close() {
    workspace.close();
  }

  private UUID take(String survey, Place place, double value) {
    UUID reading = UUID.randomUUID();
    workspace
        .readings()
        .write(
            workspace.surveys().named(id, survey).id(),
            List.of(
                new ReadingWrite(
                    UUID.randomUUID(),
                    reading,
                    0,
                    Entry.typed(place, 1, String.valueOf(value), value),
                    Instant.EPOCH)),
            "me");
    return reading;
  }

  @Test
  @DisplayName("stored readings are the survey's, without its file")
  void readings() {
    take("low", new Place(0.3, 0.2, 0.15), 212);

    OpenBench bench = benches.open(id);

    assertThat(bench.faults()).isEmpty();
    assertThat(bench.setupOrRefuse().surveys().get("low").readings())
        .containsExactly(new Reading(0, new Place(0.3, 0.2, 0.15), 212));
    assertThat(bench.setupOrRefuse().plans()).containsOnlyKeys("low", "high");
    assertThat(benches.open(id)).isSameAs(bench);
  }

  @Test
  @DisplayName("what a fit does not depend on does not make its model old")
  void inputs() {
    take("low", new Place(0.3, 0.2, 0.15), 212);
    String before = benches.open(id).inputs();

    String aimed = text.replace("coverage: 0.65", "coverage: 0.75");
    String more =
        aimed.replace(
            "rigs:\n",
            "rigs:\n  other: {hang: [{fixture: bar, x: 60, y: 27.5, height: 20}], dials: {blue:"
                + " 50}}\n");
    workspace.benches().saveSetup(id, 1, more, "me");

    assertThat(benches.open(id).setupOrRefuse().rigs()).containsKey("other");
    assertThat(benches.open(id).inputs()).isEqualTo(before);

    workspace.benches().saveSetup(id, 2, more.replace("water: 50", "water: 49"), "me");
    assertThat(benches.open(id).inputs()).isNotEqualTo(before);
  }

  @Test
  void readingsMakeAModelOld() {
    String before = benches.open(id).inputs();

    take("high", new Place(0.3, 0.2, 0.15), 100);

    assertThat(benches.open(id).inputs()).isNotEqualTo(before);
  }

  @Test
  @DisplayName("a setup with faults is a bench without a setup")
  void faults() {
    workspace.benches().saveSetup(id, 1, text.replace("rim: 2", "rim: wide"), "me");

    OpenBench bench = benches.open(id);

    assertThat(bench.setup()).isEmpty();
    assertThat(bench.faults()).singleElement().extracting("what").isEqualTo("tank.rim");
    assertThatThrownBy(bench::bench).isInstanceOf(InvalidFile.class);
  }

  @Test
  void noYamlAtAll() {
    workspace.benches().saveSetup(id, 1, "tank: [", "me");

    assertThat(benches.open(id).faults()).isNotEmpty();
  }
}
