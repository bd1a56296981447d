package parfield.validation;

import java.util.Locale;
import java.util.Objects;

/**
 * A published value, and how near a figure must come to agree with it.
 *
 * @param ofCase name of the case that it belongs to
 * @param quantity what it is
 * @param value as published
 * @param tolerance in the unit of the value, above 0
 * @param kind what the tolerance stands for
 * @param precision standard error at which a figure is known well enough at full precision, in the
 *     unit of the value, above 0
 * @param source who published it
 */
public record PublishedValue(
    String ofCase,
    String quantity,
    double value,
    double tolerance,
    Tolerance kind,
    double precision,
    String source) {
  /** What a tolerance stands for. */
  public enum Tolerance {
    /** Rounding of the published digits: chance comes on top of it. */
    ROUNDING {
      @Override
      double allowed(double tolerance, double error) {
        return tolerance + SIGMAS * error;
      }
    },
    /** Standard error of the published value: chance in both. */
    ERROR {
      @Override
      double allowed(double tolerance, double error) {
        return SIGMAS * Math.hypot(tolerance, error);
      }
    },
    /** Scatter of several published results: a figure within it agrees. */
    SPREAD {
      @Override
      double allowed(double tolerance, double error) {
        return Math.max(tolerance, SIGMAS * error);
      }
    };

    private static final double SIGMAS = 3;

    abstract double allowed(double tolerance, double error);
  }

  public PublishedValue {
    Objects.requireNonNull(ofCase, "ofCase");
    Objects.requireNonNull(quantity, "quantity");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(source, "source");
    if (!Double.isFinite(value) || !(tolerance > 0) || !(precision > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "%s, %s: a published value must be finite, its tolerance and precision above 0; got"
                  + " %s, %s and %s",
              ofCase,
              quantity,
              value,
              tolerance,
              precision));
    }
  }

  /** How far a figure of some standard error may be from the value. */
  double allowed(double error) {
    return kind.allowed(tolerance, error);
  }
}
