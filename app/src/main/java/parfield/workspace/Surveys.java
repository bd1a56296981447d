package parfield.workspace;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.jdbi.v3.core.Handle;

/** The surveys of all benches. */
public final class Surveys {
  private static final String SUMMARY =
      "SELECT s.id, s.bench, b.name AS bench_name, s.name, s.sequence, s.readings, s.created,"
          + " s.changed FROM surveys s JOIN benches b ON b.id = s.bench ";

  private final Database database;
  private final Clock clock;

  Surveys(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * The survey of a name; made if the bench has none.
   *
   * @param bench whose
   * @param name its key among the setup's {@code surveys}
   * @throws WorkspaceProblem if there is no such bench
   */
  public SurveySummary named(UUID bench, String name) {
    String checked = Texts.name("the name of a survey", name);
    // Asked first without writing: lists do so for every survey, and a full disk must not hinder.
    return database
        .read(handle -> find(handle, bench, checked))
        .orElseGet(() -> database.write(handle -> named(handle, bench, checked)));
  }

  SurveySummary named(Handle handle, UUID bench, String name) {
    String checked = Texts.name("the name of a survey", name);
    UUID id = UUID.randomUUID();
    Optional<SurveySummary> known = find(handle, bench, checked);
    if (known.isPresent()) {
      return known.get();
    }
    int benches =
        handle
            .createQuery("SELECT count(*) FROM benches WHERE id = :bench")
            .bind("bench", bench.toString())
            .mapTo(Integer.class)
            .one();
    if (benches == 0) {
      throw Benches.noBench(bench);
    }
    handle
        .createUpdate(
            "INSERT INTO surveys (id, bench, name, folded, sequence, readings, created,"
                + " changed) VALUES (:id, :bench, :name, :folded, 0, 0, :now, :now)"
                + " ON CONFLICT (bench, name) DO NOTHING")
        .bind("id", id.toString())
        .bind("bench", bench.toString())
        .bind("name", checked)
        .bind("folded", Texts.folded(checked))
        .bind("now", Times.micros(clock.instant()))
        .execute();
    return find(handle, bench, checked).orElseThrow();
  }

  /**
   * A survey as lists show it.
   *
   * @throws WorkspaceProblem if there is no such survey
   */
  public SurveySummary get(UUID survey) {
    return database.read(
        handle ->
            handle
                .createQuery(SUMMARY + "WHERE s.id = :id")
                .bind("id", survey.toString())
                .map((row, context) -> summary(row))
                .findOne()
                .orElseThrow(() -> noSurvey(survey)));
  }

  /** The surveys of a bench, the oldest first. */
  public List<SurveySummary> of(UUID bench) {
    return database.read(handle -> of(handle, bench));
  }

  static List<SurveySummary> of(Handle handle, UUID bench) {
    return handle
        .createQuery(SUMMARY + "WHERE s.bench = :bench ORDER BY s.created, s.id")
        .bind("bench", bench.toString())
        .map((row, context) -> summary(row))
        .list();
  }

  /**
   * Surveys whose name, or whose bench's name, holds a text; those changed last first; without
   * those of benches put away.
   *
   * @param search what the name holds, capitals and accents aside; empty for all
   * @param limit most of them
   * @param offset how many to skip
   */
  public Page<SurveySummary> list(String search, int limit, int offset) {
    String where =
        "WHERE b.put_away = :away AND (s.folded LIKE :search ESCAPE '!'"
            + " OR b.folded LIKE :search ESCAPE '!') ";
    return database.read(
        handle -> {
          List<SurveySummary> items =
              handle
                  .createQuery(
                      SUMMARY
                          + where
                          + "ORDER BY s.changed DESC, s.id DESC LIMIT :limit OFFSET :offset")
                  .bind("away", false)
                  .bind("search", Texts.pattern(search))
                  .bind("limit", limit)
                  .bind("offset", offset)
                  .map((row, context) -> summary(row))
                  .list();
          long total =
              handle
                  .createQuery(
                      "SELECT count(*) FROM surveys s JOIN benches b ON b.id = s.bench " + where)
                  .bind("away", false)
                  .bind("search", Texts.pattern(search))
                  .mapTo(Long.class)
                  .one();
          return new Page<>(items, total);
        });
  }

  /**
   * Gives a survey another name, as the setup's key is changed.
   *
   * @throws WorkspaceProblem if there is no such survey, or another of its bench has that name
   */
  public void rename(UUID survey, String name) {
    String checked = Texts.name("the name of a survey", name);
    database.write(
        handle -> {
          SurveySummary now =
              handle
                  .createQuery(SUMMARY + "WHERE s.id = :id")
                  .bind("id", survey.toString())
                  .map((row, context) -> summary(row))
                  .findOne()
                  .orElseThrow(() -> noSurvey(survey));
          if (find(handle, now.bench(), checked)
              .filter(it -> !it.id().equals(survey))
              .isPresent()) {
            throw WorkspaceProblem.refused(
                String.format(
                    Locale.ROOT, "bench %s has a survey %s already", now.benchName(), checked),
                "choose another name");
          }
          return handle
              .createUpdate(
                  "UPDATE surveys SET name = :name, folded = :folded, changed = :now"
                      + " WHERE id = :id")
              .bind("id", survey.toString())
              .bind("name", checked)
              .bind("folded", Texts.folded(checked))
              .bind("now", Times.micros(clock.instant()))
              .execute();
        });
  }

  private static Optional<SurveySummary> find(Handle handle, UUID bench, String name) {
    return handle
        .createQuery(SUMMARY + "WHERE s.bench = :bench AND s.name = :name")
        .bind("bench", bench.toString())
        .bind("name", name)
        .map((row, context) -> summary(row))
        .findOne();
  }

  private static SurveySummary summary(ResultSet row) throws SQLException {
    return new SurveySummary(
        UUID.fromString(row.getString("id")),
        UUID.fromString(row.getString("bench")),
        row.getString("bench_name"),
        row.getString("name"),
        row.getLong("sequence"),
        row.getInt("readings"),
        Times.instant(row.getLong("created")),
        Times.instant(row.getLong("changed")));
  }

  static WorkspaceProblem noSurvey(UUID survey) {
    return WorkspaceProblem.notFound("there is no survey " + survey);
  }
}
