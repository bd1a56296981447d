package parfield.validation;

/**
 * A counted or computed figure.
 *
 * @param value in the unit of what it is held against
 * @param error its standard error, by chance alone; 0 for what was computed, undefined for what too
 *     few packets were sent for
 */
record Figure(double value, double error) {
  /** A figure without chance. */
  static Figure computed(double value) {
    return new Figure(value, 0);
  }

  /** The sum of two figures; errors added as if they were one and the same, which is too much. */
  Figure plus(Figure other) {
    return new Figure(value + other.value, error + other.error);
  }

  /** This figure in another unit. */
  Figure times(double factor) {
    return new Figure(factor * value, Math.abs(factor) * error);
  }
}
