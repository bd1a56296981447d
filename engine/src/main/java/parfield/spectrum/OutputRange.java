package parfield.spectrum;

import java.util.Locale;

/**
 * How far a channel may be turned.
 *
 * @param low least fraction of its full output, 0 to {@code high}
 * @param high greatest fraction of its full output, to 1
 */
public record OutputRange(double low, double high) {
  /** From dark to full output. */
  public static final OutputRange FULL = new OutputRange(0, 1);

  public OutputRange {
    if (!(low >= 0 && low <= high && high <= 1)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a range of outputs lies within 0 to 1, lowest first; got %s to %s",
              low,
              high));
    }
  }
}
