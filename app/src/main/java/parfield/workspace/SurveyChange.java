package parfield.workspace;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jdbi.v3.core.Handle;

/**
 * Changes of one survey within one transaction. Its row is locked from the start, so that sequence
 * numbers come without gaps and in the order in which they are stored.
 */
final class SurveyChange {
  private final Handle handle;
  private final UUID survey;
  private final String who;
  private final Instant now;
  private long sequence;
  private int readings;
  private boolean changed;

  private SurveyChange(
      Handle handle, UUID survey, String who, Instant now, long sequence, int readings) {
    this.handle = handle;
    this.survey = survey;
    this.who = who;
    this.now = now;
    this.sequence = sequence;
    this.readings = readings;
  }

  static SurveyChange begin(Handle handle, UUID survey, String who, Instant now) {
    return handle
        .createQuery(
            "UPDATE surveys SET sequence = sequence WHERE id = :id RETURNING sequence, readings")
        .bind("id", survey.toString())
        .map(
            (row, context) ->
                new SurveyChange(handle, survey, who, now, row.getLong(1), row.getInt(2)))
        .findOne()
        .orElseThrow(() -> Surveys.noSurvey(survey));
  }

  Instant now() {
    return now;
  }

  /** Starts a step: what is appended from here on belongs to it. */
  long step(Cause cause, Optional<UUID> request) {
    sequence++;
    changed = true;
    handle
        .createUpdate(
            "INSERT INTO steps (survey, sequence, cause, state, request, who, stored)"
                + " VALUES (:survey, :sequence, :cause, 'DONE', :request, :who, :now)")
        .bind("survey", survey.toString())
        .bind("sequence", sequence)
        .bind("cause", cause.name())
        .bind("request", request.map(UUID::toString).orElse(null))
        .bind("who", who)
        .bind("now", Times.micros(now))
        .execute();
    return sequence;
  }

  /** Appends a revision to a reading, the first if there is none. */
  ReadingRevision append(
      UUID reading,
      Optional<ReadingRevision> current,
      Entry entry,
      Cause cause,
      Optional<UUID> write,
      Instant when) {
    long revision = current.map(ReadingRevision::revision).orElse(0L) + 1;
    handle
        .createUpdate(
            "INSERT INTO readings (id, survey, revision, sequence)"
                + " VALUES (:reading, :survey, :revision, :sequence)"
                + " ON CONFLICT (id) DO UPDATE SET revision = :revision, sequence = :sequence")
        .bind("reading", reading.toString())
        .bind("survey", survey.toString())
        .bind("revision", revision)
        .bind("sequence", sequence)
        .execute();
    handle
        .createUpdate(
            "INSERT INTO reading_revisions (reading, revision, survey, sequence, write_id, x, y,"
                + " depth, place_order, typed, value, origin, kind, kept, cause, who, entered)"
                + " VALUES (:reading, :revision, :survey, :sequence, :write, :x, :y, :depth,"
                + " :order, :typed, :value, :origin, :kind, :kept, :cause, :who, :when)")
        .bind("reading", reading.toString())
        .bind("revision", revision)
        .bind("survey", survey.toString())
        .bind("sequence", sequence)
        .bind("write", write.map(UUID::toString).orElse(null))
        .bind("x", entry.place().x())
        .bind("y", entry.place().y())
        .bind("depth", entry.place().depth())
        .bind("order", entry.order())
        .bind("typed", entry.typed())
        .bind("value", entry.value().isPresent() ? entry.value().getAsDouble() : null)
        .bind("origin", entry.origin().name())
        .bind("kind", entry.kind().name())
        .bind("kept", entry.kept())
        .bind("cause", cause.name())
        .bind("who", who)
        .bind("when", Times.micros(when))
        .execute();
    boolean counted = current.isPresent() && !current.get().withdrawn();
    readings += (entry.value().isPresent() ? 1 : 0) - (counted ? 1 : 0);
    return new ReadingRevision(
        reading, survey, revision, sequence, entry, cause, who, Times.instant(Times.micros(when)));
  }

