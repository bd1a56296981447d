package parfield.plan;

import java.util.List;
import parfield.survey.Band;

/**
 * The figures of one extent in one truth at one setting, all in one pass: a search needs them some
 * ten thousand times.
 *
 * <p>The definitions are those of {@code parfield.survey}: arithmetic mean, U₀ = least over mean,
 * outer sixths over middle third, share inside a band with both ends. A test holds them together.
 */
final class Tally {
  final double mean;
  final double least;
  final double greatest;
  final double endsToCentre;
  final double retention;
  private final double[] coverage;

  /**
   * Counts places.
   *
   * @param ppfd of each place of the extent
   * @param parts of the extent's length that the first places lie in, see {@link Sampling}: these
   *     count for mean and shares, the others for the extremes only
   * @param bands of which coverage is wanted
   * @param reference mean at the reference height at the same outputs
   */
  Tally(double[] ppfd, byte[] parts, List<Band> bands, double reference) {
    int counted = parts.length;
    double sum = 0;
    double ends = 0;
    double centre = 0;
    int atEnds = 0;
    int inCentre = 0;
    for (int i = 0; i < counted; i++) {
      sum += ppfd[i];
      if (parts[i] == Sampling.END) {
        ends += ppfd[i];
        atEnds++;
      } else if (parts[i] == Sampling.CENTRE) {
        centre += ppfd[i];
        inCentre++;
      }
    }
    double low = Double.POSITIVE_INFINITY;
    double high = 0;
    for (double value : ppfd) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    mean = sum / counted;
    least = low;
    greatest = high;
    endsToCentre = centre > 0 && atEnds > 0 ? ends / centre * ((double) inCentre / atEnds) : 0;
    retention = reference > 0 ? mean / reference : 0;
    coverage = new double[bands.size()];
    for (int b = 0; b < coverage.length; b++) {
      coverage[b] = share(ppfd, counted, bands.get(b));
    }
  }

  private static double share(double[] ppfd, int counted, Band band) {
    int inside = 0;
    for (int i = 0; i < counted; i++) {
      if (band.contains(ppfd[i])) {
        inside++;
      }
    }
    return (double) inside / counted;
  }

  /** U₀: least over mean, 0 in the dark. */
  double evenness() {
    return mean > 0 ? least / mean : 0;
  }

  double coverage(int band) {
    return coverage[band];
  }
}
