package parfield.workspace;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteConfig.TransactionMode;
import org.sqlite.SQLiteDataSource;

/** A workspace in an SQLite file. */
final class SqliteFile {
  private static final int READERS = 4;
  private static final int BUSY_MILLISECONDS = 10_000;
  private static final int PATIENCE_MILLISECONDS = 30_000;

  private SqliteFile() {}

  /** Opens a file; makes it, and the folders above it, if it is not there. */
  static Database open(Location.File location) {
    Path file = location.path();
    try {
      Files.createDirectories(file.getParent());
    } catch (IOException e) {
      throw new WorkspaceProblem(
          WorkspaceProblem.Kind.REFUSED,
          String.format(Locale.ROOT, "the folder of %s cannot be made: %s", file, e.getMessage()),
          List.of("name a file in a folder that you may write to"),
          e);
    }
    Schema.migrate(location, source(file, TransactionMode.DEFERRED));
    // One writer at a time is what SQLite allows: a pool of one queues them without polling.
    return new Database(
        location,
        pool(source(file, TransactionMode.DEFERRED), READERS),
        pool(source(file, TransactionMode.IMMEDIATE), 1));
  }

  private static SQLiteDataSource source(Path file, TransactionMode mode) {
    SQLiteConfig config = new SQLiteConfig();
    config.setJournalMode(JournalMode.WAL);
    config.setSynchronous(SynchronousMode.FULL);
    config.enforceForeignKeys(true);
    config.setBusyTimeout(BUSY_MILLISECONDS);
    config.setTransactionMode(mode);
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file);
    return source;
  }

  private static HikariDataSource pool(SQLiteDataSource source, int size) {
    HikariConfig config = new HikariConfig();
    config.setDataSource(source);
    config.setMaximumPoolSize(size);
    config.setMinimumIdle(1);
    config.setConnectionTimeout(PATIENCE_MILLISECONDS);
    return new HikariDataSource(config);
  }
}
