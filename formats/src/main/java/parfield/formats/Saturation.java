package parfield.formats;

import java.util.List;
import java.util.Optional;

/**
 * A peak that was cut off because the sensor was full.
 *
 * @param from its first sample, from 0
 * @param to its last sample
 */
record Saturation(int from, int to) {
  /** Fewest equal samples that make a plateau. */
  private static final int FEWEST = 3;

  /** Widest plateau [nm]: what is level over more than this is level light. */
  private static final double WIDEST = 100;

  /** Widest mean step [nm] of a spectrometer; coarser samples are written by hand. */
  private static final double WIDEST_STEP = 5;

  /** A rounded peak falls by fewer steps of its rounding beside its equal samples. */
  private static final double STEPS = 8;

  /**
   * Finds a plateau at the maximum with steep flanks. A smooth peak whose values are rounded has
   * equal samples on top too, but falls by a few steps of the rounding beside them.
   */
  static Optional<Saturation> in(List<Double> wavelengths, List<Double> values) {
    double peak = values.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    double rounding = rounding(values);
    int n = values.size();
    for (int from = 0; from < n; from++) {
      int to = from;
      while (values.get(from) == peak && to + 1 < n && values.get(to + 1) == peak) {
        to++;
      }
      double width = wavelengths.get(to) - wavelengths.get(from);
      boolean flanked = from > 0 && to < n - 1;
      if (to - from + 1 >= FEWEST && flanked && width <= limit(to - from)) {
        double fall = Math.max(peak - values.get(from - 1), peak - values.get(to + 1));
        if (fall > STEPS * rounding && fall > 0.01 * peak) {
          return Optional.of(new Saturation(from, to));
        }
      }
      from = to;
    }
    return Optional.empty();
  }

  private static double limit(int steps) {
    return Math.min(WIDEST, steps * WIDEST_STEP);
  }

  /** The least difference between two values that differ. */
  private static double rounding(List<Double> values) {
    double[] sorted = values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    double least = Double.POSITIVE_INFINITY;
    for (int i = 1; i < sorted.length; i++) {
      if (sorted[i] > sorted[i - 1]) {
        least = Math.min(least, sorted[i] - sorted[i - 1]);
      }
    }
    return least;
  }
}
