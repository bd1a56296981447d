package parfield.workspace;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteConfig.TransactionMode;
import org.sqlite.SQLiteDataSource;

/** A workspace in an SQLite file. */
final class SqliteFile {
  private static final int NO_LIMIT = 0;
  private static final int READERS = 4;
  private static final int BUSY_MILLISECONDS = 10_000;
  private static final int PATIENCE_MILLISECONDS = 30_000;

  /** The first bytes of every SQLite file. */
  private static final byte[] HEAD = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

  private SqliteFile() {}

  /**
   * Opens a file; makes it, and the folders above it, if it is not there.
   *
   * @throws WorkspaceProblem if it is damaged or no workspace; it is left as it is
   */
  static Database open(Location.File location) {
    return open(location, NO_LIMIT);
  }

  /** Opens a file as {@link #open(Location.File)} that may not grow beyond so many pages. */
  static Database open(Location.File location, int mostPages) {
    Path file = location.path();
    if (Files.exists(file)) {
      check(file);
      Schema.migrate(location, source(file, TransactionMode.IMMEDIATE));
    } else {
      make(location);
    }
    // One writer at a time is what SQLite allows: a pool of one queues them without polling.
    HikariConfig writing = pool(source(file, TransactionMode.IMMEDIATE), 1);
    if (mostPages != NO_LIMIT) {
      writing.setConnectionInitSql("PRAGMA max_page_count = " + mostPages);
    }
    return new Database(
        location,
        new HikariDataSource(pool(source(file, TransactionMode.DEFERRED), READERS)),
        new HikariDataSource(writing));
  }