  /** What was taken back before can no longer be brought back. */
  void pass() {
    handle
        .createUpdate(
            "UPDATE steps SET state = 'PASSED' WHERE survey = :survey AND state = 'UNDONE'")
        .bind("survey", survey.toString())
        .execute();
  }

  void end() {
    if (changed) {
      handle
          .createUpdate(
              "UPDATE surveys SET sequence = :sequence, readings = :readings, changed = :now"
                  + " WHERE id = :id")
          .bind("sequence", sequence)
          .bind("readings", readings)
          .bind("now", Times.micros(now))
          .bind("id", survey.toString())
          .execute();
    }
  }

  Optional<Long> stepOf(UUID request) {
    return handle
        .createQuery("SELECT sequence FROM steps WHERE survey = :survey AND request = :request")
        .bind("survey", survey.toString())
        .bind("request", request.toString())
        .mapTo(Long.class)
        .findOne();
  }

  /**
   * Refuses whoever has not seen the last change of the survey.
   *
   * @throws WorkspaceProblem that says whose it is
   */
  void requireSeen(Seen seen, Cause cause) {
    boolean known =
        seen.after().isPresent()
            ? isLast(seen.after().get())
            : seen.sequence().isEmpty() || seen.sequence().getAsLong() == sequence;
    if (!known) {
      String by =
          handle
              .createQuery("SELECT who FROM steps WHERE survey = :survey AND sequence = :sequence")
              .bind("survey", survey.toString())
              .bind("sequence", sequence)
              .mapTo(String.class)
              .findOne()
              .map(name -> ", last by " + name)
              .orElse("");
      boolean undo = cause == Cause.UNDO;
      throw new WorkspaceProblem(
          WorkspaceProblem.Kind.STALE,
          String.format(
              Locale.ROOT,
              "the readings were changed%s, since what you would %s",
              by,
              undo ? "take back" : "bring back"),
          List.of(
              String.format(
                  Locale.ROOT,
                  "nothing was %s: look at what is there now, then ask again",
                  undo ? "taken back" : "brought back")));
    }
  }

  /** Whether the last step of the survey is of a write, undo or redo. */
  private boolean isLast(UUID own) {
    return handle
            .createQuery(
                "SELECT (SELECT count(*) FROM steps WHERE survey = :survey"
                    + " AND sequence = :sequence AND request = :own)"
                    + " + (SELECT count(*) FROM reading_revisions WHERE survey = :survey"
                    + " AND sequence = :sequence AND write_id = :own)")
            .bind("survey", survey.toString())
            .bind("sequence", sequence)
            .bind("own", own.toString())
            .mapTo(Integer.class)
            .one()
        > 0;
  }

  void state(long step, State state) {
    handle
        .createUpdate("UPDATE steps SET state = :state WHERE survey = :survey AND sequence = :step")
        .bind("state", state.name())
        .bind("survey", survey.toString())
        .bind("step", step)
        .execute();
  }

  Optional<Long> lastDone() {
    return lastDone(handle, survey);
  }

  Optional<Long> firstUndone() {
    return firstUndone(handle, survey);
  }

  static Optional<Long> lastDone(Handle handle, UUID survey) {
    return handle
        .createQuery(
            "SELECT sequence FROM steps WHERE survey = :survey AND cause = 'WRITE'"
                + " AND state = 'DONE' ORDER BY sequence DESC LIMIT 1")
        .bind("survey", survey.toString())
        .mapTo(Long.class)
        .findOne();
  }

  static Optional<Long> firstUndone(Handle handle, UUID survey) {
    return handle
        .createQuery(
            "SELECT sequence FROM steps WHERE survey = :survey AND state = 'UNDONE'"
                + " ORDER BY sequence LIMIT 1")
        .bind("survey", survey.toString())
        .mapTo(Long.class)
        .findOne();
  }
}
