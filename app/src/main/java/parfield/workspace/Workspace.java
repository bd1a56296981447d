package parfield.workspace;

import java.time.Clock;

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

  private Workspace(Location location, Database database, Clock clock) {
    this.location = location;
    this.database = database;
    this.benches = new Benches(database, clock);
    this.surveys = new Surveys(database, clock);
    this.readings = new Readings(database, clock);
    this.results = new Results(database, clock);
    this.shelf = new Shelf(database, clock);
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
    Database database;
    if (location instanceof Location.File file) {
      database = SqliteFile.open(file);
    } else if (location instanceof Location.Postgres postgres) {
      database = Postgres.open(postgres);
    } else {
      throw new AssertionError(location);
    }
    return new Workspace(location, database, clock);
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
