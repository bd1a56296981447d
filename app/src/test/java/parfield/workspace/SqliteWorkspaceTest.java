package parfield.workspace;

import java.util.UUID;

/** A workspace in an SQLite file. */
class SqliteWorkspaceTest extends WorkspaceContract {
  @Override
  Location fresh() {
    return new Location.File(folder.resolve(UUID.randomUUID() + ".db"));
  }
}