  /** Makes a file beside its place and puts it there whole. */
  private static void make(Location.File location) {
    Path file = location.path();
    Path part =
        file.resolveSibling(
            String.format(Locale.ROOT, ".%s.%x.part", file.getFileName(), System.nanoTime()));
    try {
      refuseStrayJournal(file);
      Files.createDirectories(file.getParent());
      try {
        SQLiteConfig config = new SQLiteConfig();
        config.setSynchronous(SynchronousMode.FULL);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + part);
        Schema.migrate(location, source);
        place(part, file);
      } finally {
        Files.deleteIfExists(part);
      }
    } catch (FileAlreadyExistsException e) {
      if (!Files.isRegularFile(file)) {
        throw unmade(file, e);
      }
      // Another program made it meanwhile: theirs is as good.
    } catch (IOException e) {
      throw unmade(file, e);
    }
  }

  /**
   * A journal whose file is gone would be played into the file that takes its place: pages of the
   * old workspace among those of the new one.
   */
  private static void refuseStrayJournal(Path file) throws IOException {
    Path journal = file.resolveSibling(file.getFileName() + "-wal");
    // Asked in this order: another program that makes the file now makes its journal after it.
    if (Files.exists(journal) && Files.size(journal) > 0 && !Files.exists(file)) {
      throw new WorkspaceProblem(
          WorkspaceProblem.Kind.UNREADABLE,
          journal + " is what is left of a workspace that is no longer there",
          List.of(
              String.format(
                  Locale.ROOT,
                  "it may hold readings: put its workspace %s back beside it; or move it away, and"
                      + " a new workspace is made",
                  file)),
          null);
    }
  }

  private static WorkspaceProblem unmade(Path file, IOException e) {
    return new WorkspaceProblem(
        WorkspaceProblem.Kind.REFUSED,
        String.format(Locale.ROOT, "the workspace %s cannot be made: %s", file, e),
        List.of("name a file in a folder that you may write to"),
        e);
  }

  /**
   * Puts a file in its place, which must be free.
   *
   * @throws FileAlreadyExistsException if it is not
   */
  static void place(Path part, Path target) throws IOException {
    try {
      Files.createLink(target, part);
      Files.delete(part);
    } catch (UnsupportedOperationException e) {
      Files.move(part, target);
    } catch (FileAlreadyExistsException e) {
      throw e;
    } catch (IOException e) {
      // A file system without links.
      Files.move(part, target);
    }
  }

  /**
   * Reads a whole file without changing it, and refuses what is no sound workspace.
   *
   * @throws WorkspaceProblem that says what to do
   */
  static void check(Path file) {
    try {
      if (!Files.isRegularFile(file)) {
        throw WorkspaceProblem.refused(file + " is no file", "name a file for the workspace");
      }
      byte[] head;
      try (InputStream in = Files.newInputStream(file)) {
        head = in.readNBytes(HEAD.length);
      }
      if (!Arrays.equals(head, HEAD)) {
        throw damaged(file, head.length == 0 ? "it is empty" : "it is no SQLite database", null);
      }
    } catch (IOException e) {
      throw new WorkspaceProblem(
          WorkspaceProblem.Kind.REFUSED,
          String.format(Locale.ROOT, "%s cannot be read: %s", file, e),
          List.of("change the permissions of the file and its folder"),
          e);
    }
    try (Connection connection = readOnly(file).getConnection();
        Statement statement = connection.createStatement()) {
      List<String> findings = texts(statement, "PRAGMA quick_check(1)");
      if (!findings.equals(List.of("ok"))) {
        throw damaged(file, findings.get(0), null);
      }
      List<String> tables =
          texts(
              statement,
              "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'");
      if (!tables.isEmpty() && !tables.contains(Schema.HISTORY)) {
        throw new WorkspaceProblem(
            WorkspaceProblem.Kind.UNREADABLE,
            String.format(
                Locale.ROOT,
                "%s is a database of something else: it has the tables %s",
                file,
                String.join(", ", tables)),
            List.of("name another file; this one was left as it is"));
      }
    } catch (SQLException e) {
      WorkspaceProblem problem = Database.problem(new Location.File(file), e);
      if (problem.kind() == WorkspaceProblem.Kind.UNREADABLE) {
        throw damaged(file, String.valueOf(e.getMessage()), e);
      }
      throw problem;
    }
  }

  private static List<String> texts(Statement statement, String query) throws SQLException {
    List<String> texts = new ArrayList<>();
    try (ResultSet rows = statement.executeQuery(query)) {
      while (rows.next()) {
        texts.add(rows.getString(1));
      }
    }
    return texts;
  }

  private static WorkspaceProblem damaged(Path file, String finding, Exception cause) {
    String cure =
        Backups.newest(file)
            .map(
                backup ->
                    String.format(
                        Locale.ROOT,
                        "restore the newest automatic backup: move %1$s away, and %1$s-wal and"
                            + " %1$s-shm if they are there, then copy %2$s to %1$s",
                        file,
                        backup))
            .orElse(
                "there is no automatic backup beside it: restore your own backup of it, or name"
                    + " another file to begin anew");
    return new WorkspaceProblem(
        WorkspaceProblem.Kind.UNREADABLE,
        String.format(
            Locale.ROOT,
            "%s is damaged or no workspace: %s",
            file,
            finding.replaceAll("\\s+", " ").strip()),
        List.of("it was left as it is", cure),
        cause);
  }

  /** Reads a file and cannot change it. */
  static SQLiteDataSource readOnly(Path file) {
    SQLiteConfig config = new SQLiteConfig();
    config.setReadOnly(true);
    config.setBusyTimeout(BUSY_MILLISECONDS);
    SQLiteDataSource source = new SQLiteDataSource(config);
    source.setUrl("jdbc:sqlite:" + file);
    return source;
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

  private static HikariConfig pool(SQLiteDataSource source, int size) {
    HikariConfig config = new HikariConfig();
    config.setDataSource(source);
    config.setMaximumPoolSize(size);
    config.setMinimumIdle(1);
    config.setConnectionTimeout(PATIENCE_MILLISECONDS);
    return config;
  }
}
