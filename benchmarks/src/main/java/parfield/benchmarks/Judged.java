package parfield.benchmarks;

import java.util.List;

/** What a benchmark computes can be judged: its error stands in the same row as its time. */
interface Judged {
  /** How far what is timed is off. */
  Deviation deviation();

  /**
   * How far values are off.
   *
   * @param median of |relative error|
   * @param worst largest |relative error|
   * @param against what it is measured against
   */
  record Deviation(double median, double worst, String against) {
    /** How far some values are off, from their relative errors, at least one. */
    static Deviation of(List<Double> relative, String against) {
      double[] sorted = relative.stream().mapToDouble(Math::abs).sorted().toArray();
      return new Deviation(sorted[sorted.length / 2], sorted[sorted.length - 1], against);
    }
  }
}
