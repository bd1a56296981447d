package parfield.workspace;

import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/** What became of one write. */
public sealed interface WriteResult {
  /** The write. */
  UUID write();

  /**
   * It is stored, by this call or by an earlier one with the same id.
   *
   * @param write the write
   * @param revision that it made
   */
  record Written(UUID write, ReadingRevision revision) implements WriteResult {
    public Written {
      Objects.requireNonNull(write, "write");
      Objects.requireNonNull(revision, "revision");
    }
  }

  /**
   * The reading is at another revision than the write was based on: nothing was changed.
   *
   * @param write the write
   * @param current what the reading is now; empty if there is no such reading
   */
  record Conflict(UUID write, Optional<ReadingRevision> current) implements WriteResult {
    public Conflict {
      Objects.requireNonNull(write, "write");
      Objects.requireNonNull(current, "current");
    }
  }
}
