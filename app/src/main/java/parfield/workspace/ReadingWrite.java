package parfield.workspace;

import java.time.Instant;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;

/**
 * A reading to be stored, or a change of one.
 *
 * @param id of this write, made by whoever writes and never used for another: the same write may be
 *     sent again and again, and is done once
 * @param reading id of the reading, made by whoever takes it
 * @param basedOn the revision of the reading that this write follows; 0 if the reading is new
 * @param entry what the reading shall be
 * @param when it was entered
 */
public record ReadingWrite(UUID id, UUID reading, long basedOn, Entry entry, Instant when) {
  public ReadingWrite {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(reading, "reading");
    Objects.requireNonNull(entry, "entry");
    Objects.requireNonNull(when, "when");
    if (basedOn < 0) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a write is based on revision 0 or a later one; got %d", basedOn));
    }
  }
}
