package parfield.optics;

import java.util.Arrays;
import java.util.Locale;

/**
 * Diffuse reflectance of a surface by wavelength: one value for all, or a table, linear between its
 * samples and held beyond its ends. Immutable; equal content is equal.
 */
public final class Reflectance {
  private final double[] wavelengthsNm;
  private final double[] values;

  private Reflectance(double[] wavelengthsNm, double[] values) {
    this.wavelengthsNm = wavelengthsNm;
    this.values = values;
  }

  /**
   * The same reflectance at every wavelength.
   *
   * @param value 0 to below 1
   * @throws IllegalArgumentException if the value lies outside; the message names it
   */
  public static Reflectance gray(double value) {
    requireReflectance(value, "");
    return new Reflectance(new double[] {0}, new double[] {value});
  }

  /**
   * A table by wavelength.
   *
   * @param wavelengthsNm wavelengths [nm], above 0, strictly ascending, at least one, copied
   * @param values reflectance at each, 0 to below 1, copied
   * @throws IllegalArgumentException if the lengths differ or a value lies outside; the message
   *     names it
   */
  public static Reflectance tabulated(double[] wavelengthsNm, double[] values) {
    if (wavelengthsNm.length != values.length || values.length == 0) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a reflectance needs one or more pairs of wavelength and value; got %d wavelengths"
                  + " and %d values",
              wavelengthsNm.length,
              values.length));
    }
    double before = 0;
    for (int i = 0; i < values.length; i++) {
      if (!(wavelengthsNm[i] > before) || Double.isInfinite(wavelengthsNm[i])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "wavelengths of a reflectance must ascend from above 0 nm; sample %d is %s nm after"
                    + " %s nm",
                i + 1,
                wavelengthsNm[i],
                before));
      }
      requireReflectance(values[i], String.format(Locale.ROOT, " at %s nm", wavelengthsNm[i]));
      before = wavelengthsNm[i];
    }
    return new Reflectance(wavelengthsNm.clone(), values.clone());
  }

  private static void requireReflectance(double value, String where) {
    if (!(value >= 0 && value < 1)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a reflectance runs from 0 to below 1; got %s%s", value, where));
    }
  }

  /** Reflectance at a wavelength [nm]. */
  public double at(double wavelengthNm) {
    int last = values.length - 1;
    if (!(wavelengthNm > wavelengthsNm[0])) {
      return values[0];
    }
    if (wavelengthNm >= wavelengthsNm[last]) {
      return values[last];
    }
    int found = Arrays.binarySearch(wavelengthsNm, wavelengthNm);
    if (found >= 0) {
      return values[found];
    }
    int above = -found - 1;
    double share =
        (wavelengthNm - wavelengthsNm[above - 1])
            / (wavelengthsNm[above] - wavelengthsNm[above - 1]);
    return values[above - 1] + share * (values[above] - values[above - 1]);
  }

  /** Returns whether it is the same at every wavelength. */
  public boolean isGray() {
    return Arrays.stream(values).allMatch(value -> value == values[0]);
  }

  /** The least value in the table. */
  public double least() {
    return Arrays.stream(values).min().orElseThrow();
  }

  /** The greatest value in the table. */
  public double greatest() {
    return Arrays.stream(values).max().orElseThrow();
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Reflectance that
        && Arrays.equals(that.wavelengthsNm, wavelengthsNm)
        && Arrays.equals(that.values, values);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(wavelengthsNm) + Arrays.hashCode(values);
  }

  @Override
  public String toString() {
    return isGray()
        ? String.format(Locale.ROOT, "Reflectance[%s]", values[0])
        : String.format(
            Locale.ROOT, "Reflectance[%s to %s, %d samples]", least(), greatest(), values.length);
  }
}
