package parfield.spectrum;

import java.util.Locale;

/**
 * Values per nanometre at wavelengths, joined by straight lines, zero outside: what a photon
 * spectrum and a radiant spectrum have in common.
 *
 * <p>Immutable; the array is owned.
 */
final class Samples {
  private final Wavelengths wavelengths;
  private final double[] values;

  /** Takes over {@code values}; their number and finiteness are the caller's to ensure. */
  Samples(Wavelengths wavelengths, double[] values) {
    this.wavelengths = wavelengths;
    this.values = values;
  }

  /**
   * Checks and copies samples.
   *
   * @param what the word for a value, in messages
   * @throws IllegalArgumentException if the lengths differ, a value is not finite, or the sum over
   *     all wavelengths is not above zero
   */
  static Samples checked(Wavelengths wavelengths, double[] values, String what, String sum) {
    if (wavelengths.size() != values.length) {
      throw tooFew(wavelengths.size(), values.length, what);
    }
    for (int i = 0; i < values.length; i++) {
      if (!Double.isFinite(values[i])) {
        throw notFinite(i, values[i], wavelengths.nm(i));
      }
    }
    Samples samples = new Samples(wavelengths, values.clone());
    double total = samples.integral(wavelengths.first(), wavelengths.last());
    if (!(total > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a spectrum must hold %s; this one sums to %s over %s to %s nm",
              sum,
              total,
              wavelengths.first(),
              wavelengths.last()));
    }
    return samples;
  }

  /** Checks and copies bare arrays. */
  static Samples checked(double[] wavelengthsNm, double[] values, String what, String sum) {
    if (wavelengthsNm.length != values.length || values.length < 2) {
      throw tooFew(wavelengthsNm.length, values.length, what);
    }
    for (int i = 0; i < values.length; i++) {
      if (!Double.isFinite(wavelengthsNm[i]) || !Double.isFinite(values[i])) {
        throw notFinite(i, values[i], wavelengthsNm[i]);
      }
    }
    return checked(Wavelengths.of(wavelengthsNm), values, what, sum);
  }

  private static IllegalArgumentException tooFew(int wavelengths, int values, String what) {
    return new IllegalArgumentException(
        String.format(
            Locale.ROOT,
            "a spectrum needs two or more pairs of wavelength and %s; got %d wavelengths and %d"
                + " values",
            what,
            wavelengths,
            values));
  }

  private static IllegalArgumentException notFinite(int i, double value, double nm) {
    return new IllegalArgumentException(
        String.format(
            Locale.ROOT,
            "sample %d of a spectrum must be finite; got %s at %s nm",
            i + 1,
            value,
            nm));
  }

  Wavelengths wavelengths() {
    return wavelengths;
  }

  double value(int i) {
    return values[i];
  }

  double[] toArray() {
    return values.clone();
  }

  double at(double wavelengthNm) {
    if (!(wavelengthNm >= wavelengths.first() && wavelengthNm <= wavelengths.last())) {
      return 0;
    }
    int found = wavelengths.find(wavelengthNm);
    if (found >= 0) {
      return values[found];
    }
    return onLine(-found - 1, wavelengthNm);
  }

  /** The value on the line that ends at sample {@code above}. */
  private double onLine(int above, double wavelengthNm) {
    double from = wavelengths.nm(above - 1);
    double share = (wavelengthNm - from) / (wavelengths.nm(above) - from);
    return values[above - 1] * (1 - share) + values[above] * share;
  }

  /** Exact integral of the straight lines between two wavelengths. */
  double integral(double fromNm, double toNm) {
    double sum = 0;
    int found = wavelengths.find(fromNm);
    int first = Math.max(1, found >= 0 ? found + 1 : -found - 1);
    for (int i = first; i < values.length && wavelengths.nm(i - 1) < toNm; i++) {
      double a = Math.max(fromNm, wavelengths.nm(i - 1));
      double b = Math.min(toNm, wavelengths.nm(i));
      if (b > a) {
        double atA = a == wavelengths.nm(i - 1) ? values[i - 1] : onLine(i, a);
        double atB = b == wavelengths.nm(i) ? values[i] : onLine(i, b);
        sum += (b - a) * (atA + atB) / 2;
      }
    }
    return sum;
  }

  /** Sum of all values, each times its weight. */
  double dot(double[] weights) {
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      sum += weights[i] * values[i];
    }
    return sum;
  }

  /** All values multiplied with a factor above 0. */
  Samples times(double factor) {
    if (!(factor > 0 && factor < Double.POSITIVE_INFINITY)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a spectrum can only be scaled by a number above 0; got %s", factor));
    }
    double[] scaled = new double[values.length];
    for (int i = 0; i < scaled.length; i++) {
      scaled[i] = factor * values[i];
    }
    return new Samples(wavelengths, scaled);
  }

  /** The same lines with more samples, so that no step is wider than {@code widestNm}. */
  Samples divided(double widestNm, double finestNm) {
    Wavelengths divided = wavelengths.divided(widestNm, finestNm);
    return divided.equals(wavelengths) ? this : new Samples(divided, valuesAt(divided));
  }

  private double[] valuesAt(Wavelengths places) {
    double[] there = new double[places.size()];
    for (int i = 0; i < there.length; i++) {
      there[i] = at(places.nm(i));
    }
    return there;
  }

  /**
   * These samples on other wavelengths, the integral over each new step kept: the trapezoidal sum
   * of the new samples is the old integral over the new range.
   *
   * <p>A new step that lies on one old line takes that line's ends, so that finer wavelengths that
   * hold the old ones reproduce the lines. Any other step shares what it holds between its two
   * ends, in proportion to nearness, which also keeps the mean wavelength.
   */
  Samples onto(Wavelengths target) {
    if (target.equals(wavelengths)) {
      return this;
    }
    double[] sums = new double[target.size()];
    int next = 0;
    for (int i = 1; i < target.size(); i++) {
      double a = target.nm(i - 1);
      double b = target.nm(i);
      while (next < values.length && wavelengths.nm(next) <= a) {
        next++;
      }
      if (next > 0 && next < values.length && wavelengths.nm(next) >= b) {
        sums[i - 1] += (b - a) / 2 * onLine(next, a);
        sums[i] += (b - a) / 2 * onLine(next, b);
      } else {
        share(next, a, b, i, sums);
      }
    }
    for (int i = 0; i < sums.length; i++) {
      sums[i] /= target.width(i);
    }
    return new Samples(target, sums);
  }

  /**
   * Shares what lies between two new wavelengths between them; {@code above} ends the first line.
   */
  private void share(int above, double a, double b, int i, double[] sums) {
    double from = a;
    for (int next = above; from < b && next < values.length; next++) {
      double to = Math.min(b, wavelengths.nm(next));
      if (next > 0) {
        double atFrom = onLine(next, from);
        double atTo = onLine(next, to);
        double whole = (to - from) * (atFrom + atTo) / 2;
        // The mean of a product of two straight lines.
        double upper =
            (to - from)
                * (2 * atFrom * (from - a)
                    + atFrom * (to - a)
                    + atTo * (from - a)
                    + 2 * atTo * (to - a))
                / (6 * (b - a));
        sums[i] += upper;
        sums[i - 1] += whole - upper;
      }
      from = to;
    }
  }
}
