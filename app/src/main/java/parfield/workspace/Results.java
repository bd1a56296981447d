package parfield.workspace;

import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import org.jdbi.v3.core.Handle;

/** Light models, recommendations and whatever else was computed of benches. */
public final class Results {
  private static final String COLUMNS =
      "SELECT r.id, r.bench, r.kind, r.inputs_digest, r.setup_revision, r.version, r.document,"
          + " c.size, r.who, r.stored FROM results r JOIN contents c ON c.digest = r.document ";

  private final Database database;
  private final Clock clock;

  Results(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * Stores a result.
   *
   * @param bench of which it was computed
   * @param kind what it is
   * @param inputs what it was made of
   * @param document what was found
   * @param who asked for it
   * @return the stored result
   */
  public Result save(
      UUID bench, Result.Kind kind, Result.Inputs inputs, byte[] document, String who) {
    UUID id = UUID.randomUUID();
    return database.write(
        handle -> {
          long now = Times.micros(clock.instant());
          StoredFile stored = Contents.put(handle, document);
          handle
              .createUpdate(
                  "INSERT INTO results (id, bench, kind, inputs_digest, setup_revision, version,"
                      + " document, who, stored) VALUES (:id, :bench, :kind, :inputs, :setup,"
                      + " :version, :document, :who, :now)")
              .bind("id", id.toString())
              .bind("bench", bench.toString())
              .bind("kind", kind.name())
              .bind("inputs", inputs.digest())
              .bind("setup", inputs.setupRevision())
              .bind("version", inputs.version())
              .bind("document", stored.digest())
              .bind("who", Texts.check("who", who, 100))
              .bind("now", now)
              .execute();
          inputs
              .sequences()
              .forEach(
                  (survey, sequence) ->
                      handle
                          .createUpdate(
                              "INSERT INTO result_surveys (result, survey, sequence)"
                                  + " VALUES (:result, :survey, :sequence)")
                          .bind("result", id.toString())
                          .bind("survey", survey.toString())
                          .bind("sequence", sequence)
                          .execute());
          return new Result(id, bench, kind, inputs, stored, who, Times.instant(now));
        });
  }

  /** The latest result of exactly these inputs; empty if there is none. */
  public Optional<Result> latest(UUID bench, Result.Kind kind, String inputsDigest) {
    return database.read(
        handle ->
            results(
                    handle,
                    "WHERE r.bench = :bench AND r.kind = :kind AND r.inputs_digest = :inputs",
                    Map.of(
                        "bench",
                        bench.toString(),
                        "kind",
                        kind.name(),
                        "inputs",
                        inputsDigest,
                        "limit",
                        1))
                .stream()
                .findFirst());
  }

  /** Whether a bench has a result of a kind whose document is this one. */
  public boolean holds(UUID bench, Result.Kind kind, StoredFile document) {
    return database.read(
        handle ->
            handle
                    .createQuery(
                        "SELECT count(*) FROM results WHERE bench = :bench AND kind = :kind"
                            + " AND document = :document")
                    .bind("bench", bench.toString())
                    .bind("kind", kind.name())
                    .bind("document", document.digest())
                    .mapTo(Long.class)
                    .one()
                > 0);
  }

  /** Results of a bench, the latest first. */
  public List<Result> list(UUID bench, Result.Kind kind, int limit) {
    return database.read(
        handle ->
            results(
                handle,
                "WHERE r.bench = :bench AND r.kind = :kind",
                Map.of("bench", bench.toString(), "kind", kind.name(), "limit", limit)));
  }

  /**
   * A result.
   *
   * @throws WorkspaceProblem if there is no such result
   */
  public Result get(UUID result) {
    return database.read(
        handle ->
            results(handle, "WHERE r.id = :id", Map.of("id", result.toString(), "limit", 1))
                .stream()
                .findFirst()
                .orElseThrow(
                    () -> WorkspaceProblem.notFound("there is no stored result " + result)));
  }

  private static List<Result> results(Handle handle, String where, Map<String, ?> values) {
    return handle
        .createQuery(COLUMNS + where + " ORDER BY r.stored DESC, r.id LIMIT :limit")
        .bindMap(values)
        .map(
            (row, context) ->
                new Result(
                    UUID.fromString(row.getString("id")),
                    UUID.fromString(row.getString("bench")),
                    Result.Kind.valueOf(row.getString("kind")),
                    new Result.Inputs(
                        row.getString("inputs_digest"),
                        row.getLong("setup_revision"),
                        sequences(handle, row.getString("id")),
                        row.getString("version")),
                    new StoredFile(row.getString("document"), row.getLong("size")),
                    row.getString("who"),
                    Times.instant(row.getLong("stored"))))
        .list();
  }

  private static Map<UUID, Long> sequences(Handle handle, String result) {
    Map<UUID, Long> sequences = new TreeMap<>();
    handle
        .createQuery("SELECT survey, sequence FROM result_surveys WHERE result = :result")
        .bind("result", result)
        .map((row, context) -> sequences.put(UUID.fromString(row.getString(1)), row.getLong(2)))
        .list();
    return sequences;
  }
}
