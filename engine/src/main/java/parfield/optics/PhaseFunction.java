package parfield.optics;

/**
 * How scattering spreads light over angles: a probability per solid angle that depends on the
 * scattering angle alone.
 *
 * <p>Normalised: 2π ∫ value(μ) dμ over μ = −1 … 1 is 1. Implementations are immutable.
 */
public interface PhaseFunction {
  /**
   * Probability per solid angle [sr⁻¹].
   *
   * @param cosine of the scattering angle, −1 to 1; 1 is straight on
   */
  double value(double cosine);

  /**
   * The cosine below which a share of all scattered light lies: the inverse of the cumulative
   * probability, so that an evenly spread share gives cosines spread as the light is.
   *
   * @param share 0 to 1
   * @return cosine of the scattering angle, −1 to 1, rising with the share
   */
  double cosineAt(double share);

  /** The same in every direction. */
  static PhaseFunction isotropic() {
    return new HenyeyGreenstein(0);
  }
}
