package parfield.lamp;

import java.util.Locale;

/**
 * A distribution with every intensity multiplied by one factor.
 *
 * @param base the distribution that is scaled
 * @param factor the factor, 0 or more
 */
public record ScaledIntensity(IntensityDistribution base, double factor)
    implements IntensityDistribution {
  public ScaledIntensity {
    if (!(factor >= 0) || Double.isInfinite(factor)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "an intensity factor must be 0 or more; got %s", factor));
    }
  }

  @Override
  public double intensity(double gamma, double azimuth) {
    return factor * base.intensity(gamma, azimuth);
  }

  @Override
  public double[] around(double gamma, double[] azimuths) {
    double[] intensities = base.around(gamma, azimuths);
    for (int i = 0; i < intensities.length; i++) {
      intensities[i] *= factor;
    }
    return intensities;
  }

  @Override
  public boolean axiallySymmetric() {
    return base.axiallySymmetric();
  }

  @Override
  public boolean quadrantSymmetric() {
    return base.quadrantSymmetric();
  }
}
