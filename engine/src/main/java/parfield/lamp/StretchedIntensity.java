package parfield.lamp;

import java.util.Locale;
import java.util.Objects;

/**
 * A distribution spread out or drawn together: I(γ, C) = gain × base(γ / stretch, C), nothing above
 * the horizontal. What other optics would do to the same light.
 *
 * @param base the distribution that is stretched
 * @param stretch above 1 is wider, below 1 narrower
 * @param gain factor on the intensity, 0 or more
 */
public record StretchedIntensity(IntensityDistribution base, double stretch, double gain)
    implements IntensityDistribution {
  private static final double HORIZON = Math.PI / 2;
  private static final int POLAR_STEPS = 180;
  private static final int AZIMUTH_STEPS = 36;

  public StretchedIntensity {
    Objects.requireNonNull(base, "base");
    if (!(stretch > 0) || Double.isInfinite(stretch) || !(gain >= 0) || Double.isInfinite(gain)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a distribution is stretched by a factor above 0 with a gain of 0 or more; got %s and"
                  + " %s",
              stretch,
              gain));
    }
  }

  /**
   * The stretched distribution that gives off as much light below the horizontal as its base does.
   *
   * @param base the distribution that is stretched
   * @param stretch above 1 is wider, below 1 narrower
   */
  public static StretchedIntensity keepingFlux(IntensityDistribution base, double stretch) {
    StretchedIntensity bare = new StretchedIntensity(base, stretch, 1);
    double flux = flux(bare);
    return new StretchedIntensity(base, stretch, flux > 0 ? flux(base) / flux : 1);
  }

  /** ∫ I sin γ dγ dC below the horizontal by the midpoint rule [µmol s⁻¹]. */
  private static double flux(IntensityDistribution intensity) {
    double step = HORIZON / POLAR_STEPS;
    double turn = 2 * Math.PI / AZIMUTH_STEPS;
    double sum = 0;
    for (int i = 0; i < POLAR_STEPS; i++) {
      double gamma = (i + 0.5) * step;
      for (int j = 0; j < AZIMUTH_STEPS; j++) {
        sum += intensity.intensity(gamma, (j + 0.5) * turn) * Math.sin(gamma) * step * turn;
      }
    }
    return sum;
  }

  @Override
  public double intensity(double gamma, double azimuth) {
    return gamma > HORIZON ? 0 : gain * base.intensity(gamma / stretch, azimuth);
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
