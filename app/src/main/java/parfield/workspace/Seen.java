package parfield.workspace;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;

/**
 * What whoever takes back or brings back a change of a survey had seen of it, so that the change of
 * somebody else is not taken back unseen.
 *
 * @param after id of their own write, undo or redo that was sent just before; it must be the last
 *     change of the survey
 * @param sequence of the last change they know of; it must be the last of the survey
 */
public record Seen(Optional<UUID> after, OptionalLong sequence) {
  /** Whatever the last change is. */
  public static final Seen WHATEVER = new Seen(Optional.empty(), OptionalLong.empty());

  public Seen {
    Objects.requireNonNull(after, "after");
    Objects.requireNonNull(sequence, "sequence");
  }

  /** All up to a change, by its number. */
  public static Seen upTo(long sequence) {
    return new Seen(Optional.empty(), OptionalLong.of(sequence));
  }

  /** All up to one's own write, undo or redo, which may not have got its number yet. */
  public static Seen after(UUID own) {
    return new Seen(Optional.of(own), OptionalLong.empty());
  }
}
