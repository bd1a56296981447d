package parfield.workspace;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Locale;
import org.junit.jupiter.api.Assumptions;

/** A PostgreSQL server of the tests' own. */
final class PostgresServer {
  private static EmbeddedPostgres server;
  private static int made;

  private PostgresServer() {}

  /** Starts it; where it cannot run, the tests are skipped with the reason. */
  static void start() {
    try {
      server = EmbeddedPostgres.start();
    } catch (IOException | RuntimeException e) {
      Assumptions.abort("PostgreSQL cannot be started here, so not tested: " + e);
    }
  }

  static void stop() {
    try {
      if (server != null) {
        server.close();
        server = null;
      }
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /** A new empty database. */
  static Location fresh() throws SQLException {
    String name = String.format(Locale.ROOT, "workspace%d", ++made);
    try (Connection connection = server.getPostgresDatabase().getConnection();
        Statement statement = connection.createStatement()) {
      statement.execute("CREATE DATABASE " + name);
    }
    return Location.parse(server.getJdbcUrl("postgres", name));
  }
}
