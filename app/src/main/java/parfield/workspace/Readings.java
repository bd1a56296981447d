package parfield.workspace;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import parfield.tank.Place;

/**
 * The readings of all surveys. A reading is never overwritten: every change is a new revision of
 * it, undo and redo too.
 *
 * <p>Each change of a survey has a sequence number, one more than the change before it. Undo takes
 * back changes of a survey in that order, the latest first, whoever made it.
 */
public final class Readings {
  private static final int LONGEST_WHO = 100;
  private static final int MOST_AT_ONCE = 10_000;

  private static final String REVISION =
      "SELECT v.reading, v.survey, v.revision, v.sequence, v.x, v.y, v.depth, v.place_order,"
          + " v.typed, v.value, v.origin, v.kind, v.kept, v.cause, v.who, v.entered"
          + " FROM reading_revisions v ";

  private static final String CURRENT =
      REVISION + "JOIN readings r ON r.id = v.reading AND r.revision = v.revision ";

  private final Database database;
  private final Clock clock;

  Readings(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Stores readings and changes of readings, each a change that undo takes back by itself.
   *
   * <p>Writing the same again changes nothing and answers as before: whoever does not know whether
   * a write arrived sends it again.
   *
   * @param survey of all of them
   * @param writes in the order in which they are done
   * @param who entered them
   * @return what became of each, in the same order
   * @throws WorkspaceProblem if there is no such survey, or a reading belongs to another
   */
  public List<WriteResult> write(UUID survey, List<ReadingWrite> writes, String who) {
    return write(survey, writes, who, false);
  }

  /** As {@link #write}, but as one change that undo takes back at once: a pasted block. */
  public List<WriteResult> writeTogether(UUID survey, List<ReadingWrite> writes, String who) {
    return write(survey, writes, who, true);
  }

  private List<WriteResult> write(
      UUID survey, List<ReadingWrite> writes, String who, boolean together) {
    return database.write(handle -> write(handle, survey, writes, who, together));
  }

  List<WriteResult> write(
      Handle handle, UUID survey, List<ReadingWrite> writes, String who, boolean together) {
    Texts.check("who", who, LONGEST_WHO);
    if (writes.size() > MOST_AT_ONCE) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "%d readings may be written at once; got %d: send them in parts",
              MOST_AT_ONCE,
              writes.size()));
    }
    SurveyChange change = SurveyChange.begin(handle, survey, who, clock.instant());
    List<WriteResult> results = new ArrayList<>();
    boolean open = false;
    for (ReadingWrite write : writes) {
      Optional<ReadingRevision> before = ofWrite(handle, write.id());
      if (before.isPresent()) {
        requireSame(survey, write, before.get());
        results.add(new WriteResult.Written(write.id(), before.get()));
        continue;
      }
      Optional<ReadingRevision> current = current(handle, write.reading());
      if (current.isPresent() && !current.get().survey().equals(survey)) {
        throw WorkspaceProblem.refused(
            String.format(
                Locale.ROOT,
                "reading %s belongs to survey %s, not to %s",
                write.reading(),
                current.get().survey(),
                survey),
            "write it to its own survey; nothing was stored");
      }
      if (current.map(ReadingRevision::revision).orElse(0L) != write.basedOn()) {
        results.add(new WriteResult.Conflict(write.id(), current));
        continue;
      }
      if (!(together && open)) {
        change.step(Cause.WRITE, Optional.empty());
        open = true;
      }
      results.add(
          new WriteResult.Written(
              write.id(),
              change.append(
                  write.reading(),
                  current,
                  write.entry(),
                  Cause.WRITE,
                  Optional.of(write.id()),
                  write.when())));
    }
    if (open) {
      change.pass();
    }
    change.end();
    return results;
  }

  /** An id that names another write would be answered as stored, and its reading be lost. */
  private static void requireSame(UUID survey, ReadingWrite write, ReadingRevision stored) {
    if (!stored.survey().equals(survey) || !stored.reading().equals(write.reading())) {
      throw WorkspaceProblem.refused(
          String.format(
              Locale.ROOT,
              "write %s is stored already, of reading %s; it cannot be of %s too",
              write.id(),
              stored.reading(),
              write.reading()),
          "give each write an id of its own; nothing was stored");
    }
  }

  /**
   * Takes back the last change of a survey that was not taken back yet, whoever made it; can be
   * repeated up to the first.
   *
   * @param survey which
   * @param request made by whoever asks, a new one for each undo: the same may be sent again, and
   *     is done once
   * @param who takes it back
   * @return the readings that were changed, as they are now; none if there was nothing to take back
   */
  public List<ReadingRevision> undo(UUID survey, UUID request, String who) {
    return undo(survey, request, Seen.WHATEVER, who);
  }

  /**
   * As {@link #undo(UUID, UUID, String)}, if nothing was changed that whoever asks has not seen.
   *
   * @throws WorkspaceProblem of kind {@link WorkspaceProblem.Kind#STALE} else; nothing is taken
   *     back
   */
  public List<ReadingRevision> undo(UUID survey, UUID request, Seen seen, String who) {
    return walk(survey, request, seen, who, Cause.UNDO);
  }

  /**
   * Brings back what was taken back last, as long as nothing was written since.
   *
   * @param survey which
   * @param request made by whoever asks, a new one for each redo: the same may be sent again, and
   *     is done once
   * @param who brings it back
   * @return the readings that were changed, as they are now; none if there was nothing to bring
   *     back
   */
  public List<ReadingRevision> redo(UUID survey, UUID request, String who) {
    return redo(survey, request, Seen.WHATEVER, who);
  }

  /**
   * As {@link #redo(UUID, UUID, String)}, if nothing was changed that whoever asks has not seen.
   *
   * @throws WorkspaceProblem of kind {@link WorkspaceProblem.Kind#STALE} else; nothing is brought
   *     back
   */
  public List<ReadingRevision> redo(UUID survey, UUID request, Seen seen, String who) {
    return walk(survey, request, seen, who, Cause.REDO);
  }

  private List<ReadingRevision> walk(
      UUID survey, UUID request, Seen seen, String who, Cause cause) {
    Texts.check("who", who, LONGEST_WHO);
    return database.write(
        handle -> {
          SurveyChange change = SurveyChange.begin(handle, survey, who, clock.instant());
          Optional<Long> before = change.stepOf(request);
          if (before.isPresent()) {
            return ofStep(handle, survey, before.get());
          }
          change.requireSeen(seen, cause);
          Optional<Long> target = cause == Cause.UNDO ? change.lastDone() : change.firstUndone();
          if (target.isEmpty()) {
            return List.of();
          }
          change.state(target.get(), cause == Cause.UNDO ? State.UNDONE : State.DONE);
          long sequence = change.step(cause, Optional.of(request));
          for (Span span : spans(handle, survey, target.get())) {
            ReadingRevision now = current(handle, span.reading()).orElseThrow();
            Entry entry = cause == Cause.UNDO ? before(handle, span) : span.last().entry();
            change.append(
                span.reading(), Optional.of(now), entry, cause, Optional.empty(), change.now());
          }
          change.end();
          return ofStep(handle, survey, sequence);
        });
  }

  /**
   * The revisions of one reading that a change made, which follow each other.
   *
   * @param first of them
   * @param last of them
   */
  private record Span(ReadingRevision first, ReadingRevision last) {
    UUID reading() {
      return first.reading();
    }
  }

  private static List<Span> spans(Handle handle, UUID survey, long sequence) {
    Map<UUID, Span> spans = new LinkedHashMap<>();
    for (ReadingRevision revision : ofStep(handle, survey, sequence)) {
      spans.merge(
          revision.reading(),
          new Span(revision, revision),
          (known, next) -> new Span(known.first(), next.last()));
    }
    return List.copyOf(spans.values());
  }

  /** What a reading was before a change; if the change made it, the reading is withdrawn. */
  private static Entry before(Handle handle, Span span) {
    return find(handle, span.reading(), span.first().revision() - 1)
        .map(ReadingRevision::entry)
        .orElseGet(() -> span.first().entry().withdrawn());
  }

  /**
   * The readings of a survey as they are now, withdrawn ones too, in their order and then in that
   * of their last change.
   */
  public List<ReadingRevision> of(UUID survey) {
    return database.read(handle -> of(handle, survey));
  }

  static List<ReadingRevision> of(Handle handle, UUID survey) {
    return handle
        .createQuery(
            CURRENT + "WHERE r.survey = :survey ORDER BY v.place_order, v.sequence, v.reading")
        .bind("survey", survey.toString())
        .map((row, context) -> revision(row))
        .list();
  }

  /**
   * A reading as it is now.
   *
   * @throws WorkspaceProblem if there is no such reading
   */
  public ReadingRevision get(UUID reading) {
    return database.read(handle -> current(handle, reading).orElseThrow(() -> noReading(reading)));
  }

  /**
   * All revisions of a reading, the first first.
   *
   * @throws WorkspaceProblem if there is no such reading
   */
  public List<ReadingRevision> history(UUID reading) {
    List<ReadingRevision> all =
        database.read(
            handle ->
                handle
                    .createQuery(REVISION + "WHERE v.reading = :reading ORDER BY v.revision")
                    .bind("reading", reading.toString())
                    .map((row, context) -> revision(row))
                    .list());
    if (all.isEmpty()) {
      throw noReading(reading);
    }
    return all;
  }

  /**
   * What changed in a survey.
   *
   * @param survey which
   * @param sequence of the last change that is known; 0 for all
   * @return the readings changed since, as they are now
   */
  public Changes changesSince(UUID survey, long sequence) {
    return database.read(
        handle -> {
          long last =
              handle
                  .createQuery("SELECT sequence FROM surveys WHERE id = :survey")
                  .bind("survey", survey.toString())
                  .mapTo(Long.class)
                  .findOne()
                  .orElseThrow(() -> Surveys.noSurvey(survey));
          List<ReadingRevision> readings =
              handle
                  .createQuery(
                      CURRENT
                          + "WHERE r.survey = :survey AND r.sequence > :sequence"
                          + " ORDER BY r.sequence, v.reading")
                  .bind("survey", survey.toString())
                  .bind("sequence", sequence)
                  .map((row, context) -> revision(row))
                  .list();
          return new Changes(
              last,
              readings,
              SurveyChange.lastDone(handle, survey).isPresent(),
              SurveyChange.firstUndone(handle, survey).isPresent());
        });
  }

  private static Optional<ReadingRevision> ofWrite(Handle handle, UUID write) {
    return handle
        .createQuery(REVISION + "WHERE v.write_id = :write")
        .bind("write", write.toString())
        .map((row, context) -> revision(row))
        .findOne();
  }

  private static List<ReadingRevision> ofStep(Handle handle, UUID survey, long sequence) {
    return handle
        .createQuery(
            REVISION
                + "WHERE v.survey = :survey AND v.sequence = :sequence"
                + " ORDER BY v.reading, v.revision")
        .bind("survey", survey.toString())
        .bind("sequence", sequence)
        .map((row, context) -> revision(row))
        .list();
  }

  private static Optional<ReadingRevision> current(Handle handle, UUID reading) {
    return handle
        .createQuery(CURRENT + "WHERE r.id = :reading")
        .bind("reading", reading.toString())
        .map((row, context) -> revision(row))
        .findOne();
  }

  private static Optional<ReadingRevision> find(Handle handle, UUID reading, long revision) {
    return handle
        .createQuery(REVISION + "WHERE v.reading = :reading AND v.revision = :revision")
        .bind("reading", reading.toString())
        .bind("revision", revision)
        .map((row, context) -> revision(row))
        .findOne();
  }

  private static ReadingRevision revision(ResultSet row) throws SQLException {
    double value = row.getDouble("value");
    OptionalDouble shown = row.wasNull() ? OptionalDouble.empty() : OptionalDouble.of(value);
    return new ReadingRevision(
        UUID.fromString(row.getString("reading")),
        UUID.fromString(row.getString("survey")),
        row.getLong("revision"),
        row.getLong("sequence"),
        new Entry(
            new Place(row.getDouble("x"), row.getDouble("y"), row.getDouble("depth")),
            row.getInt("place_order"),
            row.getString("typed"),
            shown,
            Entry.Origin.valueOf(row.getString("origin")),
            Entry.Kind.valueOf(row.getString("kind")),
            row.getBoolean("kept")),
        Cause.valueOf(row.getString("cause")),
        row.getString("who"),
        Times.instant(row.getLong("entered")));
  }

  private static WorkspaceProblem noReading(UUID reading) {
    return WorkspaceProblem.notFound("there is no reading " + reading);
  }
}
