package parfield.fit;

/** Thrown where readings do not suffice to fit a light model; the message says what to add. */
public final class UnfittableException extends IllegalArgumentException {
  private static final long serialVersionUID = 1;

  /**
   * Makes the exception.
   *
   * @param message what is missing, and what to do
   */
  public UnfittableException(String message) {
    super(message);
  }
}
