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

  /**
   * Photon intensities around one cone of directions: one call where many azimuths are wanted.
   *
   * @param gamma polar angle from straight down [rad], 0 to π
   * @param azimuths azimuths C [rad]
   * @return photon intensity at each [µmol s⁻¹ sr⁻¹]
   */
  default double[] around(double gamma, double[] azimuths) {
    double[] intensities = new double[azimuths.length];
    for (int i = 0; i < azimuths.length; i++) {
      intensities[i] = intensity(gamma, azimuths[i]);
    }
    return intensities;
  }

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
