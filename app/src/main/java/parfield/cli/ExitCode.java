package parfield.cli;

import parfield.answer.Problem;

/** What the exit code of the command says. */
final class ExitCode {
  /** Done, and nothing speaks against what was asked. */
  static final int DONE = 0;

  /** Done, but the answer is negative: no option meets the demands, or a reading looks wrong. */
  static final int NEGATIVE = 1;

  /** Not done: a fault in a file, in the command line, or of the program. */
  static final int FAILED = Problem.NOT_DONE;

  /** Interrupted from the keyboard, after the best found so far was printed: 128 + SIGINT. */
  static final int INTERRUPTED = 130;

  private ExitCode() {}
}
