package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.workspace.Location;

/** {@code parfield workspace}. */
class WorkspaceTest {
  @TempDir private Path folder;

  private Path at(String name) {
    return folder.resolve(name);
  }

  private Run workspace(Object... args) {
    Object[] all = new Object[args.length + 3];
    all[0] = "workspace";
    System.arraycopy(args, 0, all, 1, args.length);
    all[args.length + 1] = "--workspace";
    all[args.length + 2] = at("library.db");
    return Run.parfield(all);
  }

  @Test
  @DisplayName("a bench goes in, is checked, backed up, exported and taken elsewhere")
  void wholeWay() throws Exception {
    Files.createDirectories(at("reef"));
    Path setup = Run.bench(at("reef"));

    assertThat(workspace("import", setup))
        .isEqualTo(new Run(0, "bench reef added with 2 surveys and 32 readings\n", ""));
    assertThat(workspace("check"))
        .isEqualTo(
            new Run(
                0,
                at("library.db")
                    + " is sound\n1 benches, 2 surveys, 32 readings in 32 revisions, 0 models and"
                    + " recommendations\nnewest backup "
                    + at("library.db.backups").resolve(Run.files(at("library.db.backups")).get(0))
                    + "\n",
                ""));
    assertThat(workspace("backup", at("copy.db")))
        .isEqualTo(
            new Run(
                0,
                at("library.db") + " copied to " + at("copy.db") + ", and the copy checked\n",
                ""));
    assertThat(workspace("export", at("bench.zip"), "--bench", "ree"))
        .isEqualTo(new Run(0, "bench reef exported to " + at("bench.zip") + "\n", ""));
    try (ZipFile zip = new ZipFile(at("bench.zip").toFile())) {
      assertThat(zip.stream().map(Object::toString))
          .containsExactly("setup.yaml", "high.csv", "low.csv", "white.csv");
    }
    assertThat(workspace("export", at("all.zip")))
        .isEqualTo(
            new Run(0, "all of " + at("library.db") + " exported to " + at("all.zip") + "\n", ""));
    Run taken =
        Run.parfield("workspace", "import", at("all.zip"), "--workspace", at("copy.db"), "--json");
    JsonNode json = new ObjectMapper().readTree(taken.out());
    assertThat(json.get("benches").asInt()).isZero();
    assertThat(json.get("known_benches").asInt()).isEqualTo(1);
    Run again = Run.parfield("workspace", "import", at("bench.zip"), "--workspace", at("copy.db"));
    assertThat(again.out()).isEqualTo("bench bench added with 2 surveys and 32 readings\n");
  }

  @Test
  @DisplayName("what is not there is refused and not made")
  void missing() {
    String none = "parfield: there is no workspace " + at("library.db");
    for (String[] task :
        new String[][] {{"check"}, {"backup", "x.db"}, {"export", at("x.zip").toString()}}) {
      assertThat(workspace((Object[]) task))
          .isEqualTo(Run.refused(none, "  name another with --workspace"));
    }
    assertThat(workspace("import", at("nowhere.yaml")))
        .isEqualTo(
            Run.refused(
                "parfield: there is no file " + at("nowhere.yaml"), "  check its name and folder"));
    assertThat(Run.files(folder)).isEmpty();
  }

  @Test
  @DisplayName("a damaged file and a location that is none are told with what to do")
  void refused() {
    Run.write(at("library.db"), "not a database");

    assertThat(workspace("check"))
        .isEqualTo(
            Run.refused(
                "parfield: "
                    + at("library.db")
                    + " is damaged or no workspace: it is no SQLite database",
                "  it was left as it is",
                "  there is no automatic backup beside it: restore your own backup of it, or name"
                    + " another file to begin anew"));
    assertThat(Run.parfield("workspace", "check", "--workspace", "jdbc:other://x").err())
        .contains("a workspace is not kept in jdbc:other:")
        .contains("name a file, or a URL as in jdbc:postgresql://host/database?user=name");
  }

  @Test
  @DisplayName("a bench that is not there, or there more than once, is told so")
  void benches() throws Exception {
    Files.createDirectories(at("reef"));
    Path setup = Run.bench(at("reef"));
    workspace("import", setup);
    workspace("import", setup);

    assertThat(workspace("export", at("x.zip"), "--bench", "pool").err())
        .startsWith("parfield: there is no bench pool in " + at("library.db") + "\n");
    assertThat(workspace("export", at("x.zip"), "--bench", "reef").err())
        .startsWith("parfield: 2 benches are called reef\n  name one by its id: ");
    assertThat(Files.exists(at("x.zip"))).isFalse();
  }

  @Test
  @DisplayName("the workspace of a person who named none lies where data of persons lie")
  void standard() {
    // XDG Base Directory Specification 0.8: $XDG_DATA_HOME, else ~/.local/share; relative ignored.
    Path home = Path.of("/home/ann");
    assertThat(Location.standard(Map.of("XDG_DATA_HOME", "/data"), home))
        .hasToString("/data/parfield/workspace.db");
    for (Map<String, String> none :
        List.of(
            Map.<String, String>of(), Map.of("XDG_DATA_HOME", ""), Map.of("XDG_DATA_HOME", "x"))) {
      assertThat(Location.standard(none, home))
          .hasToString("/home/ann/.local/share/parfield/workspace.db");
    }
  }
}
