package parfield.lamp;

import java.util.Arrays;
import java.util.Locale;

/**
 * A distribution given by a table of two aiming angles, as goniometers of types A and B turn a lamp
 * (ANSI/IES LM-63), bilinear between its nodes and dark beyond them. Immutable.
 *
 * <p>The lamp hangs with its axis, where both angles are 0, straight down, its right hand toward +x
 * (C = 0) and its head toward +y (C = 90°). Turns go about an axis of the lamp, from −180 to 180°;
 * elevations run from −90 to 90° toward that axis.
 */
public final class AimedIntensity implements IntensityDistribution {
  /** The axis of the lamp that its turns go about. */
  public enum Axis {
    /** From foot to head: type A. Turns go to the right, elevations toward the head. */
    UPRIGHT,
    /** From left to right: type B. Turns go toward the head, elevations to the right. */
    LEVEL
  }

  private final Axis axis;
  private final double[] turns;
  private final double[] elevations;
  private final double[][] intensities;

  /**
   * Makes a distribution from a table.
   *
   * @param axis what turns go about
   * @param turns turns [rad], strictly ascending, two or more within −π to π; copied
   * @param elevations elevations [rad], strictly ascending, two or more within −π/2 to π/2; copied
   * @param intensities [turn][elevation], each finite and 0 or more [µmol s⁻¹ sr⁻¹]; copied
   * @throws IllegalArgumentException if one of these rules is broken; the message names the value
   */
  public AimedIntensity(Axis axis, double[] turns, double[] elevations, double[][] intensities) {
    this.axis = axis;
    this.turns = checked("turns", turns, Math.PI);
    this.elevations = checked("elevations", elevations, Math.PI / 2);
    if (intensities.length != turns.length) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "an aimed table needs one row a turn; got %d rows for %d",
              intensities.length,
              turns.length));
    }
    this.intensities = new double[turns.length][];
    for (int i = 0; i < turns.length; i++) {
      this.intensities[i] = intensities[i].clone();
      if (intensities[i].length != elevations.length
          || !Arrays.stream(intensities[i]).allMatch(it -> it >= 0 && Double.isFinite(it))) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "an aimed table needs one finite intensity of 0 or more an elevation; row %d has"
                    + " others",
                i));
      }
    }
  }

  private static double[] checked(String what, double[] angles, double most) {
    boolean sound = angles.length >= 2;
    for (int i = 0; i < angles.length; i++) {
      sound &= Math.abs(angles[i]) <= most + 1e-9 && (i == 0 || angles[i] > angles[i - 1]);
    }
    if (!sound) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "%s must be two or more that ascend within %s degrees of 0; got %d",
              what,
              Math.toDegrees(most),
              angles.length));
    }
    return angles.clone();
  }

  @Override
  public double intensity(double gamma, double azimuth) {
    double forward = Math.cos(gamma);
    double right = Math.sin(gamma) * Math.cos(azimuth);
    double head = Math.sin(gamma) * Math.sin(azimuth);
    boolean upright = axis == Axis.UPRIGHT;
    double turn = Math.atan2(upright ? right : head, forward);
    double elevation = Math.asin(Math.max(-1, Math.min(1, upright ? head : right)));
    int i = segment(turns, turn);
    int j = segment(elevations, elevation);
    if (i < 0 || j < 0) {
      return 0;
    }
    double s = share(turns, i, turn);
    double t = share(elevations, j, elevation);
    return (1 - s) * ((1 - t) * intensities[i][j] + t * intensities[i][j + 1])
        + s * ((1 - t) * intensities[i + 1][j] + t * intensities[i + 1][j + 1]);
  }

  /** How far rounding may carry a direction beyond the table's edge [rad]. */
  private static final double EDGE = 1e-9;

  private static int segment(double[] nodes, double value) {
    int last = nodes.length - 1;
    if (value < nodes[0] - EDGE || value > nodes[last] + EDGE) {
      return -1;
    }
    int found = Arrays.binarySearch(nodes, value);
    return Math.min(Math.max(found >= 0 ? found : -found - 2, 0), last - 1);
  }

  private static double share(double[] nodes, int i, double value) {
    return Math.max(0, Math.min(1, (value - nodes[i]) / (nodes[i + 1] - nodes[i])));
  }
}
