package parfield.photon;

/**
 * Meters in planes without end: irradiances both ways, and the light near the vertical.
 *
 * <p>Slots, each for all planes one after another: E_d, E_u, E_od, E_ou, then the flux within a
 * polar cap about straight down. Single-threaded.
 */
final class PlaneMeters implements Detector {
  /** Cosine at the edge of a polar cap. */
  static final double CAP = 0.99;

  static final int KINDS = 5;

  /**
   * Light that runs nearer along the plane than this cosine counts as if it were equally bright at
   * all such angles: its mean of 1/μ is then 2 over the cosine, where single values have no bound.
   */
  private static final double GRAZING = 0.02;

  private final double[] depths;

  /** A path that ends at a plane may miss it by this much [m]. */
  private static final double ROUNDING = 1e-12;

  private final double[] flux = new double[1];

  PlaneMeters(double[] depths) {
    this.depths = depths;
  }

  @Override
  public int slots() {
    return KINDS * depths.length;
  }

  @Override
  public void pass(Packet packet, double length, double[] totals) {
    if (packet.dz == 0) {
      return;
    }
    boolean down = packet.dz > 0;
    double end = packet.z + length * packet.dz;
    int n = depths.length;
    for (int i = 0; i < n; i++) {
      double depth = depths[i];
      if (down
          ? depth < packet.z || depth > end + ROUNDING
          : depth > packet.z || depth < end - ROUNDING) {
        continue;
      }
      packet.fluxes((depth - packet.z) / packet.dz, flux);
      double cosine = Math.abs(packet.dz);
      totals[(down ? 0 : n) + i] += flux[0];
      totals[(down ? 2 * n : 3 * n) + i] += flux[0] / (cosine > GRAZING ? cosine : GRAZING / 2);
      if (down && cosine > CAP) {
        // The mean radiance of a cap is its flux over ∫ μ dω = π (1 − CAP²).
        totals[4 * n + i] += flux[0];
      }
    }
  }
}
