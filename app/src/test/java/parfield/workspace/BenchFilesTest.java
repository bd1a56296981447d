package parfield.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.demo.DemoBench;
import parfield.formats.InvalidFile;
import parfield.formats.Setup;
import parfield.formats.SetupFile;
import parfield.survey.Reading;
import parfield.tank.Place;
import parfield.units.LengthUnit;

/** Benches that come in and go out as files. */
class BenchFilesTest {
  @TempDir private Path folder;
  private Workspace workspace;

  @BeforeEach
  void open() {
    workspace = Workspace.open(new Location.File(folder.resolve("workspace.db")));
  }

  @AfterEach
  void close() {
    workspace.close();
  }

  private static Map<String, byte[]> demo() {
    Map<String, byte[]> files = new LinkedHashMap<>();
    DemoBench.files(1)
        .forEach((name, text) -> files.put(name, text.getBytes(StandardCharsets.UTF_8)));
    return files;
  }

  private UUID sample(Map<String, byte[]> files) {
    return workspace.benchFiles().take("Sample", true, DemoBench.SETUP, files, "Ann").bench();
  }

  private Path write(String folderName, Map<String, byte[]> files) throws IOException {
    Path target = folder.resolve(folderName);
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Path path = target.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.write(path, file.getValue());
    }
    return target.resolve(DemoBench.SETUP);
  }

  private UUID survey(UUID bench, String name) {
    return workspace.surveys().named(bench, name).id();
  }

  private void write(UUID survey, Entry entry) {
    ReadingWrite write =
        new ReadingWrite(UUID.randomUUID(), UUID.randomUUID(), 0, entry, Instant.EPOCH);
    assertThat(workspace.readings().write(survey, List.of(write), "Ann").get(0))
        .isInstanceOf(WriteResult.Written.class);
  }

  @Test
  @DisplayName("a bench that was not changed goes out as it came in, byte for byte")
  void unchanged() throws IOException {
    Map<String, byte[]> files = demo();
    UUID bench = workspace.benchFiles().take(write("reef", files), "Ann").bench();

    Map<String, byte[]> exported = workspace.benchFiles().files(bench);

    assertThat(workspace.benches().get(bench).name()).isEqualTo("reef");
    assertThat(exported).isNotEmpty();
    exported.forEach((name, bytes) -> assertThat(bytes).as(name).isEqualTo(files.get(name)));
    assertThat(exported).containsKeys("setup.yaml", "low.csv", "high.csv", "spectra/blue.csv");
    assertThat(workspace.surveys().of(bench))
        .extracting(SurveySummary::name)
        .containsExactly("low", "high");
  }

  @Test
  @DisplayName("readings come in as rows that say where they are from")
  void rows() throws IOException {
    Map<String, byte[]> files = demo();
    UUID bench = sample(files);
    Setup setup = SetupFile.read(write("reef", files));

    List<ReadingRevision> rows = workspace.readings().of(survey(bench, "low"));

    assertThat(rows)
        .extracting(row -> new Reading(0, row.entry().place(), row.entry().value().orElseThrow()))
        .containsExactlyElementsOf(
            setup.surveys().get("low").readings().stream()
                .map(reading -> new Reading(0, reading.place(), reading.value()))
                .toList());
    assertThat(rows)
        .allMatch(row -> row.entry().origin() == Entry.Origin.IMPORTED)
        .extracting(row -> row.entry().order())
        .startsWith(1, 2, 3);
    assertThat(workspace.benches().get(bench).sample()).isTrue();
  }

  @Test
  @DisplayName("changed readings go out as a list that reads back to the last bit")
  void changed() throws IOException {
    UUID bench = sample(demo());
    UUID low = survey(bench, "low");
    write(low, Entry.typed(new Place(1.0 / 3, Math.nextUp(0.2), 0.1), 5000, "71.5", 71.5));
    ReadingRevision first = workspace.readings().of(low).get(0);
    workspace
        .readings()
        .write(
            low,
            List.of(
                new ReadingWrite(
                    UUID.randomUUID(),
                    first.reading(),
                    1,
                    first.entry().withdrawn(),
                    Instant.EPOCH)),
            "Ann");
    write(
        low,
        new Entry(
            new Place(0.5, 0.25, 0.1),
            1,
            "400",
            OptionalDouble.of(400),
            Entry.Origin.TYPED,
            Entry.Kind.DRIFT,
            false));

    Map<String, byte[]> exported = workspace.benchFiles().files(bench);
    Setup setup = SetupFile.read(write("out", exported));

    assertThat(exported.get("setup.yaml")).isEqualTo(demo().get("setup.yaml"));
    assertThat(exported.get("high.csv")).isEqualTo(demo().get("high.csv"));
    assertThat(new String(exported.get("not in the setup/low-drift.csv"), StandardCharsets.UTF_8))
        .isEqualTo("x_cm,y_cm,depth_cm,ppfd\n50,25,10,400\n");
    List<ReadingRevision> rows =
        workspace.readings().of(low).stream()
            .filter(row -> !row.withdrawn() && row.entry().kind() == Entry.Kind.GRID)
            .toList();
    assertThat(setup.surveys().get("low").readings())
        .extracting(reading -> new Reading(0, reading.place(), reading.value()))
        .containsExactlyElementsOf(
            rows.stream()
                .map(row -> new Reading(0, row.entry().place(), row.entry().value().orElseThrow()))
                .toList());
  }

  @Test
  @DisplayName("lengths are written in few digits and read back to the last bit")
  void lengths() {
    assertThat(Decimal.length(0.225, LengthUnit.CM)).isEqualTo("22.5");
    assertThat(Decimal.length(0.0254 * 7, LengthUnit.INCH)).isEqualTo("7");
    assertThat(Decimal.shortest(1e-7)).isEqualTo("0.0000001");
    SplittableRandom random = new SplittableRandom(3);
    for (int i = 0; i < 2000; i++) {
      double metres = LengthUnit.CM.toMetres(random.nextInt(0, 20000) / 100.0);
      String text = Decimal.length(metres, LengthUnit.CM);
      assertThat(LengthUnit.CM.toMetres(Double.parseDouble(text))).isEqualTo(metres);
      assertThat(text.length()).isLessThanOrEqualTo(6);
    }
  }

  @Test
  @DisplayName("a survey that names no file gets one, in its text and beside it")
  void planned() throws IOException {
    Map<String, byte[]> files = demo();
    String text = new String(files.get("setup.yaml"), StandardCharsets.UTF_8);
    UUID bench = sample(files);
    String planned =
        text.replace(
            "surveys:\n",
            "surveys:\n  new one: {rig: low, meter: probe, grid: {depths: [15]}}"
                + "   # to be read\n  later: {rig: low, meter: probe, grid: {depths: [15]}}\n");
    assertThat(planned).isNotEqualTo(text);
    workspace.benches().saveSetup(bench, 1, planned, "Ann");
    write(survey(bench, "new one"), Entry.typed(new Place(0.1, 0.2, 0.15), 1, "88", 88));
    write(survey(bench, "gone"), Entry.typed(new Place(0.1, 0.2, 0.15), 1, "88", 88));

    Map<String, byte[]> exported = workspace.benchFiles().files(bench);
    Setup setup = SetupFile.read(write("out", exported));

    assertThat(new String(exported.get("setup.yaml"), StandardCharsets.UTF_8))
        .isEqualTo(planned.replace("new one: {rig", "new one: {readings: 'new one.csv', rig"));
    assertThat(setup.surveys().get("new one").readings()).hasSize(1);
    assertThat(setup.plans()).containsKey("later");
    assertThat(setup.surveys()).doesNotContainKey("later");
    assertThat(exported).containsKey("not in the setup/gone.csv");
  }

  @Test
  @DisplayName("a depth stated for a survey that holds others is refused, not told wrong")
  void statedDepth() throws IOException {
    Map<String, byte[]> files = demo();
    String text = new String(files.get("setup.yaml"), StandardCharsets.UTF_8);
    files.put(
        "setup.yaml",
        text.replace("readings: low.csv", "readings: low.csv, depth: 15")
            .getBytes(StandardCharsets.UTF_8));
    files.put("low.csv", "x_cm,y_cm,ppfd\n10,10,100\n".getBytes(StandardCharsets.UTF_8));
    UUID bench = sample(files);
    write(survey(bench, "low"), Entry.typed(new Place(0.2, 0.2, 0.15), 2, "90", 90));
    assertThat(
            new String(workspace.benchFiles().files(bench).get("low.csv"), StandardCharsets.UTF_8))
        .isEqualTo("x_cm,y_cm,ppfd\n10,10,100\n20,20,90\n");

    write(survey(bench, "low"), Entry.typed(new Place(0.2, 0.2, 0.30), 3, "50", 50));

    assertThatThrownBy(() -> workspace.benchFiles().files(bench))
        .isInstanceOf(WorkspaceProblem.class)
        .hasMessage("the setup states a depth for survey low, which holds readings at another");
  }

  @Test
  @DisplayName("a setup with faults is not taken, and half typed ones go out all the same")
  void faults() {
    Map<String, byte[]> files = demo();
    files.remove("low.csv");
    assertThatThrownBy(() -> sample(files))
        .isInstanceOf(InvalidFile.class)
        .hasMessageContaining("no such file");
    assertThat(workspace.benches().list("", 9, 0).total()).isZero();

    UUID bench = sample(demo());
    workspace.benches().saveSetup(bench, 1, "tank: {length: [", "Ann");
    Map<String, byte[]> exported = workspace.benchFiles().files(bench);
    assertThat(exported.get("setup.yaml")).asString().isEqualTo("tank: {length: [");
    assertThat(exported).containsKeys("not in the setup/low.csv", "spectra/blue.csv");
  }

  @Test
  @DisplayName("a bench goes into an archive and comes back")
  void zip() throws IOException {
    UUID bench = sample(demo());
    Path archive = folder.resolve("my reef.zip");
    workspace.benchFiles().write(bench, archive);

    UUID again = workspace.benchFiles().take(archive, "Bo").bench();

    assertThat(again).isNotEqualTo(bench);
    assertThat(workspace.benches().get(again).name()).isEqualTo("my reef");
    Map<String, byte[]> exported = workspace.benchFiles().files(again);
    workspace
        .benchFiles()
        .files(bench)
        .forEach((name, bytes) -> assertThat(exported.get(name)).as(name).isEqualTo(bytes));
  }

  private static byte[] zip(Map<String, byte[]> files) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        zip.putNextEntry(new ZipEntry(file.getKey()));
        zip.write(file.getValue());
        zip.closeEntry();
      }
    }
    return bytes.toByteArray();
  }

  private Optional<String> refusal(byte[] archive) {
    try {
      workspace.benchFiles().takeZip("x.zip", new ByteArrayInputStream(archive), "Ann");
      return Optional.empty();
    } catch (WorkspaceProblem e) {
      return Optional.of(e.title());
    }
  }

  @Test
  @DisplayName("a bench is found in a folder of the archive")
  void zipFolder() throws IOException {
    Map<String, byte[]> files = new LinkedHashMap<>();
    demo().forEach((name, bytes) -> files.put("reef/bench/" + name, bytes));
    files.put("reef/other.yaml", "x".getBytes(StandardCharsets.UTF_8));
    files.put("__MACOSX/setup.yaml", "x".getBytes(StandardCharsets.UTF_8));

    assertThat(refusal(zip(files))).isEmpty();
  }

  @Test
  @DisplayName("archives that are bombs, damaged or lead elsewhere are refused")
  void hostileArchives() throws IOException {
    Map<String, byte[]> many = new LinkedHashMap<>();
    for (int i = 0; i <= 2000; i++) {
      many.put("f" + i, new byte[0]);
    }
    byte[] sound = zip(demo());

    assertThat(refusal(zip(Map.of("../setup.yaml", new byte[1]))).orElseThrow())
        .startsWith("x.zip is no archive that can be taken: \"../setup.yaml\" is no name");
    assertThat(refusal(zip(Map.of("bomb", new byte[64 << 20]))))
        .contains("x.zip holds more than 200 times its own size");
    assertThat(refusal(zip(many))).contains("x.zip holds more than 2000 files");
    assertThat(refusal(zip(Map.of("notes.txt", new byte[1]))))
        .contains("x.zip is no archive that can be taken: it holds no setup.yaml");
    assertThat(refusal(new byte[100]))
        .contains("x.zip is no archive that can be taken: it holds no file");
    for (int length : new int[] {30, 500, sound.length / 2}) {
      assertThat(refusal(Arrays.copyOf(sound, length))).isPresent();
    }
    assertThat(workspace.benches().list("", 9, 0).total()).isZero();
  }

  @Test
  @DisplayName("archives of workspaces that were changed by hand are refused whole")
  void hostileWorkspaces() throws IOException {
    WorkspaceContract.fill(workspace);
    Path archive = folder.resolve("all.zip");
    workspace.exportTo(archive);
    Map<String, byte[]> files = new LinkedHashMap<>();
    Zip.read(
        "all.zip",
        Files.newInputStream(archive),
        new Zip.Bounds(1000, 1 << 30),
        (name, content) -> files.put(name, content.readAllBytes()));

    try (Workspace other = Workspace.open(new Location.File(folder.resolve("other.db")))) {
      record Change(String file, String from, String to, String reason) {}
      for (Change change :
          List.of(
              new Change(
                  "workspace.json", "\"version\" : 1", "\"version\" : 9", "it is of version 9"),
              new Change(
                  "tables/setup_files.jsonl", "a/b.csv", "../b.csv", "\"../b.csv\" is no name"),
              new Change("tables/steps.jsonl", "\"DONE\"", "\"DUNE\"", "rows of steps whose state"),
              new Change(
                  "tables/readings.jsonl", "\"revision\":", "\"revision\":9", "not at their last"),
              new Change("tables/readings.jsonl", "\"survey\"", "\"surrey\"", "survey is "),
              new Change("tables/surveys.jsonl", "\"low\"", "7", "name is 7"),
              new Change("tables/benches.jsonl", "{", "", "is no JSON"))) {
        Map<String, byte[]> changed = new LinkedHashMap<>(files);
        String before = new String(files.get(change.file()), StandardCharsets.UTF_8);
        String after =
            before.replaceFirst(
                Pattern.quote(change.from()), Matcher.quoteReplacement(change.to()));
        assertThat(after).isNotEqualTo(before);
        changed.put(change.file(), after.getBytes(StandardCharsets.UTF_8));
        byte[] packed = zip(changed);
        assertThatThrownBy(() -> other.importFrom("x.zip", new ByteArrayInputStream(packed)))
            .as(change.toString())
            .isInstanceOf(WorkspaceProblem.class)
            .hasMessageContaining(change.reason());
      }
      Map<String, byte[]> missing = new LinkedHashMap<>(files);
      missing.remove("tables/shelf_files.jsonl");
      assertThatThrownBy(() -> other.importFrom("x.zip", new ByteArrayInputStream(zip(missing))))
          .hasMessage("x.zip is no archive that can be taken: some of its files are missing");
      assertThat(other.benches().list("", 9, 0).total()).isZero();
    }
  }
}
