package parfield.workspace;

import java.time.Instant;
import java.util.Objects;
import java.util.UUID;

/**
 * One revision of a reading.
 *
 * @param reading whose
 * @param survey of the reading
 * @param revision counts from 1
 * @param sequence the change of the survey that made it; see {@link Readings#changesSince}
 * @param entry what the reading was made to be
 * @param cause why
 * @param who made it
 * @param when it was entered, taken back or brought back
 */
public record ReadingRevision(
    UUID reading,
    UUID survey,
    long revision,
    long sequence,
    Entry entry,
    Cause cause,
    String who,
    Instant when) {
  public ReadingRevision {
    Objects.requireNonNull(reading, "reading");
    Objects.requireNonNull(survey, "survey");
    Objects.requireNonNull(entry, "entry");
    Objects.requireNonNull(cause, "cause");
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(when, "when");
  }

  /** Whether the reading no longer counts. */
  public boolean withdrawn() {
    return entry.value().isEmpty();
  }
}
