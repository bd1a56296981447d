package parfield.workspace;

import java.time.Instant;
import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;

/**
 * Something that was computed of a bench, with the exact inputs that made it.
 *
 * @param id of it
 * @param bench of which
 * @param kind what it is
 * @param inputs what it was made of
 * @param document what was found; {@link Workspace#bytes} gives it
 * @param who asked for it
 * @param when it was stored
 */
public record Result(
    UUID id, UUID bench, Kind kind, Inputs inputs, StoredFile document, String who, Instant when) {
  public Result {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(bench, "bench");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(inputs, "inputs");
    Objects.requireNonNull(document, "document");
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(when, "when");
  }

  /** What was computed. */
  public enum Kind {
    /** A fitted light model, as a model file. */
    MODEL,
    /** A recommendation. */
    RECOMMENDATION,
    /** A report of a recommendation, as a page without its style. */
    REPORT,
    /** What a light model of another tank says of this bench, with the recommendation by it. */
    TRANSFER,
    /** The light model of this tank that a transfer came to, as a model file. */
    TRANSFERRED
  }

  /**
   * What a result was made of.
   *
   * @param digest of everything it depends on; whoever computes chooses how
   * @param setupRevision of the bench's setup
   * @param sequences of the surveys that were used, see {@link SurveySummary#sequence}
   * @param version of the program
   */
  public record Inputs(
      String digest, long setupRevision, Map<UUID, Long> sequences, String version) {
    public Inputs {
      Texts.name("a digest of inputs", digest);
      sequences = Collections.unmodifiableMap(new TreeMap<>(sequences));
      Texts.name("a program version", version);
    }
  }
}
