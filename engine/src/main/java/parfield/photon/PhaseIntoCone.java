package parfield.photon;

import parfield.optics.PhaseFunction;

/**
 * A phase function averaged over a narrow cone about the vertical: how much of what a path scatters
 * goes nearly straight up, by the path's own direction. Bounded, where the phase function itself
 * may peak without end. Immutable.
 */
final class PhaseIntoCone {
  /** Nodes even in the sine of half the angle: dense where the cone is. */
  private static final int NODES = 512;

  private static final int SHARES = 4096;

  /** Paths farther from the vertical than this cosine see the cone as a point. */
  private static final double NEAR = 0.7;

  private final double[] table = new double[NODES + 1];

  /**
   * Averages a phase function.
   *
   * @param phase how light is scattered
   * @param coneCosine cosine of the cone's half angle
   */
  PhaseIntoCone(PhaseFunction phase, double coneCosine) {
    double[] scattered = new double[SHARES];
    for (int s = 0; s < SHARES; s++) {
      scattered[s] = phase.cosineAt((s + 0.5) / SHARES);
    }
    double solidAngle = 2 * Math.PI * (1 - coneCosine);
    for (int i = 0; i <= NODES; i++) {
      double half = (double) i / NODES;
      double towardVertical = 1 - 2 * half * half;
      if (towardVertical < NEAR) {
        table[i] = phase.value(towardVertical);
        continue;
      }
      double sum = 0;
      for (double cosine : scattered) {
        sum += turnsIntoCone(towardVertical, cosine, coneCosine);
      }
      table[i] = sum / SHARES / solidAngle;
    }
  }

  /** Share of the turns about a path for which light scattered by an angle lies in the cone. */
  private static double turnsIntoCone(double path, double scattered, double cone) {
    double sines = Math.sqrt(Math.max(0, (1 - path * path) * (1 - scattered * scattered)));
    double least = cone - path * scattered;
    if (least >= sines) {
      return 0;
    }
    return least <= -sines ? 1 : Math.acos(least / sines) / Math.PI;
  }

  /**
   * Mean probability per solid angle of being scattered into the cone [sr⁻¹].
   *
   * @param cosine between the path and the cone's axis
   */
  double value(double cosine) {
    double at = NODES * Math.sqrt(Math.max(0, (1 - cosine) / 2));
    int node = Math.min((int) at, NODES - 1);
    return table[node] + (at - node) * (table[node + 1] - table[node]);
  }
}
