package parfield.workspace;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;

/** What must hold between the tables of a workspace beyond what the database itself enforces. */
final class Soundness {
  private Soundness() {}

  /** What does not hold, a sentence each; none if all does. */
  static List<String> faults(Handle handle) {
    return Stream.of(
            fault(
                handle,
                "benches whose setup is not at its last revision",
                "SELECT count(*) FROM benches b WHERE b.revision <> (SELECT COALESCE("
                    + "max(s.revision), 0) FROM setups s WHERE s.bench = b.id)"),
            fault(
                handle,
                "readings that are not at their last revision",
                "SELECT count(*) FROM readings r LEFT JOIN (SELECT reading, max(revision) AS last,"
                    + " count(*) AS all_of, max(sequence) AS sequence FROM reading_revisions"
                    + " GROUP BY reading) v ON v.reading = r.id"
                    + " WHERE v.last IS NULL OR r.revision <> v.last OR v.all_of <> v.last"
                    + " OR r.sequence <> v.sequence"),
            fault(
                handle,
                "revisions of readings that name another survey",
                "SELECT count(*) FROM reading_revisions v JOIN readings r ON r.id = v.reading"
                    + " WHERE r.survey <> v.survey"),
            fault(
                handle,
                "surveys whose number of readings is another",
                "SELECT count(*) FROM surveys s LEFT JOIN (SELECT r.survey, count(*) AS n"
                    + " FROM readings r JOIN reading_revisions v"
                    + " ON v.reading = r.id AND v.revision = r.revision"
                    + " WHERE v.value IS NOT NULL GROUP BY r.survey) n ON n.survey = s.id"
                    + " WHERE s.readings <> COALESCE(n.n, 0)"),
            fault(
                handle,
                "surveys whose changes have gaps",
                "SELECT count(*) FROM surveys s LEFT JOIN (SELECT survey, max(sequence) AS last,"
                    + " count(*) AS n FROM steps GROUP BY survey) t ON t.survey = s.id"
                    + " WHERE s.sequence <> COALESCE(t.last, 0)"
                    + " OR s.sequence <> COALESCE(t.n, 0)"),
            fault(
                handle,
                "readings that no meter shows",
                "SELECT count(*) FROM reading_revisions WHERE value < 0 OR length(typed) > 100"),
            unknown(handle, "reading_revisions", "origin", Entry.Origin.values()),
            unknown(handle, "reading_revisions", "kind", Entry.Kind.values()),
            unknown(handle, "reading_revisions", "cause", Cause.values()),
            unknown(handle, "steps", "cause", Cause.values()),
            unknown(handle, "steps", "state", State.values()),
            unknown(handle, "setups", "cause", Cause.values()),
            unknown(handle, "setups", "state", State.values()),
            unknown(handle, "results", "kind", Result.Kind.values()),
            unknown(handle, "shelf", "kind", ShelfItem.Kind.values()))
        .flatMap(faults -> faults)
        .toList();
  }

  /** Words that this program does not know, from a newer one or a broken archive. */
  private static Stream<String> unknown(
      Handle handle, String table, String column, Enum<?>[] known) {
    String words =
        Stream.of(known).map(word -> "'" + word.name() + "'").collect(Collectors.joining(", "));
    return fault(
        handle,
        String.format(Locale.ROOT, "rows of %s whose %s is none of %s", table, column, words),
        String.format(
            Locale.ROOT, "SELECT count(*) FROM %s WHERE %s NOT IN (%s)", table, column, words));
  }

  private static Stream<String> fault(Handle handle, String what, String query) {
    long found = handle.createQuery(query).mapTo(Long.class).one();
    return found == 0
        ? Stream.of()
        : Stream.of(String.format(Locale.ROOT, "it has %d %s", found, what));
  }
}
