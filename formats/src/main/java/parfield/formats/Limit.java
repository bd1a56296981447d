package parfield.formats;

/**
 * A range that a number must lie in, told in words.
 *
 * @param low lower end
 * @param lowIn whether the lower end itself is allowed
 * @param high upper end, infinite for none
 * @param highIn whether the upper end itself is allowed
 * @param unit after the range, empty for a pure number
 */
record Limit(double low, boolean lowIn, double high, boolean highIn, String unit) {
  static Limit between(double low, double high, String unit) {
    return new Limit(low, true, high, true, unit);
  }

  static Limit between(double low, double high) {
    return between(low, high, "");
  }

  static Limit above(double low, double high, String unit) {
    return new Limit(low, false, high, true, unit);
  }

  static Limit below(double low, double high) {
    return new Limit(low, true, high, false, "");
  }

  static Limit inside(double low, double high, String unit) {
    return new Limit(low, false, high, false, unit);
  }

  boolean contains(double value) {
    return (lowIn ? value >= low : value > low) && (highIn ? value <= high : value < high);
  }

  /** The range in words, as in {@code above 0 to 2000 cm}. */
  String text() {
    if (low == high) {
      return NumberText.shown(low);
    }
    return (lowIn ? "" : "above ")
        + NumberText.shown(low)
        + (highIn ? " to " : " to below ")
        + NumberText.shown(high)
        + (unit.isEmpty() ? "" : " " + unit);
  }
}
