package parfield.spectrum;

import java.util.Arrays;
import java.util.Locale;

/**
 * The wavelengths at which a spectrum is sampled [nm], strictly ascending.
 *
 * <p>Immutable; equal where the wavelengths are equal. Spectra of one instrument share one object.
 */
public final class Wavelengths {
  private final double[] nm;

  private Wavelengths(double[] nm) {
    this.nm = nm;
  }

  /**
   * The wavelengths given.
   *
   * @param nm wavelengths [nm], finite, strictly ascending, at least two, copied
   * @throws IllegalArgumentException if they are fewer than two, not finite or not ascending; the
   *     message names the sample and its value
   */
  public static Wavelengths of(double... nm) {
    if (nm.length < 2) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a spectrum needs two or more wavelengths; got %d", nm.length));
    }
    for (int i = 0; i < nm.length; i++) {
      if (!Double.isFinite(nm[i])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT, "wavelengths must be finite; sample %d is %s nm", i + 1, nm[i]));
      }
      if (i > 0 && !(nm[i] > nm[i - 1])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "wavelengths must ascend; sample %d is %s nm after %s nm",
                i + 1,
                nm[i],
                nm[i - 1]));
      }
    }
    return new Wavelengths(nm.clone());
  }

  /**
   * Wavelengths in even steps.
   *
   * @param fromNm the first [nm]
   * @param toNm the last [nm], above {@code fromNm}
   * @param stepNm the step [nm], above 0; the range must hold a whole number of steps within a
   *     thousandth of a step
   * @throws IllegalArgumentException if the range holds no whole number of steps
   */
  public static Wavelengths even(double fromNm, double toNm, double stepNm) {
    double steps = (toNm - fromNm) / stepNm;
    long count = Math.round(steps);
    if (!(stepNm > 0) || !(count >= 1) || !(Math.abs(steps - count) <= 1e-3)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "%s to %s nm must be one or more whole steps of %s nm",
              fromNm,
              toNm,
              stepNm));
    }
    double[] nm = new double[Math.toIntExact(count) + 1];
    for (int i = 0; i < nm.length; i++) {
      nm[i] = fromNm + (toNm - fromNm) * i / count;
    }
    return of(nm);
  }

  /** Returns the number of samples. */
  public int size() {
    return nm.length;
  }

  /** Returns the wavelength of sample {@code i} [nm]. */
  public double nm(int i) {
    return nm[i];
  }

  /** Returns the shortest wavelength [nm]. */
  public double first() {
    return nm[0];
  }

  /** Returns the longest wavelength [nm]. */
  public double last() {
    return nm[nm.length - 1];
  }

  /** Returns the wavelengths as a new array [nm]. */
  public double[] toArray() {
    return nm.clone();
  }

  /**
   * The width that sample {@code i} stands for in an integral by the trapezoidal rule [nm]: half
   * the step below it and half the step above.
   */
  public double width(int i) {
    double below = i > 0 ? nm[i] - nm[i - 1] : 0;
    double above = i < nm.length - 1 ? nm[i + 1] - nm[i] : 0;
    return (below + above) / 2;
  }

  /**
   * What each sample counts for in the exact integral, between two wavelengths, of the straight
   * lines through the samples.
   */
  double[] integral(double fromNm, double toNm) {
    double[] weights = new double[nm.length];
    for (int i = 1; i < nm.length; i++) {
      double a = Math.max(fromNm, nm[i - 1]);
      double b = Math.min(toNm, nm[i]);
      if (b > a) {
        // The middle of the piece tells how its width is shared between the two ends.
        double share = ((a + b) / 2 - nm[i - 1]) / (nm[i] - nm[i - 1]);
        weights[i - 1] += (b - a) * (1 - share);
        weights[i] += (b - a) * share;
      }
    }
    return weights;
  }

  /** Returns the widest step between two samples [nm]. */
  public double widestStep() {
    double widest = 0;
    for (int i = 1; i < nm.length; i++) {
      widest = Math.max(widest, nm[i] - nm[i - 1]);
    }
    return widest;
  }

  /**
   * These wavelengths, with every step wider than {@code widestNm} divided evenly into steps of at
   * most {@code finestNm}; the same object if no step is wider.
   */
  Wavelengths divided(double widestNm, double finestNm) {
    if (!(widestStep() > widestNm)) {
      return this;
    }
    double[] divided = new double[16];
    int n = 0;
    for (int i = 0; i < nm.length; i++) {
      double step = i == 0 ? 0 : nm[i] - nm[i - 1];
      int parts = step > widestNm ? (int) Math.ceil(step / finestNm) : 1;
      for (int k = 1; k <= parts; k++) {
        if (n == divided.length) {
          divided = Arrays.copyOf(divided, 2 * n);
        }
        divided[n++] = k == parts ? nm[i] : nm[i - 1] + step * k / parts;
      }
    }
    return new Wavelengths(Arrays.copyOf(divided, n));
  }

  /** Where a wavelength lies: as {@link Arrays#binarySearch(double[], double)} has it. */
  int find(double wavelengthNm) {
    return Arrays.binarySearch(nm, wavelengthNm);
  }

  @Override
  public boolean equals(Object other) {
    return this == other || (other instanceof Wavelengths w && Arrays.equals(nm, w.nm));
  }

  @Override
  public int hashCode() {
    return Arrays.hashCode(nm);
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT, "%d wavelengths from %s to %s nm", nm.length, first(), last());
  }
}
