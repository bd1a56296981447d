package parfield.units;

import java.util.Locale;

/**
 * A figure with the interval that holds the true one with 90 % probability.
 *
 * @param value the best estimate, in the unit that the owner states
 * @param low the 5 % quantile, same unit
 * @param high the 95 % quantile, same unit
 */
public record Estimate(double value, double low, double high) {
  public Estimate {
    if (!(low <= high)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "interval must run from low to high; got low %s, high %s", low, high));
    }
    if (Double.isNaN(value)) {
      throw new IllegalArgumentException("an estimate needs a number; got NaN");
    }
  }

  /**
   * The estimate whose interval spans the 5 % to 95 % quantiles of a sample.
   *
   * @param value the best estimate
   * @param sample draws of the same figure, at least one; left unchanged
   * @return the estimate, quantiles interpolated linearly between order statistics
   * @throws IllegalArgumentException if {@code sample} is empty or holds NaN
   */
  public static Estimate ofSample(double value, double[] sample) {
    if (sample.length == 0) {
      throw new IllegalArgumentException("an interval needs at least one draw; got none");
    }
    double[] sorted = sample.clone();
    java.util.Arrays.sort(sorted);
    return new Estimate(value, quantile(sorted, 0.05), quantile(sorted, 0.95));
  }

  /** An estimate known exactly: the interval has no width. */
  public static Estimate exact(double value) {
    return new Estimate(value, value, value);
  }

  /**
   * The quantile of an ascending sample, interpolated linearly between order statistics.
   *
   * @param ascending the sample in ascending order, at least one value
   * @param probability 0 to 1
   */
  public static double quantile(double[] ascending, double probability) {
    double position = probability * (ascending.length - 1);
    int below = (int) Math.floor(position);
    int above = Math.min(below + 1, ascending.length - 1);
    double share = position - below;
    if (ascending[below] == ascending[above]) {
      // Rounding must not make two quantiles of one value differ.
      return ascending[below];
    }
    return ascending[below] * (1 - share) + ascending[above] * share;
  }
}
