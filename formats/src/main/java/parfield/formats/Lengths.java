package parfield.formats;

import parfield.units.LengthUnit;

/**
 * Lengths in the unit of a file, and their limits.
 *
 * @param unit of every length in the file
 */
record Lengths(LengthUnit unit) {
  /** Longer than any aquarium or room over it: a longer length is a slip of the unit [m]. */
  private static final double LONGEST = 20;

  /** Above zero. */
  Limit positive() {
    return Limit.above(0, unit.fromMetres(LONGEST), unit.symbol());
  }

  /** Zero or more. */
  Limit notNegative() {
    return between(0, unit.fromMetres(LONGEST));
  }

  /** Either side of zero. */
  Limit signed() {
    return between(-unit.fromMetres(LONGEST), unit.fromMetres(LONGEST));
  }

  /** Between two lengths in this unit. */
  Limit between(double low, double high) {
    return Limit.between(low, high, unit.symbol());
  }

  double metres(double length) {
    return unit.toMetres(length);
  }
}
