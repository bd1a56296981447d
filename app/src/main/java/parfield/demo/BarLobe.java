package parfield.demo;

import parfield.lamp.IntensityDistribution;

/**
 * The intensity of one lens of the invented bar: a narrow and a wide lobe, wider across the bar
 * than along it. Not a member of the family that a fit searches.
 *
 * @param peak intensity straight down [µmol s⁻¹ sr⁻¹]
 * @param narrow share of the peak that falls off fast
 */
record BarLobe(double peak, double narrow) implements IntensityDistribution {
  private static final double WIDE_EXPONENT = 1.7;
  private static final double NARROW_EXPONENT = 8;
  private static final double STRETCH = 0.18;

  @Override
  public double intensity(double gamma, double azimuth) {
    double cosine = Math.cos(gamma);
    if (cosine <= 0) {
      return 0;
    }
    double lobe =
        narrow * Math.pow(cosine, NARROW_EXPONENT) + (1 - narrow) * Math.pow(cosine, WIDE_EXPONENT);
    double sine = Math.sin(gamma);
    return peak * lobe * (1 - STRETCH * sine * sine * Math.cos(2 * azimuth));
  }

  @Override
  public boolean quadrantSymmetric() {
    return true;
  }
}
