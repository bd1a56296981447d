package parfield.optics;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * A phase function given by a table in the scattering angle.
 *
 * <p>Between the rows a power of the angle (a straight line in log–log, which forward peaks
 * follow); next to the angle zero or to a value of zero, a straight line in the angle. Normalised
 * on construction. Immutable; compares by identity.
 */
public final class TabulatedPhase implements PhaseFunction {
  private static final int GUIDES = 1024;

  /** Steps of the cumulative table between two rows. */
  private static final int SUBSTEPS = 32;

  /** The forward peak is carried on by its power law down to this angle [rad]. */
  private static final double PEAK = Math.toRadians(1e-4);

  private static final TabulatedPhase AVERAGE_PARTICLE = load();

  /** Angles of the fine table, ascending [rad]. */
  private final double[] angle;

  private final double[] value;

  /** Share of light scattered by less than each angle. */
  private final double[] within;

  private final double[] cosine;

  /** Where in {@link #within} to begin to look for a share, by equal steps of it. */
  private final int[] guide = new int[GUIDES];

  /**
   * Makes a phase function from a table.
   *
   * @param angles scattering angles [rad], ascending from 0 to π, two or more; copied
   * @param values relative probability per solid angle, finite, 0 or more, not all zero; copied
   * @throws IllegalArgumentException if one of these rules is broken; the message names the value
   */
  public TabulatedPhase(double[] angles, double[] values) {
    check(angles, values);
    int fine = (angles.length - 1) * SUBSTEPS + 1;
    angle = new double[fine];
    value = new double[fine];
    within = new double[fine];
    for (int i = 0; i < fine; i++) {
      int row = Math.min(i / SUBSTEPS, angles.length - 2);
      double share = (double) (i - row * SUBSTEPS) / SUBSTEPS;
      angle[i] = between(angles, row, share);
      value[i] = interpolated(angles, values, row, angle[i]);
    }
    for (int i = 1; i < fine; i++) {
      // Simpson's rule on p sin θ; the step is small enough for a fifth digit.
      double middle = (angle[i - 1] + angle[i]) / 2;
      int row = Math.min((i - 1) / SUBSTEPS, angles.length - 2);
      double atMiddle = interpolated(angles, values, row, middle);
      within[i] =
          within[i - 1]
              + (angle[i] - angle[i - 1])
                  / 6
                  * (value[i - 1] * Math.sin(angle[i - 1])
                      + 4 * atMiddle * Math.sin(middle)
                      + value[i] * Math.sin(angle[i]));
    }
    double total = within[fine - 1];
    for (int i = 0; i < fine; i++) {
      within[i] /= total;
      value[i] /= 2 * Math.PI * total;
    }
    cosine = Arrays.stream(angle).map(Math::cos).toArray();
    int node = 1;
    for (int g = 0; g < GUIDES; g++) {
      while (node < fine - 1 && within[node] < (double) g / GUIDES) {
        node++;
      }
      guide[g] = node;
    }
  }

  /** Logarithmic steps where both ends are above zero, even ones else. */
  private static double between(double[] angles, int row, double share) {
    return angles[row] > 0
        ? angles[row] * Math.pow(angles[row + 1] / angles[row], share)
        : angles[row] + share * (angles[row + 1] - angles[row]);
  }

  private static double interpolated(double[] angles, double[] values, int row, double at) {
    double low = values[row];
    double high = values[row + 1];
    if (angles[row] > 0 && low > 0 && high > 0) {
      double share = Math.log(at / angles[row]) / Math.log(angles[row + 1] / angles[row]);
      return low * Math.pow(high / low, share);
    }
    double share = (at - angles[row]) / (angles[row + 1] - angles[row]);
    return low + share * (high - low);
  }

  private static void check(double[] angles, double[] values) {
    if (angles.length < 2 || angles.length != values.length) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a phase function needs two or more pairs of angle and value; got %d and %d",
              angles.length,
              values.length));
    }
    if (angles[0] != 0 || Math.abs(angles[angles.length - 1] - Math.PI) > 1e-9) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "the angles of a phase function run from 0 to 180 degrees; got %s to %s",
              Math.toDegrees(angles[0]),
              Math.toDegrees(angles[angles.length - 1])));
    }
    for (int i = 0; i < angles.length; i++) {
      if (i > 0 && !(angles[i] > angles[i - 1])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "the angles of a phase function must ascend; got %s after %s degrees",
                Math.toDegrees(angles[i]),
                Math.toDegrees(angles[i - 1])));
      }
      if (!(values[i] >= 0) || Double.isInfinite(values[i])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "a phase function's values must be finite and 0 or more; got %s at %s degrees",
                values[i],
                Math.toDegrees(angles[i])));
      }
    }
    if (Arrays.stream(values).max().orElseThrow() == 0) {
      throw new IllegalArgumentException(
          "a phase function must scatter somewhere; all values are 0");
    }
  }

  /**
   * The average of Petzold's particles, corrected for pure water: Mobley, Gentili, Gordon et al.
   * 1993 (Appl. Opt. 32:7484), from the measurements of Petzold 1972. Always the same object.
   */
  public static TabulatedPhase averageParticle() {
    return AVERAGE_PARTICLE;
  }

  @Override
  public double value(double cosine) {
    double at = Math.acos(Math.max(-1, Math.min(1, cosine)));
    int above = above(angle, at);
    double share = (at - angle[above - 1]) / (angle[above] - angle[above - 1]);
    return value[above - 1] + share * (value[above] - value[above - 1]);
  }

  @Override
  public double cosineAt(double share) {
    double scattered = 1 - share;
    int above = guide[Math.min((int) (scattered * GUIDES), GUIDES - 1)];
    while (above < within.length - 1 && within[above] < scattered) {
      above++;
    }
    double width = within[above] - within[above - 1];
    double part = width > 0 ? (scattered - within[above - 1]) / width : 0;
    // Even in the cosine: the density hardly changes across one fine step.
    return cosine[above - 1] + part * (cosine[above] - cosine[above - 1]);
  }

  /** Index of the first node at or above a value, 1 at least. */
  private static int above(double[] nodes, double at) {
    int found = Arrays.binarySearch(nodes, at);
    int index = found >= 0 ? found : -found - 1;
    return Math.max(1, Math.min(index, nodes.length - 1));
  }

  private static TabulatedPhase load() {
    List<double[]> rows = new ArrayList<>();
    try (InputStream in =
            TabulatedPhase.class.getResourceAsStream("average_particle_phase_function.csv");
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (!line.isBlank() && Character.isDigit(line.charAt(0))) {
          String[] cells = line.split(",");
          rows.add(new double[] {Double.parseDouble(cells[0]), Double.parseDouble(cells[1])});
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("a phase function in this program cannot be read", e);
    }
    double[] angles = new double[rows.size() + 2];
    double[] values = new double[rows.size() + 2];
    for (int i = 2; i < angles.length; i++) {
      angles[i] = Math.toRadians(rows.get(i - 2)[0]);
      values[i] = rows.get(i - 2)[1];
    }
    double slope = Math.log(values[3] / values[2]) / Math.log(angles[3] / angles[2]);
    angles[1] = PEAK;
    values[1] = values[2] * Math.pow(PEAK / angles[2], slope);
    values[0] = values[1];
    return new TabulatedPhase(angles, values);
  }
}
