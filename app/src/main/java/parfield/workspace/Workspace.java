package parfield.workspace;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;

/**
 * A stored library. Safe for many threads; several programs may have one workspace open.
 *
 * <p>Whatever a method changes is on the disk when it returns, all of it or, if it throws, nothing.
 * Every method may throw {@link WorkspaceProblem}; text that is too long or no text is an {@link
 * IllegalArgumentException}. {@code who} is the plain name of a person, or whatever tells people
 * apart.
 */
public final class Workspace implements AutoCloseable {
  private final Location location;
  private final Database database;
  private final Benches benches;
  private final Surveys surveys;
  private final Readings readings;
  private final Results results;
  private final Shelf shelf;
  private final BenchFiles benchFiles;
  private final List<String> notices;

  private Workspace(Location location, Database database, Clock clock, List<String> notices) {
    this.location = location;
    this.database = database;
    this.benches = new Benches(database, clock);
    this.surveys = new Surveys(database, clock);
    this.readings = new Readings(database, clock);
    this.results = new Results(database, clock);
    this.shelf = new Shelf(database, clock);
    this.benchFiles = new BenchFiles(database, clock, benches, surveys, readings);
    this.notices = List.copyOf(notices);
  }

  /**
   * Opens a workspace; makes it if it is not there.
   *
   * @param location where
   * @return the workspace, to be closed
   * @throws WorkspaceProblem if what is there is damaged, no workspace, or of a newer program; it
   *     is left as it is
   */
  public static Workspace open(Location location) {
    return open(location, Clock.systemUTC());
  }

  static Workspace open(Location location, Clock clock) {
    if (location instanceof Location.Postgres postgres) {
      return new Workspace(location, Postgres.open(postgres), clock, List.of());
    }
    Location.File file = (Location.File) location;
    Database database = SqliteFile.open(file);
    List<String> notices = List.of();
    try {
      Backups.keep(file.path(), SqliteFile.readOnly(file.path()), clock.instant());
    } catch (WorkspaceProblem e) {
      notices = List.of(e.title() + "; the workspace itself is sound");
    }
    return new Workspace(location, database, clock, notices);
  }

  /** Opens a file that may not grow beyond so many pages: how a full disk is tried. */
  static Workspace limited(Location.File location, int pages) {
    return new Workspace(location, SqliteFile.open(location, pages), Clock.systemUTC(), List.of());
  }

  /** Whether there is a file at a location; of a database, only opening it tells. */
  public static boolean isThere(Location location) {
    return !(location instanceof Location.File file) || Files.exists(file.path());
  }

  /**
   * Whether a file is an archive of a whole workspace, rather than of one bench or another file.
   */
  public static boolean isArchive(Path file) {
    return Archive.isArchive(file);
  }

  /** Returns what went wrong when it was opened and did not hinder that, a sentence each. */
  public List<String> notices() {
    return notices;
  }

  /**
   * Writes a copy of the workspace as it is at this moment, while it is in use.
   *
   * @param target an SQLite file that is not there yet
   * @throws WorkspaceProblem if it is there, cannot be written, or the workspace is in PostgreSQL
   */
  public void backup(Path target) {
    if (!(location instanceof Location.File file)) {
      throw WorkspaceProblem.refused(
          "a workspace in PostgreSQL is backed up by the database's own means",
          "use pg_dump, or export the workspace");
    }
    Backups.write(
        file.path(), SqliteFile.readOnly(file.path()), target.toAbsolutePath().normalize());
  }

  /** The newest automatic backup of the file, if there is one. */
  public Optional<Path> newestBackup() {
    return location instanceof Location.File file ? Backups.newest(file.path()) : Optional.empty();
  }

  /** Returns where it is. */
  public Location location() {
    return location;
  }

  /** Returns the benches with their setups. */
  public Benches benches() {
    return benches;
  }

  /** Returns the surveys of all benches. */
  public Surveys surveys() {
    return surveys;
  }

  /** Returns the readings of all surveys. */
  public Readings readings() {
    return readings;
  }

  /** Returns what was computed of benches. */
  public Results results() {
    return results;
  }

  /** Returns the shelf of fixtures and spectra. */
  public Shelf shelf() {
    return shelf;
  }

  /**
   * Writes all of it, every revision, as one zip archive; what was there is replaced.
   *
   * @throws parfield.formats.InvalidFile if it cannot be written there
   */
  public void exportTo(Path archive) {
    Archive.write(database, archive);
  }

  /**
   * Takes what an archive of a workspace holds and this one does not, all or nothing. A bench that
   * is there already, by its id, stays as it is, and so does what lies on the shelf under the same
   * name.
   *
   * @throws WorkspaceProblem if the archive is damaged, too big, or none of a workspace
   */
  public Taken importFrom(Path archive) {
    return Archive.read(database, archive);
  }

  /** Takes an archive from a stream, which the caller closes; {@code name} is for messages. */
  public Taken importFrom(String name, InputStream archive) {
    return Archive.read(database, name, archive);
  }

  /**
   * Reads all of it and looks whether it holds together; a file is read page by page too.
   *
   * @return what is wrong, a sentence each; none if all is sound
   */
  public List<String> check() {
    if (location instanceof Location.File file) {
      SqliteFile.check(file.path());
    }
    return database.read(Soundness::faults);
  }

  /** Counts what it holds. */
  public Holdings holdings() {
    return database.read(
        handle ->
            new Holdings(
                Table.count(handle, "benches"),
                Table.count(handle, "surveys"),
                Table.count(handle, "readings"),
                Table.count(handle, "reading_revisions"),
                Table.count(handle, "results")));
  }

  /** Returns benches as files, in and out. */
  public BenchFiles benchFiles() {
    return benchFiles;
  }

  /**
   * The bytes of a file.
   *
   * @param file as a bench, a result or the shelf names it
   * @return its bytes, a copy
   * @throws WorkspaceProblem if no such file was stored
   */
  public byte[] bytes(StoredFile file) {
    return database.read(
        handle ->
            Contents.bytes(handle, file.digest())
                .orElseThrow(
                    () -> WorkspaceProblem.notFound("no file with digest " + file.digest())));
  }

  @Override
  public void close() {
    database.close();
  }
}
