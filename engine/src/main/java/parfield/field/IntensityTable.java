package parfield.field;

import java.util.Arrays;
import java.util.List;
import parfield.lamp.IntensityDistribution;

/**
 * The intensity distributions of a fixture's channels, tabulated for speed: even steps in γ and in
 * a pseudo-azimuth that needs no trigonometry.
 *
 * <p>The pseudo-azimuth of (dx, dy) runs 0…4 along the diamond |dx| + |dy| = 1. Where all channels
 * have quadrant symmetry one quadrant is kept, where all have axial symmetry one azimuth. The
 * channels of one direction lie side by side, so that one look at memory serves all of them.
 */
final class IntensityTable {
  /** Steps from γ = 0 to 180°: fine where there is one azimuth only, and the table is short. */
  private static final int AXIAL_STEPS = 1024;

  private static final int GAMMA_STEPS = 512;
  private static final int QUADRANT_STEPS = 48;

  /**
   * Intensities [row in γ][azimuth][channel] in one array, up to the first row from which on all is
   * dark.
   */
  private final double[] values;

  private final double stepsPerRadian;
  private final int darkFrom;
  private final int azimuths;
  private final int channels;
  private final boolean quadrant;

  private IntensityTable(
      double[] values, double stepsPerRadian, int azimuths, int channels, boolean quadrant) {
    this.values = values;
    this.stepsPerRadian = stepsPerRadian;
    this.darkFrom = values.length / (azimuths * channels) - 1;
    this.azimuths = azimuths;
    this.channels = channels;
    this.quadrant = quadrant;
  }

  /**
   * Tabulates.
   *
   * @param distributions by channel, at least one
   */
  static IntensityTable of(List<IntensityDistribution> distributions) {
    boolean axial = distributions.stream().allMatch(IntensityDistribution::axiallySymmetric);
    boolean quadrant = distributions.stream().allMatch(IntensityDistribution::quadrantSymmetric);
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
    int channels = distributions.size();
    int perRow = azimuths * channels;
    double[] values = new double[(steps + 2) * perRow];
    int lit = 0;
    for (int i = 0; i <= steps; i++) {
      for (int c = 0; c < channels; c++) {
        double[] row = distributions.get(c).around(i / stepsPerRadian, angles);
        for (int j = 0; j < azimuths; j++) {
          values[i * perRow + j * channels + c] = row[j];
        }
        if (Arrays.stream(row).anyMatch(intensity -> intensity > 0)) {
          lit = i + 1;
        }
      }
    }
    return new IntensityTable(
        Arrays.copyOf(values, (lit + 1) * perRow), stepsPerRadian, azimuths, channels, quadrant);
  }

  /** Returns whether no channel's intensity depends on azimuth. */
  boolean axial() {
    return azimuths == 1;
  }

  /** Returns of how many channels this is. */
  int channels() {
    return channels;
  }

  /**
   * Intensities in the direction (γ, azimuth of (dx, dy)).
   *
   * @param intensities takes one a channel [µmol s⁻¹ sr⁻¹]
   */
  void at(double gamma, double dx, double dy, double[] intensities) {
    double row = gamma * stepsPerRadian;
    int i = (int) row;
    if (i >= darkFrom) {
      Arrays.fill(intensities, 0);
      return;
    }
    double f = row - i;
    int perRow = azimuths * channels;
    int base = i * perRow;
    if (azimuths == 1) {
      for (int c = 0; c < channels; c++) {
        double low = values[base + c];
        intensities[c] = low + f * (values[base + perRow + c] - low);
      }
      return;
    }
    double column = pseudoAzimuth(dx, dy) * QUADRANT_STEPS;
    int j = Math.min((int) column, azimuths - 2);
    double g = column - j;
    base += j * channels;
    for (int c = 0; c < channels; c++) {
      int at = base + c;
      double low = values[at] + g * (values[at + channels] - values[at]);
      at += perRow;
      double high = values[at] + g * (values[at + channels] - values[at]);
      intensities[c] = low + f * (high - low);
    }
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
