package parfield.field;

import java.util.Arrays;
import parfield.lamp.IntensityDistribution;

/**
 * An intensity distribution tabulated for speed: even steps in γ and in a pseudo-azimuth that needs
 * no trigonometry.
 *
 * <p>The pseudo-azimuth of (dx, dy) runs 0…4 along the diamond |dx| + |dy| = 1. A distribution with
 * quadrant symmetry is kept for one quadrant, one with axial symmetry for one azimuth.
 */
final class IntensityTable {
  /** Steps from γ = 0 to 180°: fine where there is one azimuth only, and the table is short. */
  private static final int AXIAL_STEPS = 1024;

  private static final int GAMMA_STEPS = 512;
  private static final int QUADRANT_STEPS = 48;

  /**
   * Intensities [row in γ][azimuth] in one array, up to the first row from which on all is dark.
   */
  private final double[] values;

  private final double stepsPerRadian;
  private final int darkFrom;
  private final int azimuths;
  private final boolean quadrant;

  private IntensityTable(double[] values, double stepsPerRadian, int azimuths, boolean quadrant) {
    this.values = values;
    this.stepsPerRadian = stepsPerRadian;
    this.darkFrom = values.length / azimuths - 1;
    this.azimuths = azimuths;
    this.quadrant = quadrant;
  }

  static IntensityTable of(IntensityDistribution distribution) {
    boolean axial = distribution.axiallySymmetric();
    boolean quadrant = distribution.quadrantSymmetric();
    int quadrants = quadrant ? 1 : 4;
    int azimuths = axial ? 1 : quadrants * QUADRANT_STEPS + 1;
    double[] angles = new double[azimuths];
    for (int j = 0; j < azimuths; j++) {
      double along = (double) j / QUADRANT_STEPS;
      int turn = Math.min((int) along, quadrants - 1);
      double t = along - turn;
      angles[j] = turn * Math.PI / 2 + Math.atan2(t, 1 - t);
    }
    int steps = axial ? AXIAL_STEPS : GAMMA_STEPS;
    double stepsPerRadian = steps / Math.PI;
    double[] values = new double[(steps + 2) * azimuths];
    int lit = 0;
    for (int i = 0; i <= steps; i++) {
      double[] row = distribution.around(i / stepsPerRadian, angles);
      System.arraycopy(row, 0, values, i * azimuths, azimuths);
      if (Arrays.stream(row).anyMatch(intensity -> intensity > 0)) {
        lit = i + 1;
      }
    }
    return new IntensityTable(
        Arrays.copyOf(values, (lit + 1) * azimuths), stepsPerRadian, azimuths, quadrant);
  }

  /** Returns whether the intensity does not depend on azimuth. */
  boolean axial() {
    return azimuths == 1;
  }

  /** Intensity in the direction (γ, azimuth of (dx, dy)) [µmol s⁻¹ sr⁻¹]. */
  double at(double gamma, double dx, double dy) {
    double row = gamma * stepsPerRadian;
    int i = (int) row;
    if (i >= darkFrom) {
      return 0;
    }
    double f = row - i;
    int base = i * azimuths;
    if (azimuths == 1) {
      return values[base] + f * (values[base + 1] - values[base]);
    }
    double column = pseudoAzimuth(dx, dy) * QUADRANT_STEPS;
    int j = Math.min((int) column, azimuths - 2);
    double g = column - j;
    double low = values[base + j] + g * (values[base + j + 1] - values[base + j]);
    base += azimuths;
    double high = values[base + j] + g * (values[base + j + 1] - values[base + j]);
    return low + f * (high - low);
  }

  private double pseudoAzimuth(double dx, double dy) {
    double ax = Math.abs(dx);
    double ay = Math.abs(dy);
    double sum = ax + ay;
    if (sum == 0) {
      return 0;
    }
    double t = ay / sum;
    if (quadrant) {
      return t;
    }
    if (dx >= 0) {
      return dy >= 0 ? t : 4 - t;
    }
    return dy >= 0 ? 2 - t : 2 + t;
  }
}
