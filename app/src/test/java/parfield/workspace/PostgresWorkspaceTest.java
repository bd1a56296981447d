package parfield.workspace;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** A workspace in PostgreSQL. */
class PostgresWorkspaceTest extends WorkspaceContract {
  @BeforeAll
  static void start() {
    PostgresServer.start();
  }

  @AfterAll
  static void stop() {
    PostgresServer.stop();
  }

  @Override
  Location fresh() throws Exception {
    return PostgresServer.fresh();
  }

  @Test
  @DisplayName("what is in a file goes into PostgreSQL and back, and nothing of it changes")
  void betweenDatabases() throws Exception {
    List<Path> archives = new ArrayList<>();
    Location file = new Location.File(folder.resolve("one.db"));
    Location back = new Location.File(folder.resolve("two.db"));
    try (Workspace workspace = Workspace.open(file)) {
      fill(workspace);
    }
    for (Location location : List.of(file, fresh(), back)) {
      try (Workspace workspace = Workspace.open(location)) {
        if (!archives.isEmpty()) {
          workspace.importFrom(archives.get(archives.size() - 1));
        }
        Path archive = folder.resolve(archives.size() + ".zip");
        workspace.exportTo(archive);
        archives.add(archive);
      }
    }

    assertThat(Files.readAllBytes(archives.get(1))).isEqualTo(Files.readAllBytes(archives.get(0)));
    assertThat(Files.readAllBytes(archives.get(2))).isEqualTo(Files.readAllBytes(archives.get(0)));
  }

  @Test
  @DisplayName("a database that cannot be reached is told with its address and no password")
  void unreachable() {
    assertThatThrownBy(
            () ->
                Workspace.open(
                    Location.parse("jdbc:postgresql://localhost:1/reef?user=ann&password=s3cret")))
        .isInstanceOf(WorkspaceProblem.class)
        .hasMessageStartingWith("jdbc:postgresql://localhost:1/reef cannot be reached: ")
        .hasMessageNotContaining("s3cret");
  }
}
