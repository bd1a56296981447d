package parfield.answer;

/** What was asked cannot be done, for a reason that a person can mend. */
public final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient Problem problem;

  /** Refuses for a reason. */
  public Refusal(Problem problem) {
    super(problem.title());
    this.problem = problem;
  }

  /** A refusal with a title and what to do about it. */
  public static Refusal of(String title, String... hints) {
    return new Refusal(Problem.of(title, hints));
  }

  /** Returns why, and what to do. */
  public Problem problem() {
    return problem;
  }
}
