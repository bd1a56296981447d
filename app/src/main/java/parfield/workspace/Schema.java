package parfield.workspace;

import java.util.Map;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;

/** The tables of a workspace, brought to what this program knows. */
final class Schema {
  private Schema() {}

  static void migrate(Location location, DataSource source) {
    try {
      flyway(location, source).migrate();
    } catch (FlywayException e) {
      throw Database.problem(location, e);
    }
  }

  private static Flyway flyway(Location location, DataSource source) {
    return Flyway.configure(Schema.class.getClassLoader())
        .dataSource(source)
        .locations("classpath:parfield/workspace/schema")
        .placeholders(Map.of("bytes", location instanceof Location.File ? "BLOB" : "BYTEA"))
        .validateMigrationNaming(true)
        .load();
  }
}
