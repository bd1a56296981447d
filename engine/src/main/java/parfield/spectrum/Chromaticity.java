package parfield.spectrum;

import java.util.Locale;

/**
 * A point of the CIE 1931 chromaticity diagram.
 *
 * @param x CIE 1931 x
 * @param y CIE 1931 y, above 0
 */
public record Chromaticity(double x, double y) {
  public Chromaticity {
    if (!Double.isFinite(x) || !(y > 0) || !Double.isFinite(y)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a chromaticity needs a finite x and a y above 0; got %s, %s", x, y));
    }
  }

  /** The chromaticity of a light; see {@link StandardObserver}. */
  public static Finding<Chromaticity> of(RadiantSpectrum spectrum) {
    return StandardObserver.tristimulusOf(spectrum).chromaticity();
  }

  /** The point of CIE 1960 coordinates u, v. */
  public static Chromaticity ofUv(double u, double v) {
    double d = 2 * u - 8 * v + 4;
    return new Chromaticity(3 * u / d, 2 * v / d);
  }

  /** CIE 1960 u, the same as CIE 1976 u′. */
  public double u() {
    return 4 * x / (-2 * x + 12 * y + 3);
  }

  /** CIE 1960 v, in which colour temperature and Duv are defined. */
  public double v() {
    return 6 * y / (-2 * x + 12 * y + 3);
  }

  /** CIE 1976 v′ = 1.5 v. */
  public double vPrime() {
    return 9 * y / (-2 * x + 12 * y + 3);
  }

  /** Distance in the CIE 1976 diagram, Δu′v′: what the eye tells apart more evenly than x, y. */
  public double distance(Chromaticity other) {
    return Math.hypot(u() - other.u(), vPrime() - other.vPrime());
  }
}
