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
  /** Steps from γ = 0 to 180° where there is one azimuth only, and the table is short. */
  private static final int AXIAL_STEPS = 1024;

  /** Steps from γ = 0 to 180° and in a quadrant, where that is enough; otherwise twice as many. */
  private static final int GAMMA_STEPS = 256;

  private static final int QUADRANT_STEPS = 24;

  /** A table is fine enough that errs by no more than this share of the greatest intensity. */
  private static final double ENOUGH = 1e-4;

  /** Rows in γ that a table is tried on. */
  private static final int TRIED = 24;

  /**
   * Intensities [row in γ][azimuth][channel] in one array, up to the first row from which on all is
   * dark.
   */
  private final double[] values;

  private final double stepsPerRadian;
  private final int darkFrom;
  private final int quadrantSteps;
  private final int azimuths;
  private final int channels;
  private final boolean quadrant;

  private IntensityTable(
      double[] values,
      double stepsPerRadian,
      int quadrantSteps,
      int azimuths,
      int channels,
      boolean quadrant) {
    this.values = values;
    this.quadrantSteps = quadrantSteps;
    this.stepsPerRadian = stepsPerRadian;
    this.darkFrom = values.length / (azimuths * channels) - 1;
    this.azimuths = azimuths;
    this.channels = channels;
    this.quadrant = quadrant;
  }

  /**
   * Tabulates, as finely as the distributions need: small tables stay near the processor.
   *
   * @param distributions by channel, at least one
   */
  static IntensityTable of(List<IntensityDistribution> distributions) {
    if (distributions.stream().allMatch(IntensityDistribution::axiallySymmetric)) {
      return of(distributions, AXIAL_STEPS, 1);
    }
    IntensityTable table = of(distributions, GAMMA_STEPS, QUADRANT_STEPS);
    return table.keepsTo(distributions)
        ? table
        : of(distributions, 2 * GAMMA_STEPS, 2 * QUADRANT_STEPS);
  }

  private static IntensityTable of(
      List<IntensityDistribution> distributions, int steps, int quadrantSteps) {
    boolean axial = distributions.stream().allMatch(IntensityDistribution::axiallySymmetric);
    boolean quadrant = distributions.stream().allMatch(IntensityDistribution::quadrantSymmetric);
    int azimuths = axial ? 1 : (quadrant ? 1 : 4) * quadrantSteps + 1;
    double[] angles = new double[azimuths];
    for (int j = 0; j < azimuths; j++) {
      angles[j] = angle((double) j / quadrantSteps);
    }
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
    if (!axial) {
      centre(values, lit, perRow, channels);
    }
    return new IntensityTable(
        Arrays.copyOf(values, (lit + 1) * perRow),
        stepsPerRadian,
        quadrantSteps,
        azimuths,
        channels,
        quadrant);
  }

  /**
   * Moves each value by a sixteenth of its second difference along either axis. A straight line
   * between true values errs to one side, by an eighth of the second difference amid a cell; now it
   * errs to both by half of that. Where rows or azimuths begin and end values stay.
   */
  private static void centre(double[] values, int lit, int perRow, int channels) {
    double[] was = values.clone();
    for (int i = 1; i < lit - 1; i++) {
      for (int k = 0; k < perRow; k++) {
        int at = i * perRow + k;
        double bend = was[at - perRow] - 2 * was[at] + was[at + perRow];
        if (k >= channels && k < perRow - channels) {
          bend += was[at - channels] - 2 * was[at] + was[at + channels];
        }
        values[at] -= bend / 16;
      }
    }
  }

  /** The azimuth at a pseudo-azimuth from 0 to 4 [rad]. */
  private static double angle(double along) {
    int turn = Math.min((int) along, 3);
    double t = along - turn;
    return turn * Math.PI / 2 + Math.atan2(t, 1 - t);
  }

  /** Whether it is right amid its cells, where it errs most, in some rows from top to horizon. */
  private boolean keepsTo(List<IntensityDistribution> distributions) {
    double[] angles = new double[azimuths - 1];
    for (int j = 0; j < angles.length; j++) {
      angles[j] = angle((j + 0.5) / quadrantSteps);
    }
    double[] peaks = new double[channels];
    for (int i = 0; i < values.length; i++) {
      peaks[i % channels] = Math.max(peaks[i % channels], values[i]);
    }
    double[] told = new double[channels];
    for (int tried = 0; tried < TRIED; tried++) {
      int row = darkFrom * tried / TRIED;
      double gamma = (row + 0.5) / stepsPerRadian;
      for (int c = 0; c < channels; c++) {
        double[] exact = distributions.get(c).around(gamma, angles);
        for (int j = 0; j < angles.length; j++) {
          at(gamma, Math.cos(angles[j]), Math.sin(angles[j]), told);
          if (Math.abs(told[c] - exact[j]) > ENOUGH * peaks[c]) {
            return false;
          }
        }
      }
    }
    return true;
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
    double column = pseudoAzimuth(dx, dy) * quadrantSteps;
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
