package parfield.workspace;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import org.postgresql.ds.PGSimpleDataSource;

/** A workspace in a PostgreSQL database. */
final class Postgres {
  private static final int CONNECTIONS = 8;
  private static final int PATIENCE_MILLISECONDS = 30_000;

  private Postgres() {}

  /** Opens a database, which must be there; makes the tables if it has none. */
  static Database open(Location.Postgres location) {
    PGSimpleDataSource source = new PGSimpleDataSource();
    try {
      source.setUrl(location.url());
    } catch (IllegalArgumentException e) {
      throw WorkspaceProblem.refused(
          location + " is no URL of a PostgreSQL database",
          "write it as in jdbc:postgresql://host/database?user=name");
    }
    Schema.migrate(location, source);
    HikariConfig reading = pool(source);
    reading.setReadOnly(true);
    reading.setTransactionIsolation("TRANSACTION_REPEATABLE_READ");
    HikariConfig writing = pool(source);
    // Whoever changes a survey or a bench locks its row first, so that no stricter level is needed.
    writing.setTransactionIsolation("TRANSACTION_READ_COMMITTED");
    return new Database(location, new HikariDataSource(reading), new HikariDataSource(writing));
  }

  private static HikariConfig pool(PGSimpleDataSource source) {
    HikariConfig config = new HikariConfig();
    config.setDataSource(source);
    config.setMaximumPoolSize(CONNECTIONS);
    config.setMinimumIdle(1);
    config.setConnectionTimeout(PATIENCE_MILLISECONDS);
    return config;
  }
}
