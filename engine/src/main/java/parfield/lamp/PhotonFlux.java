package parfield.lamp;

/** Photon flux of a distribution: its integral over all directions. */
public final class PhotonFlux {
  private static final int GAMMA_STEPS = 360;
  private static final int AZIMUTH_STEPS = 72;

  private PhotonFlux() {}

  /**
   * ∫ I sin γ dγ dC over all directions by the midpoint rule: within 0.01 % for lobes wider than 10
   * degrees.
   *
   * @return [µmol s⁻¹]
   */
  public static double of(IntensityDistribution distribution) {
    int around = distribution.axiallySymmetric() ? 1 : AZIMUTH_STEPS;
    double[] azimuths = new double[around];
    for (int j = 0; j < around; j++) {
      azimuths[j] = 2 * Math.PI * (j + 0.5) / around;
    }
    double sum = 0;
    for (int i = 0; i < GAMMA_STEPS; i++) {
      double gamma = Math.PI * (i + 0.5) / GAMMA_STEPS;
      double ring = 0;
      for (double intensity : distribution.around(gamma, azimuths)) {
        ring += intensity;
      }
      sum += ring * Math.sin(gamma);
    }
    return sum * (Math.PI / GAMMA_STEPS) * (2 * Math.PI / around);
  }
}
