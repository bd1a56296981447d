package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files that are missing, broken, or made to cost time and memory. */
class HostileFileTest {
  private static final String NOT_A_SETUP = "; check that it is a setup file";

  @TempDir private Path folder;

  private List<String> faults(String setup) {
    return TestBench.in(folder).with("setup.yaml", setup).faults();
  }

  private static List<String> messages(Path path) {
    try {
      SetupFile.read(path);
      return List.of();
    } catch (InvalidFile e) {
      return e.faults().stream().map(Fault::message).toList();
    }
  }

  @Test
  void refusesAFileThatIsNotThere() {
    assertThat(messages(folder.resolve("none.yaml")))
        .containsExactly(
            "none.yaml: the file cannot be read: got no such file, allowed a file that exists;"
                + " check its name and folder");
  }

  @Test
  void refusesADirectory() throws IOException {
    Files.createDirectory(folder.resolve("bench"));
    assertThat(messages(folder.resolve("bench")))
        .containsExactly(
            "bench: the file cannot be read: got a directory, allowed a file; name a file inside"
                + " it");
  }

  @Test
  void refusesADevice() {
    Path device = Path.of("/dev/zero");
    org.junit.jupiter.api.Assumptions.assumeTrue(
        Files.exists(device), "skipped: no /dev/zero on this system");
    assertThat(messages(device))
        .containsExactly(
            "zero: the file cannot be read: got a device or a pipe, allowed a regular file; save"
                + " the data to a file first");
  }

  @Test
  void refusesAFileOfAGigabyteUnread() throws IOException {
    TestBench bench = TestBench.in(folder);
    for (String name : List.of("setup.yaml", "low.csv", "spectra/blue.csv")) {
      try (RandomAccessFile file = new RandomAccessFile(bench.path("big").toFile(), "rw")) {
        file.setLength(1 << 30);
      }
      TestBench.in(folder);
      Files.move(
          bench.path("big"), bench.path(name), java.nio.file.StandardCopyOption.REPLACE_EXISTING);
      String limit =
          switch (name) {
            case "setup.yaml" -> "1 MiB (1048576 bytes)";
            case "low.csv" -> "64 MiB (67108864 bytes)";
            default -> "4 MiB (4194304 bytes)";
          };
      assertThat(bench.faults())
          .isNotEmpty()
          .allSatisfy(
              message ->
                  assertThat(message)
                      .contains("1073741824 bytes, allowed at most " + limit)
                      .endsWith("; check that it is the file you mean, or split it"));
    }
  }

  @Test
  void refusesWhatIsNotUtf8() {
    TestBench bench = TestBench.in(folder);
    byte[] latin = "parfield: 1\n# Länge\n".getBytes(StandardCharsets.ISO_8859_1);
    assertThat(bench.with("setup.yaml", latin).faults())
        .containsExactly(
            "setup.yaml:2: the file cannot be read: got the byte 0xE4, allowed text in UTF-8; save"
                + " it as UTF-8");
    byte[] wide = "parfield: 1\n".getBytes(StandardCharsets.UTF_16);
    assertThat(bench.with("setup.yaml", wide).faults())
        .containsExactly(
            "setup.yaml: the file cannot be read: got text in UTF-16, allowed text in UTF-8; save"
                + " it as UTF-8");
    bench = TestBench.in(folder).with("low.csv", latin).with("spectra/blue.csv", wide);
    assertThat(bench.faults())
        .containsExactly(
            "spectra/blue.csv: the file cannot be read: got text in UTF-16, allowed text in UTF-8;"
                + " save it as UTF-8",
            "low.csv:2: the file cannot be read: got the byte 0xE4, allowed text in UTF-8; save it"
                + " as UTF-8");
  }

  @Test
  void refusesWhatIsNoDocument() {
    assertThat(faults(""))
        .containsExactly("setup.yaml: the file is empty: see docs/FORMATS.md for an example");
    assertThat(faults("# a comment\n"))
        .containsExactly("setup.yaml: the file is empty: see docs/FORMATS.md for an example");
    assertThat(faults("just text"))
        .containsExactly(
            "setup.yaml:1:1: the document: got just text, allowed a map of parfield, length, tank,"
                + " fixtures, rigs, meters, surveys, bands, livestock, day, demands; write {parfield: …}");
    assertThat(faults("a: 1\n---\nb: 2\n"))
        .containsExactly(
            "setup.yaml:2:1: this is not YAML (but found another document): check brackets, quotes"
                + " and indentation here and on the line before");
    assertThat(faults("parfield: 1\na: \0\n"))
        .containsExactly(
            "setup.yaml:2:4: this is not YAML: got \\u0000, allowed printable characters; delete"
                + " it");
  }

