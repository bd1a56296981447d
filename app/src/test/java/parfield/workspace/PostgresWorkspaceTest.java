package parfield.workspace;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;

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
}
