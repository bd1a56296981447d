package parfield.workspace;

import java.util.List;
import java.util.Objects;

/** Why a workspace cannot do what was asked, with what a person can do about it. */
public class WorkspaceProblem extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** What kind of trouble it is. */
  public enum Kind {
    /** What was asked for is not in the workspace. */
    NOT_FOUND,
    /** What was asked or given cannot be taken. */
    REFUSED,
    /** What was changed was changed by somebody else meanwhile. */
    STALE,
    /** The workspace is damaged, of a newer program, or no workspace. */
    UNREADABLE,
    /** The disk is full, or the workspace has reached a limit of its size. */
    NO_ROOM,
    /** Somebody else holds the workspace for too long, or it cannot be reached. */
    UNAVAILABLE
  }

  private final Kind kind;
  private final List<String> hints;

  /**
   * A problem.
   *
   * @param kind of trouble
   * @param title what is wrong, in one line
   * @param hints what to do
   */
  public WorkspaceProblem(Kind kind, String title, List<String> hints) {
    super(Objects.requireNonNull(title, "title"));
    this.kind = Objects.requireNonNull(kind, "kind");
    this.hints = List.copyOf(hints);
  }

  WorkspaceProblem(Kind kind, String title, List<String> hints, Throwable cause) {
    this(kind, title, hints);
    initCause(cause);
  }

  static WorkspaceProblem notFound(String title) {
    return new WorkspaceProblem(
        Kind.NOT_FOUND, title, List.of("list what is there, and choose from that"));
  }

  static WorkspaceProblem refused(String title, String... hints) {
    return new WorkspaceProblem(Kind.REFUSED, title, List.of(hints));
  }

  /** Returns what kind of trouble it is. */
  public final Kind kind() {
    return kind;
  }

  /** Returns what is wrong, in one line. */
  public final String title() {
    return getMessage();
  }

  /** Returns what to do, a sentence each. */
  public final List<String> hints() {
    return hints;
  }
}
