package parfield.workspace;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.LongStream;
import org.jdbi.v3.core.Handle;

/** The benches of a workspace and every revision of their setups. */
public final class Benches {
  /** Most characters of a setup: what its file may hold. */
  private static final int LONGEST_SETUP = 1 << 20;

  private static final int MOST_FILES = 1000;
  private static final int LONGEST_WHO = 100;

  private static final String SUMMARY =
      "SELECT b.id, b.name, b.sample, b.put_away, b.revision, b.created,"
          + " COALESCE(s.surveys, 0) AS surveys, COALESCE(s.readings, 0) AS readings,"
          + " CASE WHEN s.changed > b.changed THEN s.changed ELSE b.changed END AS latest"
          + " FROM benches b LEFT JOIN (SELECT bench, count(*) AS surveys,"
          + " sum(readings) AS readings, max(changed) AS changed FROM surveys GROUP BY bench) s"
          + " ON s.bench = b.id ";

  private final Database database;
  private final Clock clock;

  Benches(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Makes a bench.
   *
   * @param name what people call it
   * @param sample whether it is an invented one
   * @param text of its setup file
   * @param files by name, folders separated by a slash
   * @param who makes it
   * @return its id and first revision
   */
  public SetupRevision create(
      String name, boolean sample, String text, Map<String, byte[]> files, String who) {
    return database.write(handle -> create(handle, name, sample, text, files, who));
  }

  SetupRevision create(
      Handle handle,
      String name,
      boolean sample,
      String text,
      Map<String, byte[]> files,
      String who) {
    UUID bench = UUID.randomUUID();
    long now = Times.micros(clock.instant());
    String checked = Texts.name("the name of a bench", name);
    handle
        .createUpdate(
            "INSERT INTO benches (id, name, folded, sample, put_away, revision, created,"
                + " changed) VALUES (:id, :name, :folded, :sample, :away, 1, :now, :now)")
        .bind("id", bench.toString())
        .bind("name", checked)
        .bind("folded", Texts.folded(checked))
        .bind("sample", sample)
        .bind("away", false)
        .bind("now", now)
        .execute();
    Map<String, StoredFile> stored = new TreeMap<>();
    // In one order, so that two who store the same files at once do not wait for each other.
    new TreeMap<>(files).forEach((file, bytes) -> stored.put(file, Contents.put(handle, bytes)));
    return insert(handle, bench, 1, text, stored, Cause.WRITE, who, now);
  }

  /**
   * A bench as lists show it.
   *
   * @throws WorkspaceProblem if there is no such bench
   */
  public BenchSummary get(UUID bench) {
    return database.read(
        handle ->
            handle
                .createQuery(SUMMARY + "WHERE b.id = :id")
                .bind("id", bench.toString())
                .map((row, context) -> summary(row))
                .findOne()
                .orElseThrow(() -> noBench(bench)));
  }

  /**
   * Benches whose name holds a text, those changed last first; without those put away.
   *
   * @param search what the name holds, capitals and accents aside; empty for all
   * @param limit most of them
   * @param offset how many to skip
   */
  public Page<BenchSummary> list(String search, int limit, int offset) {
    return list(search, false, limit, offset);
  }

  /** Benches that were put away, as {@link #list}. */
  public Page<BenchSummary> listPutAway(String search, int limit, int offset) {
    return list(search, true, limit, offset);
  }

  private Page<BenchSummary> list(String search, boolean putAway, int limit, int offset) {
    String where = "WHERE b.put_away = :away AND b.folded LIKE :search ESCAPE '!' ";
    return database.read(
        handle -> {
          List<BenchSummary> items =
              handle
                  .createQuery(
                      SUMMARY + where + "ORDER BY latest DESC, b.id LIMIT :limit OFFSET :offset")
                  .bind("away", putAway)
                  .bind("search", Texts.pattern(search))
                  .bind("limit", limit)
                  .bind("offset", offset)
                  .map((row, context) -> summary(row))
                  .list();
          long total =
              handle
                  .createQuery("SELECT count(*) FROM benches b " + where)
                  .bind("away", putAway)
                  .bind("search", Texts.pattern(search))
                  .mapTo(Long.class)
                  .one();
          return new Page<>(items, total);
        });
  }

  /** Gives a bench another name. */
  public void rename(UUID bench, String name) {
    String checked = Texts.name("the name of a bench", name);
    change(
        bench,
        "name = :name, folded = :folded",
        Map.of("name", checked, "folded", Texts.folded(checked)));
  }

  /** Keeps a bench out of lists; nothing of it is deleted. */
  public void putAway(UUID bench) {
    change(bench, "put_away = :away", Map.of("away", true));
  }

  /** Brings a bench that was put away back into lists. */
  public void bringBack(UUID bench) {
    change(bench, "put_away = :away", Map.of("away", false));
  }

  private void change(UUID bench, String columns, Map<String, ?> values) {
    int changed =
        database.write(
            handle ->
                handle
                    .createUpdate(
                        "UPDATE benches SET changed = :now, " + columns + " WHERE id = :id")
                    .bind("id", bench.toString())
                    .bind("now", Times.micros(clock.instant()))
                    .bindMap(values)
                    .execute());
    if (changed == 0) {
      throw noBench(bench);
    }
  }

  /**
   * The setup as it is now.
   *
   * @throws WorkspaceProblem if there is no such bench
   */
  public SetupRevision setup(UUID bench) {
    return database.read(handle -> current(handle, bench));
  }

  /**
   * The setup as it once was.
   *
   * @throws WorkspaceProblem if there is no such revision
   */
  public SetupRevision setup(UUID bench, long revision) {
    return database.read(
        handle ->
            find(handle, bench, revision)
                .orElseThrow(
                    () ->
                        WorkspaceProblem.notFound(
                            String.format(
                                Locale.ROOT,
                                "bench %s has no setup revision %d",
                                bench,
                                revision))));
  }

  /** All revisions of a setup, the first first. */
  public List<SetupRevision> history(UUID bench) {
    return database.read(
        handle -> {
          long last = current(handle, bench).revision();
          return LongStream.rangeClosed(1, last)
              .mapToObj(revision -> find(handle, bench, revision).orElseThrow())
              .toList();
        });
  }

  /**
   * Saves the text of a setup; its files stay.
   *
   * @param bench whose
   * @param basedOn the revision that was changed
   * @param text of the setup file
   * @param who changed it
   * @return the new revision
   * @throws StaleSetup if {@code basedOn} is no longer the current revision; nothing is changed
   */
  public SetupRevision saveSetup(UUID bench, long basedOn, String text, String who) {
    return save(bench, basedOn, text, Map.of(), Set.of(), who);
  }

  /**
   * Saves the text of a setup together with files.
   *
   * @param bench whose
   * @param basedOn the revision that was changed
   * @param text of the setup file
   * @param put files to add or to replace, by name
   * @param removed names of files that no longer belong to the setup; earlier revisions keep them
   * @param who changed it
   * @return the new revision
   * @throws StaleSetup if {@code basedOn} is no longer the current revision; nothing is changed
   */
  public SetupRevision save(
      UUID bench,
      long basedOn,
      String text,
      Map<String, byte[]> put,
      Set<String> removed,
      String who) {
    return database.write(
        handle -> {
          SetupRevision current = locked(handle, bench, basedOn);
          Map<String, StoredFile> files = new TreeMap<>(current.files());
          files.keySet().removeAll(removed);
          new TreeMap<>(put).forEach((name, bytes) -> files.put(name, Contents.put(handle, bytes)));
          return append(handle, bench, text, files, Cause.WRITE, who);
        });
  }

  /**
   * Takes back the last change of a setup, files too, whoever made it; can be repeated up to the
   * first revision.
   *
   * @param bench whose
   * @param basedOn the revision that is shown
   * @param who takes it back
   * @return the new revision, which holds what the one before held; empty if there is nothing to
   *     take back
   * @throws StaleSetup if {@code basedOn} is no longer the current revision; nothing is changed
   */
  public Optional<SetupRevision> undo(UUID bench, long basedOn, String who) {
    return database.write(
        handle -> {
          locked(handle, bench, basedOn);
          Optional<Long> last = lastDone(handle, bench);
          last.ifPresent(revision -> state(handle, bench, revision, State.UNDONE));
          return last.map(
              revision -> {
                SetupRevision before = find(handle, bench, revision - 1).orElseThrow();
                return append(handle, bench, before.text(), before.files(), Cause.UNDO, who);
              });
        });
  }

  /**
   * Brings back what was taken back last, as long as nothing was saved since.
   *
   * @param bench whose
   * @param basedOn the revision that is shown
   * @param who brings it back
   * @return the new revision; empty if there is nothing to bring back
   * @throws StaleSetup if {@code basedOn} is no longer the current revision; nothing is changed
   */
  public Optional<SetupRevision> redo(UUID bench, long basedOn, String who) {
    return database.write(
        handle -> {
          locked(handle, bench, basedOn);
          Optional<Long> first = firstUndone(handle, bench);
          first.ifPresent(revision -> state(handle, bench, revision, State.DONE));
          return first.map(
              revision -> {
                SetupRevision again = find(handle, bench, revision).orElseThrow();
                return append(handle, bench, again.text(), again.files(), Cause.REDO, who);
              });
        });
  }

  /** Whether there is a change of the setup to take back. */
  public boolean canUndo(UUID bench) {
    return database.read(handle -> lastDone(handle, bench).isPresent());
  }

  /** Whether there is a change of the setup to bring back. */
  public boolean canRedo(UUID bench) {
    return database.read(handle -> firstUndone(handle, bench).isPresent());
  }

  private static Optional<Long> lastDone(Handle handle, UUID bench) {
    return handle
        .createQuery(
            "SELECT revision FROM setups WHERE bench = :bench AND cause = 'WRITE'"
                + " AND state = 'DONE' AND revision > 1 ORDER BY revision DESC LIMIT 1")
        .bind("bench", bench.toString())
        .mapTo(Long.class)
        .findOne();
  }

  private static Optional<Long> firstUndone(Handle handle, UUID bench) {
    return handle
        .createQuery(
            "SELECT revision FROM setups WHERE bench = :bench AND state = 'UNDONE'"
                + " ORDER BY revision LIMIT 1")
        .bind("bench", bench.toString())
        .mapTo(Long.class)
        .findOne();
  }

  private static void state(Handle handle, UUID bench, long revision, State state) {
    handle
        .createUpdate("UPDATE setups SET state = :state WHERE bench = :bench AND revision = :rev")
        .bind("state", state.name())
        .bind("bench", bench.toString())
        .bind("rev", revision)
        .execute();
  }

  /** The current revision, its bench locked until the transaction ends. */
  private static SetupRevision locked(Handle handle, UUID bench, long basedOn) {
    handle
        .createUpdate("UPDATE benches SET revision = revision WHERE id = :id")
        .bind("id", bench.toString())
        .execute();
    SetupRevision current = current(handle, bench);
    if (current.revision() != basedOn) {
      throw new StaleSetup(basedOn, current);
    }
    return current;
  }

  private SetupRevision append(
      Handle handle,
      UUID bench,
      String text,
      Map<String, StoredFile> files,
      Cause cause,
      String who) {
    long now = Times.micros(clock.instant());
    long revision =
        handle
            .createQuery(
                "UPDATE benches SET revision = revision + 1, changed = :now WHERE id = :id"
                    + " RETURNING revision")
            .bind("id", bench.toString())
            .bind("now", now)
            .mapTo(Long.class)
            .one();
    if (cause == Cause.WRITE) {
      handle
          .createUpdate(
              "UPDATE setups SET state = 'PASSED' WHERE bench = :bench AND state = 'UNDONE'")
          .bind("bench", bench.toString())
          .execute();
    }
    return insert(handle, bench, revision, text, files, cause, who, now);
  }

  private static SetupRevision insert(
      Handle handle,
      UUID bench,
      long revision,
      String text,
      Map<String, StoredFile> files,
      Cause cause,
      String who,
      long now) {
    Texts.check("a setup", text, LONGEST_SETUP);
    if (files.size() > MOST_FILES) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a setup may have %d files; got %d: leave some out",
              MOST_FILES,
              files.size()));
    }
    handle
        .createUpdate(
            "INSERT INTO setups (bench, revision, text, cause, state, who, written)"
                + " VALUES (:bench, :revision, :text, :cause, 'DONE', :who, :now)")
        .bind("bench", bench.toString())
        .bind("revision", revision)
        .bind("text", text)
        .bind("cause", cause.name())
        .bind("who", Texts.check("who", who, LONGEST_WHO))
        .bind("now", now)
        .execute();
    files.forEach(
        (name, file) ->
            handle
                .createUpdate(
                    "INSERT INTO setup_files (bench, revision, name, digest)"
                        + " VALUES (:bench, :revision, :name, :digest)")
                .bind("bench", bench.toString())
                .bind("revision", revision)
                .bind("name", FileNames.check(name))
                .bind("digest", file.digest())
                .execute());
    return new SetupRevision(bench, revision, text, files, cause, who, Times.instant(now));
  }

  static SetupRevision current(Handle handle, UUID bench) {
    return handle
        .createQuery("SELECT revision FROM benches WHERE id = :id")
        .bind("id", bench.toString())
        .mapTo(Long.class)
        .findOne()
        .flatMap(revision -> find(handle, bench, revision))
        .orElseThrow(() -> noBench(bench));
  }

  private static Optional<SetupRevision> find(Handle handle, UUID bench, long revision) {
    Map<String, StoredFile> files = new TreeMap<>();
    handle
        .createQuery(
            "SELECT f.name, f.digest, c.size FROM setup_files f"
                + " JOIN contents c ON c.digest = f.digest"
                + " WHERE f.bench = :bench AND f.revision = :revision")
        .bind("bench", bench.toString())
        .bind("revision", revision)
        .map(
            (row, context) ->
                files.put(row.getString(1), new StoredFile(row.getString(2), row.getLong(3))))
        .list();
    return handle
        .createQuery(
            "SELECT text, cause, who, written FROM setups"
                + " WHERE bench = :bench AND revision = :revision")
        .bind("bench", bench.toString())
        .bind("revision", revision)
        .map(
            (row, context) ->
                new SetupRevision(
                    bench,
                    revision,
                    row.getString("text"),
                    files,
                    Cause.valueOf(row.getString("cause")),
                    row.getString("who"),
                    Times.instant(row.getLong("written"))))
        .findOne();
  }

  private static BenchSummary summary(ResultSet row) throws SQLException {
    return new BenchSummary(
        UUID.fromString(row.getString("id")),
        row.getString("name"),
        row.getBoolean("sample"),
        row.getBoolean("put_away"),
        row.getLong("revision"),
        row.getInt("surveys"),
        row.getInt("readings"),
        Times.instant(row.getLong("created")),
        Times.instant(row.getLong("latest")));
  }

  static WorkspaceProblem noBench(UUID bench) {
    return WorkspaceProblem.notFound("there is no bench " + bench);
  }
}
