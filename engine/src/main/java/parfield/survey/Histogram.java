package parfield.survey;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Shares of equal cells by PPFD, in bins of equal width that begin at 0.
 *
 * @param width of a bin [µmol m⁻² s⁻¹], above 0
 * @param shares share of the cells in bin k, which runs from k × width to below (k + 1) × width;
 *     they add up to 1
 */
public record Histogram(double width, List<Double> shares) {
  /** Bins that an automatic width aims at. */
  private static final int USUAL_BINS = 20;

  public Histogram {
    if (!(width > 0)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "a histogram's bins need a width above 0; got %s", width));
    }
    shares = List.copyOf(shares);
  }

  /** Sorts values of 0 or more into some twenty bins, 1, 2 or 5 times a power of ten wide. */
  static Histogram of(double[] ppfd) {
    double max = Arrays.stream(ppfd).max().orElseThrow();
    double width = max > 0 ? roundUp(max / USUAL_BINS) : 1;
    int bins = (int) Math.floor(max / width) + 1;
    double[] counts = new double[bins];
    for (double value : ppfd) {
      counts[(int) Math.floor(Math.max(0, value) / width)]++;
    }
    return new Histogram(
        width, Arrays.stream(counts).map(count -> count / ppfd.length).boxed().toList());
  }

  private static double roundUp(double width) {
    double power = Math.pow(10, Math.floor(Math.log10(width)));
    for (double step : new double[] {1, 2, 5}) {
      if (step * power >= width * (1 - 1e-9)) {
        return step * power;
      }
    }
    return 10 * power;
  }
}