  @Test
  void refusesABombOfAliases() {
    StringBuilder laughs = new StringBuilder("parfield: 1\nlength: cm\nbands:\n");
    laughs.append("  a0: &a0 {from: 1, to: 2}\n");
    for (int i = 1; i < 10; i++) {
      String before = "*a" + (i - 1);
      laughs.append("  a").append(i).append(": &a").append(i).append(" [");
      laughs.append((before + ", ").repeat(9)).append(before).append("]\n");
    }
    assertThat(faults(laughs.toString()))
        .containsExactly(
            "setup.yaml:10:12: number of aliases: got more, allowed 50; check that it is a setup"
                + " file");
  }

  @Test
  void refusesFewAliasesThatStandForTooMuch() {
    StringBuilder fixtures = new StringBuilder("parfield: 1\nlength: cm\nfixtures:\n");
    fixtures.append("  f0: &f {emitters: [");
    fixtures.append("{x: 0, y: 0}, ".repeat(4000)).append("]}\n");
    for (int i = 1; i < 50; i++) {
      fixtures.append("  f").append(i).append(": *f\n");
    }
    assertThat(faults(fixtures.toString()))
        .last()
        .asString()
        .matches(
            "setup.yaml:4:\\d+: number of entries, aliases written out: got more, allowed 50000;"
                + " use fewer aliases");
  }

  @Test
  void survivesAnAliasOfItself() {
    assertThat(faults("tank: &t {length: *t}\n")).isNotEmpty();
    assertThat(faults("&r parfield: *r\n")).isNotEmpty();
    assertThat(faults("demands: &d [*d]\n")).isNotEmpty();
  }

  @Test
  void refusesDeepNesting() {
    for (String open : List.of("[", "{a: ", "- ", "? ", "a:\n ", "!x [", "&a [")) {
      assertThat(faults("tank: " + open.repeat(20_000))).as("nested %s", open).hasSize(1);
    }
    assertThat(faults("tank: " + "[".repeat(100)))
        .containsExactly("setup.yaml:1:26: nesting: got more, allowed 20 levels" + NOT_A_SETUP);
  }

  @Test
  void refusesMoreEntriesThanAnySetupHas() {
    assertThat(faults("tank: [" + "1, ".repeat(60_000) + "]\n"))
        .containsExactly(
            "setup.yaml:1:149999: number of entries: got more, allowed 50000" + NOT_A_SETUP);
    assertThat(faults("tank: [" + "1, ".repeat(400_000) + "]\n"))
        .containsExactly(
            "setup.yaml: the file cannot be read: got 1200009 bytes, allowed at most 1 MiB (1048576"
                + " bytes); check that it is the file you mean, or split it");
  }

  @Test
  void listsFewOfManyFaultsAndNames() {
    StringBuilder setup = new StringBuilder("parfield: 1\nlength: cm\nfixtures:\n");
    for (int i = 0; i < 10_000; i++) {
      setup.append("  fixture-with-a-rather-long-name-").append(i).append(": {}\n");
    }
    setup.append("rigs:\n  low: {hang: [");
    for (int i = 0; i < 5000; i++) {
      setup.append("{fixture: fixture-with-a-rather-long-nume-").append(i).append("}, ");
    }
    setup.append("]}\n");
    List<String> faults = faults(setup.toString());

    assertThat(faults).hasSize(51);
    assertThat(faults.get(50)).endsWith(" more faults: mend those above first");
    assertThat(faults).allSatisfy(fault -> assertThat(fault.length()).isLessThan(2000));
  }

  /** Each line was put behind all before it: half a million of them took minutes. */
  @Test
  void keepsAsManyLinesOfAPhotometricFilesHeadAsOneHas() {
    String file =
        "IESNA:LM-63-2002\n[TEST] a\n"
            + "[MORE]b\n".repeat(500_000)
            + "TILT=NONE\n1 -1 1 2 1 1 2 0 0 0\n1 1 0\n0 90\n0\n100 0\n";

    PhotometricFile read =
        PhotometricFile.read("many.ies", file.getBytes(StandardCharsets.US_ASCII));

    assertThat(read.labels()).hasSize(1);
    assertThat(read.labels().get(0).text().lines()).hasSize(2000);
  }

  @Test
  void keepsMessagesToOneLineHoweverLongTheValue() {
    List<String> faults =
        faults("parfield: \"" + "\\n\\e[31mx".repeat(10_000) + "\"\nlength: cm\n");

    assertThat(faults.get(0))
        .isEqualTo(
            "setup.yaml:1:11: parfield: got the text"
                + " \"\\u000a\\u001b[31mx\\u000a\\u001b[31mx\\u000a\\u001b[31mx\\u000a\\u001b[31mx"
                + "\\u000a\\u001b[31mx\\u000a\\u001b[31mx\\u000a\\u001b[31mx\\u000a\\u001b[31mx"
                + "\\u000a\\u001b[3…\", allowed a number, 1; write a number");
  }
}
