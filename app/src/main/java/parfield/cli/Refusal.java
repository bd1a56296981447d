package parfield.cli;

/** A command cannot be done, for a reason that a person can mend. */
final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final transient Problem problem;

  Refusal(Problem problem) {
    super(problem.title());
    this.problem = problem;
  }

  /** A refusal with a title and what to do about it. */
  static Refusal of(String title, String... hints) {
    return new Refusal(Problem.of(title, hints));
  }

  Problem problem() {
    return problem;
  }
}
