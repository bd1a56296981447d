package parfield.workspace;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationState;

/** The tables of a workspace, brought to what this program knows. */
final class Schema {
  /** Where the version of the tables is kept. */
  static final String HISTORY = "flyway_schema_history";

  private Schema() {}

  /**
   * Makes or renews the tables.
   *
   * @throws WorkspaceProblem if they are of a newer program; they are left as they are
   */
  static void migrate(Location location, DataSource source) {
    try {
      Flyway flyway = flyway(location, source);
      MigrationInfo current = flyway.info().current();
      if (current != null && current.getState() == MigrationState.FUTURE_SUCCESS) {
        throw new WorkspaceProblem(
            WorkspaceProblem.Kind.UNREADABLE,
            String.format(
                Locale.ROOT,
                "%s was written by a newer program: its tables are of version %s, this program"
                    + " knows up to %s",
                location,
                current.getVersion(),
                newest(flyway)),
            List.of("take a newer program, or name another workspace; it was left as it is"));
      }
      if (flyway.info().pending().length > 0) {
        flyway.migrate();
      }
    } catch (FlywayException e) {
      throw Database.problem(location, e);
    }
  }

  private static String newest(Flyway flyway) {
    String newest = "";
    for (MigrationInfo migration : flyway.info().all()) {
      if (!migration.getScript().isEmpty()
          && migration.getState() != MigrationState.FUTURE_SUCCESS) {
        newest = migration.getVersion().toString();
      }
    }
    return newest;
  }

  private static Flyway flyway(Location location, DataSource source) {
    return Flyway.configure(Schema.class.getClassLoader())
        .dataSource(source)
        .table(HISTORY)
        .locations("classpath:parfield/workspace/schema")
        .placeholders(Map.of("bytes", location instanceof Location.File ? "BLOB" : "BYTEA"))
        .validateMigrationNaming(true)
        .load();
  }
}
