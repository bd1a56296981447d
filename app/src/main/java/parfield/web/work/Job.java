package parfield.web.work;

import java.util.Objects;
import java.util.Optional;
import java.util.UUID;

/**
 * How far a piece of work is: a snapshot.
 *
 * @param id of it
 * @param bench whose
 * @param kind what is done, as in {@code fit}
 * @param state where it is
 * @param share of it that is done, 0 to 1
 * @param words what it is at, or the best so far, in one line
 * @param problem why it failed, if it did
 */
public record Job(
    UUID id,
    UUID bench,
    String kind,
    State state,
    double share,
    String words,
    Optional<String> problem) {
  /** Where a piece of work is. */
  public enum State {
    WAITING,
    RUNNING,
    DONE,
    /** Stopped by a person; what a search knew by then is kept. */
    STOPPED,
    FAILED
  }

  public Job {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(bench, "bench");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(state, "state");
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(problem, "problem");
  }

  /** Whether nothing more will happen to it. */
  public boolean ended() {
    return state == State.DONE || state == State.STOPPED || state == State.FAILED;
  }
}
