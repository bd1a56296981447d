package parfield.workspace;

import com.zaxxer.hikari.HikariDataSource;
import java.sql.SQLException;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;

/**
 * The connections to a workspace: some that read, each a snapshot, and some that write. Safe for
 * many threads.
 */
final class Database implements AutoCloseable {
  private static final int SQLITE_FULL = 13;
  private static final int SQLITE_BUSY = 5;
  private static final int SQLITE_CONSTRAINT = 19;
  private static final int SQLITE_CORRUPT = 11;
  private static final int SQLITE_NOT_A_DATABASE = 26;
  private static final int SQLITE_READ_ONLY = 8;
  private static final int SQLITE_IO_ERROR = 10;

  private final Location location;
  private final HikariDataSource reading;
  private final HikariDataSource writing;
  private final Jdbi readingJdbi;
  private final Jdbi writingJdbi;

  Database(Location location, HikariDataSource reading, HikariDataSource writing) {
    this.location = location;
    this.reading = reading;
    this.writing = writing;
    this.readingJdbi = Jdbi.create(reading);
    this.writingJdbi = Jdbi.create(writing);
  }

  /** Asks within one snapshot. */
  <T> T read(Function<Handle, T> question) {
    return translated(() -> readingJdbi.inTransaction(question::apply));
  }

  /** Changes all or nothing; what was changed is on the disk when this returns. */
  <T> T write(Function<Handle, T> change) {
    return translated(() -> writingJdbi.inTransaction(change::apply));
  }

  @Override
  public void close() {
    reading.close();
    writing.close();
  }

  private <T> T translated(Supplier<T> work) {
    try {
      return work.get();
    } catch (JdbiException e) {
      throw problem(location, e);
    }
  }

  /** Why a database refused, in words for a person. */
  static WorkspaceProblem problem(Location location, Exception e) {
    SQLException cause = null;
    for (Throwable at = e; at != null; at = at.getCause()) {
      if (at instanceof SQLException sql) {
        cause = sql;
      }
    }
    if (cause == null) {
      return unknown(location, e);
    }
    return location instanceof Location.File
        ? ofSqlite(location, e, cause)
        : ofPostgres(location, e, cause);
  }

  private static WorkspaceProblem ofSqlite(Location location, Exception e, SQLException cause) {
    // The low byte is the kind of error, the rest says more of it.
    return switch (cause.getErrorCode() & 0xFF) {
      case SQLITE_FULL -> noRoom(location, e);
      case SQLITE_BUSY ->
          new WorkspaceProblem(
              WorkspaceProblem.Kind.UNAVAILABLE,
              String.format(Locale.ROOT, "another program keeps %s busy", location),
              List.of("nothing was stored: try again; end the other program if it hangs"),
              e);
      case SQLITE_CORRUPT, SQLITE_NOT_A_DATABASE ->
          new WorkspaceProblem(
              WorkspaceProblem.Kind.UNREADABLE,
              String.format(Locale.ROOT, "%s is damaged (%s)", location, cause.getMessage()),
              List.of("stop the program and start it anew: it says which backup to restore"),
              e);
      case SQLITE_READ_ONLY ->
          new WorkspaceProblem(
              WorkspaceProblem.Kind.REFUSED,
              String.format(Locale.ROOT, "%s may not be written to", location),
              List.of("change the permissions of the file and its folder; nothing was stored"),
              e);
      case SQLITE_IO_ERROR ->
          new WorkspaceProblem(
              WorkspaceProblem.Kind.NO_ROOM,
              String.format(Locale.ROOT, "the disk of %s fails (%s)", location, cause.getMessage()),
              List.of(
                  "what was entered now is not stored, what was stored before is;"
                      + " check the room on the disk and the disk, then enter it again"),
              e);
      case SQLITE_CONSTRAINT -> contradiction(location, cause, e);
      default -> unknown(location, cause);
    };
  }

  private static WorkspaceProblem ofPostgres(Location location, Exception e, SQLException cause) {
    String state = String.valueOf(cause.getSQLState());
    if (state.startsWith("53")) {
      return noRoom(location, e);
    }
    if (state.startsWith("08") || state.startsWith("57") || state.startsWith("28")) {
      return new WorkspaceProblem(
          WorkspaceProblem.Kind.UNAVAILABLE,
          String.format(
              Locale.ROOT, "%s cannot be reached: %s", location, firstLine(cause.getMessage())),
          List.of("check that the database runs, its address, and your name and password there"),
          e);
    }
    if (state.startsWith("23")) {
      return contradiction(location, cause, e);
    }
    return unknown(location, cause);
  }

  private static WorkspaceProblem contradiction(
      Location location, SQLException cause, Exception e) {
    return new WorkspaceProblem(
        WorkspaceProblem.Kind.REFUSED,
        String.format(
            Locale.ROOT,
            "this does not fit what is stored in %s: %s",
            location,
            firstLine(cause.getMessage())),
        List.of("it names something that is not there, or is there already; nothing was stored"),
        e);
  }

  private static WorkspaceProblem noRoom(Location location, Exception e) {
    return new WorkspaceProblem(
        WorkspaceProblem.Kind.NO_ROOM,
        String.format(Locale.ROOT, "there is no room left for %s", location),
        List.of(
            "what was entered now is not stored, what was stored before is;"
                + " free some room on its disk, then enter it again"),
        e);
  }

  private static WorkspaceProblem unknown(Location location, Exception e) {
    return new WorkspaceProblem(
        WorkspaceProblem.Kind.UNAVAILABLE,
        String.format(
            Locale.ROOT, "%s refuses: %s", location, firstLine(String.valueOf(e.getMessage()))),
        List.of("nothing was stored; try again, and report it if it stays"),
        e);
  }

  private static String firstLine(String text) {
    return text.lines().findFirst().orElse("no reason given");
  }
}
