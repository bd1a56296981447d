package parfield.workspace;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import javax.sql.DataSource;

/**
 * Copies of an SQLite file, each whole and of one moment, made while the workspace is in use. The
 * automatic ones lie in a folder beside it, named by the time they were made.
 */
final class Backups {
  /** How many automatic ones are kept at most. */
  static final int KEPT = 10;

  /** How many are kept however big they are. */
  static final int ALWAYS_KEPT = 2;

  /** How much all that are kept may take, beyond those [bytes]. */
  private static final long MOST_BYTES = 2L << 30;

  private static final String ENDING = ".db";

  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HHmmss.SSSSSS'Z'", Locale.ROOT)
          .withZone(ZoneOffset.UTC);

  /** Differs whenever something was stored in between. */
  private static final String MARK =
      "SELECT (SELECT count(*) FROM benches) || '.' ||"
          + " (SELECT COALESCE(sum(revision), 0) FROM benches) || '.' ||"
          + " (SELECT COALESCE(max(changed), 0) FROM benches) || '.' ||"
          + " (SELECT count(*) FROM surveys) || '.' ||"
          + " (SELECT COALESCE(sum(sequence), 0) FROM surveys) || '.' ||"
          + " (SELECT COALESCE(max(changed), 0) FROM surveys) || '.' ||"
          + " (SELECT count(*) FROM results) || '.' ||"
          + " (SELECT COALESCE(sum(revision), 0) FROM shelf) || '.' ||"
          + " (SELECT count(*) FROM shelf WHERE removed)";

  private Backups() {}

  /** The folder of automatic backups of a file. */
  static Path folder(Path file) {
    return file.resolveSibling(file.getFileName() + ".backups");
  }

  /** The newest automatic backup of a file, if there is one. */
  static Optional<Path> newest(Path file) {
    return all(file).stream().reduce((older, newer) -> newer);
  }

  /** The automatic backups of a file, the oldest first. */
  static List<Path> all(Path file) {
    Path folder = folder(file);
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(path -> path.getFileName().toString().endsWith(ENDING))
          .sorted(Comparator.comparing(path -> path.getFileName().toString()))
          .toList();
    } catch (IOException e) {
      return List.of();
    }
  }

  /**
   * Makes a backup if something was stored since the last one, and lets go of the oldest.
   *
   * @param file of the workspace
   * @param source reads it
   * @param now the time
   * @throws WorkspaceProblem if it cannot be made; the workspace is as it was
   */
  static void keep(Path file, DataSource source, Instant now) {
    String mark = mark(file, source);
    Optional<Path> newest = newest(file);
    if (mark.startsWith("0.0.0.0.0.0.0.0.")
        || newest.filter(at -> isMarked(at, mark)).isPresent()) {
      return;
    }
    try {
      Files.createDirectories(folder(file));
    } catch (IOException e) {
      throw unmade(folder(file), e);
    }
    write(file, source, folder(file).resolve(NAME.format(now) + ENDING));
    thin(all(file), MOST_BYTES);
  }

  /** Lets go of the oldest: of more than are kept, and of more than all may take. */
  static void thin(List<Path> backups, long mostBytes) {
    long total = 0;
    for (int age = 0; age < backups.size(); age++) {
      Path backup = backups.get(backups.size() - 1 - age);
      try {
        total += Files.size(backup);
        if (age >= KEPT || (age >= ALWAYS_KEPT && total > mostBytes)) {
          Files.deleteIfExists(backup);
        }
      } catch (IOException e) {
        throw unmade(backup, e);
      }
    }
  }

  private static boolean isMarked(Path backup, String mark) {
    try {
      return mark(backup, SqliteFile.readOnly(backup)).equals(mark);
    } catch (WorkspaceProblem e) {
      // Unreadable, or of older tables: no backup of what is stored now.
      return false;
    }
  }

  private static String mark(Path file, DataSource source) {
    try (Connection connection = source.getConnection();
        Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(MARK)) {
      rows.next();
      return rows.getString(1);
    } catch (SQLException e) {
      throw Database.problem(new Location.File(file), e);
    }
  }

  /**
   * Writes a backup, whole or not at all, and checks it.
   *
   * @param file of the workspace
   * @param source reads it
   * @param target must not be there yet
   */
  static void write(Path file, DataSource source, Path target) {
    Path part =
        target.resolveSibling(
            String.format(Locale.ROOT, ".%s.%x.part", target.getFileName(), System.nanoTime()));
    try {
      if (Files.exists(target)) {
        throw WorkspaceProblem.refused(
            target + " is there already: a backup overwrites nothing", "name a file that is not");
      }
      try (Connection connection = source.getConnection();
          PreparedStatement statement = connection.prepareStatement("VACUUM INTO ?")) {
        statement.setString(1, part.toString());
        statement.execute();
      }
      SqliteFile.check(part);
      try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
        channel.force(true);
      }
      SqliteFile.place(part, target);
    } catch (FileAlreadyExistsException e) {
      throw WorkspaceProblem.refused(
          target + " is there already: a backup overwrites nothing", "name a file that is not");
    } catch (IOException e) {
      throw unmade(target, e);
    } catch (SQLException e) {
      throw unmade(target, e);
    } finally {
      try {
        Files.deleteIfExists(part);
      } catch (IOException e) {
        // A part that stays takes room, but stands for nothing.
      }
    }
  }

  private static WorkspaceProblem unmade(Path target, Exception e) {
    return new WorkspaceProblem(
        WorkspaceProblem.Kind.NO_ROOM,
        String.format(
            Locale.ROOT,
            "the backup %s cannot be made: %s",
            target,
            String.valueOf(e.getMessage())),
        List.of("free some room on its disk and see that you may write there"),
        e);
  }
}
