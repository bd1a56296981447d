package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parfield.Approved;
import parfield.answer.Problem;

class ParfieldTest {
  @TempDir private Path folder;

  @Test
  void helpTellsCommandsAndExitCodes() {
    Run run = Run.parfield("--help");

    assertThat(run.code()).isZero();
    assertThat(run.err()).isEmpty();
    Approved.check("help.txt", run.out());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "check",
        "stats",
        "fit",
        "field",
        "recommend",
        "day",
        "homes",
        "acclimate",
        "power",
        "calendar",
        "spectrum",
        "lamp",
        "validate",
        "demo",
        "workspace"
      })
  void everyCommandHasHelp(String command) {
    Run run = Run.parfield(command, "--help");

    assertThat(run.code()).isZero();
    Approved.check("help-" + command + ".txt", run.out());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"describe", "compare", "depths", "blend", "mix", "parts", "meter", "eyes"})
  void everyQuestionOnSpectraHasHelp(String question) {
    Run run = Run.parfield("spectrum", question, "--help");

    assertThat(run.code()).isZero();
    Approved.check("help-spectrum-" + question + ".txt", run.out());
  }

  @ParameterizedTest
  @ValueSource(strings = {"read", "write"})
  void bothTasksOnLampsHaveHelp(String task) {
    Run run = Run.parfield("lamp", task, "--help");

    assertThat(run.code()).isZero();
    Approved.check("help-lamp-" + task + ".txt", run.out());
  }

  @ParameterizedTest
  @ValueSource(strings = {"backup", "check", "export", "import"})
  void everyTaskOnWorkspacesHasHelp(String task) {
    Run run = Run.parfield("workspace", task, "--help");

    assertThat(run.code()).isZero();
    Approved.check("help-workspace-" + task + ".txt", run.out());
  }

  @Test
  void versionIsThatOfTheBuild() {
    Run run = Run.parfield("--version");

    assertThat(run).isEqualTo(new Run(0, "parfield " + Version.number() + "\n", ""));
    assertThat(Version.number()).matches("[0-9]+\\.[0-9]+\\.[0-9]+(-SNAPSHOT)?");
  }

  @Test
  void aCommandMustBeNamed() {
    assertThat(Run.parfield())
        .isEqualTo(
            new Run(2, "", "parfield: name a command; none was given\n  see parfield --help\n"));
  }

  @Test
  void aMisspeltCommandIsToldWithTheNearest() {
    assertThat(Run.parfield("recomend", "setup.yaml"))
        .isEqualTo(
            new Run(
                2,
                "",
                """
                parfield: Unmatched arguments from index 0: 'recomend', 'setup.yaml'
                  did you mean recommend?
                  see parfield --help
                """));
  }

  @Test
  void aMisspeltOptionIsToldWithTheNearest() {
    Run run = Run.parfield("recommend", "setup.yaml", "--hieghts", "20");

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err())
        .startsWith("parfield: Unknown options: '--hieghts', '20'\n")
        .contains("  did you mean --heights?\n")
        .endsWith("  see parfield recommend --help\n");
  }

  @Test
  void errorsHaveOneShapeInJson() throws Exception {
    for (Run run :
        new Run[] {
          Run.parfield("stats", "--json", folder.resolve("nowhere.yaml")),
          Run.parfield("stats", "--json"),
          Run.parfield("field", "--json", Run.bench(folder), "--rig", "nix", "--depth", "15"),
        }) {
      assertThat(run.code()).isEqualTo(2);
      assertThat(run.out()).isEmpty();
      JsonNode json = new ObjectMapper().readTree(run.err());
      assertThat(json.fieldNames())
          .toIterable()
          .containsExactly("title", "status", "details", "hints");
      assertThat(json.get("status").asInt()).isEqualTo(2);
      assertThat(json.get("hints"))
          .isNotEmpty()
          .allSatisfy(h -> assertThat(h.has("message")).isTrue());
    }
  }

  @Test
  void aFaultOfTheProgramIsCalledSo() {
    Problem problem = ProblemHandler.problemOf(new IllegalStateException("oops"));

    assertThat(problem.text())
        .startsWith(
            "parfield: a fault of the program, not of your files: java.lang.IllegalStateException:"
                + " oops\n")
        .contains("ParfieldTest")
        .endsWith("  report it with the lines above and the setup if you can\n");
    assertThat(problem.status()).isEqualTo(2);
  }
}
