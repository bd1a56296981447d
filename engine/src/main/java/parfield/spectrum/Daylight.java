package parfield.spectrum;

import java.util.List;

/**
 * Daylight of a correlated colour temperature, CIE D series (CIE 15), 300–830 nm.
 *
 * <p>S(λ) = S₀ + M₁ S₁ + M₂ S₂.
 */
final class Daylight {
  /** S₀, S₁ and S₂. */
  static final List<SpectralWeight> COMPONENTS =
      PublishedTable.read("daylight_components_10nm.csv", SpectralWeight.Between.LINES).columns();

  private Daylight() {}

  /**
   * The shares of the three components.
   *
   * @param kelvin correlated colour temperature [K], 4000 to 25 000
   * @return 1, M₁ and M₂
   */
  static double[] shares(double kelvin) {
    double t = 1000 / kelvin;
    double x =
        kelvin <= 7000
            ? 0.244063 + t * (0.09911 + t * (2.9678 - 4.6070 * t))
            : 0.237040 + t * (0.24748 + t * (1.9018 - 2.0064 * t));
    double y = -3 * x * x + 2.87 * x - 0.275;
    double m = 0.0241 + 0.2562 * x - 0.7341 * y;
    return new double[] {
      1, (-1.3515 - 1.7703 * x + 5.9114 * y) / m, (0.0300 - 31.4424 * x + 30.0717 * y) / m
    };
  }
}
