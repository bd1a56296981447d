package parfield.optics;

import java.util.Locale;

/**
 * The phase function of Henyey and Greenstein (1941, Astrophys. J. 93:70): p = (1 − g²) / (4π (1 +
 * g² − 2 g μ)^1.5).
 *
 * @param asymmetry g, the mean cosine of the scattering angle, above −1 and below 1; 0 is isotropic
 */
public record HenyeyGreenstein(double asymmetry) implements PhaseFunction {
  /** Below this the series of the inverse is used: the exact form divides by g. */
  private static final double NEARLY_ISOTROPIC = 1e-6;

  public HenyeyGreenstein {
    if (!(asymmetry > -1 && asymmetry < 1)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "the asymmetry of a phase function lies between -1 and 1; got %s",
              asymmetry));
    }
  }

  @Override
  public double value(double cosine) {
    double square = 1 + asymmetry * asymmetry - 2 * asymmetry * cosine;
    return (1 - asymmetry * asymmetry) / (4 * Math.PI * square * Math.sqrt(square));
  }

  @Override
  public double cosineAt(double share) {
    double g = asymmetry;
    double even = 2 * share - 1;
    if (Math.abs(g) < NEARLY_ISOTROPIC) {
      return even;
    }
    double root = (1 - g * g) / (1 + g * even);
    return Math.max(-1, Math.min(1, (1 + g * g - root * root) / (2 * g)));
  }
}
