package parfield.lamp;

/**
 * Photon intensity of one emitter by direction.
 *
 * <p>Directions are those of the lamp's own frame: γ is the polar angle from straight down, C the
 * azimuth from the fixture's length axis (+x) toward its width axis (+y). Implementations are
 * immutable.
 */
public interface IntensityDistribution {
  /**
   * Photon intensity at full output.
   *
   * @param gamma polar angle from straight down [rad], 0 to π
   * @param azimuth azimuth C [rad], any value
   * @return photon intensity [µmol s⁻¹ sr⁻¹], 0 or more
   */
  double intensity(double gamma, double azimuth);

  /** Returns whether the intensity is the same for every azimuth. */
  default boolean axiallySymmetric() {
    return false;
  }

  /** Returns whether the intensity is the same at C, −C and 180° − C. */
  default boolean quadrantSymmetric() {
    return axiallySymmetric();
  }

  /** The same distribution with every intensity multiplied by {@code factor}, 0 or more. */
  default IntensityDistribution scaled(double factor) {
    return new ScaledIntensity(this, factor);
  }
}
