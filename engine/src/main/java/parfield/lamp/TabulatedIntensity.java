package parfield.lamp;

import java.util.Arrays;
import java.util.Locale;

/**
 * A distribution given by a table in polar angle γ and azimuth C, bilinear between its nodes and
 * zero beyond its last γ. Immutable.
 *
 * <p>The azimuths say the symmetry: one plane at 0 alone means the same at every azimuth; planes
 * from 0 to a quarter turn mean the same in each quadrant; from 0 to half a turn the same at C and
 * −C; from 0 to a full turn none, and the last plane repeats the first.
 */
public final class TabulatedIntensity implements IntensityDistribution {
  /** How far an angle may miss an exact quarter, half or full turn [rad]. */
  private static final double ANGLE_TOLERANCE = 1e-9;

  private final double[] gammas;
  private final double[] azimuths;
  private final double[][] intensities;

  /**
   * Makes a distribution from a table.
   *
   * @param gammas polar angles from straight down [rad], strictly ascending from 0, at most π, two
   *     or more; copied
   * @param azimuths azimuths C [rad], strictly ascending from 0; 0 alone, or up to π/2, π or 2π;
   *     copied
   * @param intensities [γ][C], each finite and 0 or more [µmol s⁻¹ sr⁻¹]; copied
   * @throws IllegalArgumentException if one of these rules is broken; the message names the value
   */
  public TabulatedIntensity(double[] gammas, double[] azimuths, double[][] intensities) {
    this.gammas = gammas.clone();
    this.azimuths = azimuths.clone();
    this.intensities = new double[intensities.length][];
    for (int i = 0; i < intensities.length; i++) {
      this.intensities[i] = intensities[i].clone();
    }
    checkAngles();
    checkIntensities();
  }

  private void checkAngles() {
    if (gammas.length < 2 || azimuths.length < 1) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "an intensity table needs two polar angles and one azimuth; got %d and %d",
              gammas.length,
              azimuths.length));
    }
    checkAscending("polar angles", gammas, Math.PI);
    checkAscending("azimuths", azimuths, 2 * Math.PI);
    double last = azimuths[azimuths.length - 1];
    if (!isTurn(last, 0) && !isTurn(last, 0.25) && !isTurn(last, 0.5) && !isTurn(last, 1)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "azimuths must be 0 alone or run from 0 to 90, 180 or 360 degrees; got %s at the end",
              Math.toDegrees(last)));
    }
  }

  private static boolean isTurn(double angle, double turns) {
    return Math.abs(angle - turns * 2 * Math.PI) <= ANGLE_TOLERANCE;
  }

  private static void checkAscending(String what, double[] angles, double most) {
    if (angles[0] != 0) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "%s must begin at 0 degrees; got %s", what, Math.toDegrees(angles[0])));
    }
    for (int i = 1; i < angles.length; i++) {
      if (!(angles[i] > angles[i - 1]) || !(angles[i] <= most + ANGLE_TOLERANCE)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "%s must ascend to %s degrees at most; got %s after %s",
                what,
                Math.toDegrees(most),
                Math.toDegrees(angles[i]),
                Math.toDegrees(angles[i - 1])));
      }
    }
  }

  private void checkIntensities() {
    if (intensities.length != gammas.length) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "an intensity table needs one row a polar angle; got %d rows for %d",
              intensities.length,
              gammas.length));
    }
    int columns = azimuths.length;
    for (int i = 0; i < gammas.length; i++) {
      double degrees = Math.toDegrees(gammas[i]);
      if (intensities[i].length != columns) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "an intensity table needs one value an azimuth; got %d for %d at %s degrees",
                intensities[i].length,
                columns,
                degrees));
      }
      for (double intensity : intensities[i]) {
        if (!(intensity >= 0) || Double.isInfinite(intensity)) {
          throw new IllegalArgumentException(
              String.format(
                  Locale.ROOT,
                  "an intensity must be 0 or more; got %s at %s degrees",
                  intensity,
                  degrees));
        }
      }
      if (isTurn(azimuths[columns - 1], 1) && intensities[i][columns - 1] != intensities[i][0]) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "azimuth 360 must repeat azimuth 0; got %s and %s at %s degrees",
                intensities[i][columns - 1],
                intensities[i][0],
                degrees));
      }
    }
  }

  /** Returns a copy of the polar angles [rad]. */
  public double[] gammas() {
    return gammas.clone();
  }

  /** Returns a copy of the azimuths [rad]. */
  public double[] azimuths() {
    return azimuths.clone();
  }

  /** Returns a copy of the intensities [γ][C] [µmol s⁻¹ sr⁻¹]. */
  public double[][] intensities() {
    double[][] copy = new double[intensities.length][];
    for (int i = 0; i < copy.length; i++) {
      copy[i] = intensities[i].clone();
    }
    return copy;
  }

  @Override
  public double intensity(double gamma, double azimuth) {
    int last = gammas.length - 1;
    if (!(gamma <= gammas[last])) {
      return 0;
    }
    int row = segment(gammas, Math.max(0, gamma));
    double share = (Math.max(0, gamma) - gammas[row]) / (gammas[row + 1] - gammas[row]);
    if (azimuths.length == 1) {
      return intensities[row][0] * (1 - share) + intensities[row + 1][0] * share;
    }
    double folded = Math.min(fold(azimuth), azimuths[azimuths.length - 1]);
    int column = segment(azimuths, folded);
    double along = (folded - azimuths[column]) / (azimuths[column + 1] - azimuths[column]);
    double above = between(intensities[row], column, along);
    double below = between(intensities[row + 1], column, along);
    return above * (1 - share) + below * share;
  }

  private static double between(double[] values, int column, double along) {
    return values[column] * (1 - along) + values[column + 1] * along;
  }

  /** The azimuth within the table that stands for any azimuth. */
  private double fold(double azimuth) {
    double turn = 2 * Math.PI;
    double folded = azimuth - turn * Math.floor(azimuth / turn);
    double last = azimuths[azimuths.length - 1];
    if (isTurn(last, 1)) {
      return folded;
    }
    double half = Math.min(folded, turn - folded);
    return isTurn(last, 0.5) ? half : Math.min(half, Math.PI - half);
  }

  /** Index of the lower node of the segment that holds a value, the last one at the end. */
  private static int segment(double[] nodes, double value) {
    int found = Arrays.binarySearch(nodes, value);
    int lower = found >= 0 ? found : -found - 2;
    return Math.min(Math.max(lower, 0), nodes.length - 2);
  }

  @Override
  public boolean axiallySymmetric() {
    return azimuths.length == 1;
  }

  @Override
  public boolean quadrantSymmetric() {
    return axiallySymmetric() || isTurn(azimuths[azimuths.length - 1], 0.25);
  }
}
