package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * The text of every message of a faulty file. The cases stand in resources, for they are reading
 * matter: the spoiled part, then the messages.
 */
class FaultMessagesTest {
  @TempDir private Path folder;

  /** One case: its name, the lines of a file if it holds any, the messages in order. */
  private record Case(String name, List<String> lines, List<String> messages) {}

  @TestFactory
  List<DynamicTest> setups() {
    return tests(
        "setup_faults.txt",
        spoiled -> {
          String[] parts = spoiled.name().split(" => ", -1);
          String replacement = parts[1].equals("(nothing)") ? "" : parts[1];
          return TestBench.in(folder).replacing(lines(parts[0]), lines(replacement));
        });
  }

  private static String lines(String text) {
    return text.replace("\\n", "\n");
  }

  @TestFactory
  List<DynamicTest> readings() {
    return tests("readings_faults.txt", spoiled -> bench().with("low.csv", text(spoiled)));
  }

  @TestFactory
  List<DynamicTest> spectra() {
    return tests("spectra_faults.txt", spoiled -> bench().with("spectra/blue.csv", text(spoiled)));
  }

  @TestFactory
  List<DynamicTest> intensityTables() {
    return tests(
        "tables_faults.txt",
        spoiled ->
            bench()
                .replacing("{beam: 90, photon flux: 120}", "{table: pendant.csv}")
                .with("pendant.csv", text(spoiled)));
  }

  @TestFactory
  List<DynamicTest> photometricFiles() {
    return tests(
        "photometric_faults.txt",
        spoiled ->
            bench()
                .replacing("{beam: 90, photon flux: 120}", "{file: pendant.ies, photon flux: 120}")
                .with("pendant.ies", text(spoiled)));
  }

  private TestBench bench() {
    return TestBench.in(folder);
  }

  private static String text(Case spoiled) {
    return String.join("\n", spoiled.lines()) + "\n";
  }

  private static List<DynamicTest> tests(String resource, Function<Case, TestBench> bench) {
    List<DynamicTest> tests = new ArrayList<>();
    for (Case spoiled : cases(resource)) {
      tests.add(
          DynamicTest.dynamicTest(
              spoiled.name(),
              () -> {
                assertThat(spoiled.messages()).isNotEmpty();
                assertThat(bench.apply(spoiled).faults()).isEqualTo(spoiled.messages());
              }));
    }
    assertThat(tests).isNotEmpty();
    return tests;
  }

  private static List<Case> cases(String resource) {
    List<Case> cases = new ArrayList<>();
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                FaultMessagesTest.class.getResourceAsStream(resource), StandardCharsets.UTF_8))) {
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (line.startsWith("# ")) {
          cases.add(new Case(line.substring(2), new ArrayList<>(), new ArrayList<>()));
        } else if (line.startsWith("|")) {
          cases.get(cases.size() - 1).lines().add(line.length() > 2 ? line.substring(2) : "");
        } else if (line.startsWith("    ")) {
          cases.get(cases.size() - 1).messages().add(line.strip());
        }
      }
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    return cases;
  }
}
