package parfield.workspace;

import java.time.Instant;
import java.util.Collections;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.UUID;

/**
 * One revision of a bench's setup, with the files that belonged to it.
 *
 * @param bench whose
 * @param revision counts from 1
 * @param text of the setup file, as it was saved
 * @param files by name, folders separated by a slash
 * @param cause why it was made
 * @param who made it
 * @param when it was made
 */
public record SetupRevision(
    UUID bench,
    long revision,
    String text,
    Map<String, StoredFile> files,
    Cause cause,
    String who,
    Instant when) {
  public SetupRevision {
    Objects.requireNonNull(bench, "bench");
    Objects.requireNonNull(text, "text");
    files = Collections.unmodifiableMap(new TreeMap<>(files));
    Objects.requireNonNull(cause, "cause");
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(when, "when");
  }
}
