package parfield.plot;

import java.util.Locale;
import java.util.Objects;

/**
 * A spectrum as it is drawn: straight lines between samples. Immutable.
 *
 * <p>A class, not a record, since it holds arrays.
 */
public final class SpectrumLine {
  private final String name;
  private final double[] nm;
  private final double[] values;

  /**
   * Makes a line.
   *
   * @param name written in the key, not blank
   * @param nm wavelengths [nm], ascending, two or more, copied
   * @param values per nm, finite, as many, copied
   */
  public SpectrumLine(String name, double[] nm, double[] values) {
    this.name = Objects.requireNonNull(name, "name");
    this.nm = nm.clone();
    this.values = values.clone();
    if (name.isBlank() || nm.length < 2 || nm.length != values.length) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a drawn spectrum needs a name and two or more samples; got \"%s\" with %d wavelengths"
                  + " and %d values",
              name,
              nm.length,
              values.length));
    }
    for (int i = 0; i < nm.length; i++) {
      if (!Double.isFinite(values[i])
          || !Double.isFinite(nm[i])
          || (i > 0 && !(nm[i] > nm[i - 1]))) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "sample %d of %s must be finite and run upward; got %s at %s nm",
                i + 1,
                name,
                values[i],
                nm[i]));
      }
    }
  }

  /** Written in the key. */
  public String name() {
    return name;
  }

  int size() {
    return nm.length;
  }

  double nm(int i) {
    return nm[i];
  }

  double value(int i) {
    return values[i];
  }

  /** The value at a wavelength, 0 outside the samples. */
  double at(double wavelength) {
    if (!(wavelength >= nm[0] && wavelength <= nm[nm.length - 1])) {
      return 0;
    }
    int found = java.util.Arrays.binarySearch(nm, wavelength);
    if (found >= 0) {
      return values[found];
    }
    int above = -found - 1;
    double share = (wavelength - nm[above - 1]) / (nm[above] - nm[above - 1]);
    return values[above - 1] * (1 - share) + values[above] * share;
  }

  /** The line on a plane, without points that lie within a third of a pixel of the rest. */
  Line on(Curves.Axes axes) {
    double[] x = new double[nm.length];
    double[] y = new double[nm.length];
    for (int i = 0; i < nm.length; i++) {
      x[i] = axes.x(nm[i]);
      y[i] = axes.y(values[i]);
    }
    return new Line(x, y).within(1 / 3.0);
  }
}
