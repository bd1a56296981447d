package parfield.workspace;

import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.io.TempDir;

/** A workspace in an SQLite file. */
class SqliteWorkspaceTest extends WorkspaceContract {
  @TempDir private Path folder;

  @Override
  Location fresh() {
    return new Location.File(folder.resolve(UUID.randomUUID() + ".db"));
  }
}
