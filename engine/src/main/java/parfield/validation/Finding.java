package parfield.validation;

import java.util.Objects;

/**
 * A published value and what this program makes of it.
 *
 * @param expected what was published
 * @param got what was counted or computed
 * @param standardError of it, by chance alone; 0 for what was computed
 * @param verdict what follows
 */
public record Finding(PublishedValue expected, double got, double standardError, Verdict verdict) {
  /** Whether a figure agrees with a published value. */
  public enum Verdict {
    /** Within what the value's tolerance and three standard errors allow. */
    AGREES,
    /** Farther away than that. */
    DIFFERS,
    /** Known too little to tell. */
    OPEN
  }

  public Finding {
    Objects.requireNonNull(expected, "expected");
    Objects.requireNonNull(verdict, "verdict");
  }

  /**
   * Holds a figure against a published value.
   *
   * @param expected the value
   * @param figure the figure
   * @param coarseness factor by which the figure may be less well known than at full precision
   */
  static Finding of(PublishedValue expected, Figure figure, double coarseness) {
    return new Finding(
        expected, figure.value(), figure.error(), verdict(expected, figure, coarseness));
  }

  private static Verdict verdict(PublishedValue expected, Figure figure, double coarseness) {
    double miss = Math.abs(figure.value() - expected.value());
    if (miss > expected.allowed(figure.error())) {
      return Verdict.DIFFERS;
    }
    // Written so that an undefined error is too large.
    return figure.error() <= coarseness * expected.precision() ? Verdict.AGREES : Verdict.OPEN;
  }

  /** Got minus expected. */
  public double error() {
    return got - expected.value();
  }
}
