package parfield.spectrum;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** The search for peaks that {@link Peak} describes. */
final class PeakSearch {
  /** Least prominence of a peak, of the highest sample. */
  private static final double LEAST_PROMINENCE = 0.05;

  /** Least prominence of a peak, in standard deviations of the noise. */
  private static final double NOISE_DEVIATIONS = 6;

  /** How far below the peak the parabola's samples reach, of its height. */
  private static final double TOP = 0.15;

  /** Standard deviation over median size of a normal variate. */
  private static final double DEVIATION_OF_MEDIAN = 1.4826;

  /** Standard deviation of a third difference of independent values: √(1 + 9 + 9 + 1). */
  private static final double THIRD_DIFFERENCE = Math.sqrt(20);

  private final Wavelengths wavelengths;
  private final double[] values;
  private final double rise;
  private final double noise;

  PeakSearch(Samples samples) {
    this.wavelengths = samples.wavelengths();
    this.values = samples.toArray();
    this.noise = noise(values);
    double highest = Arrays.stream(values).max().orElseThrow();
    this.rise = Math.max(LEAST_PROMINENCE * highest, NOISE_DEVIATIONS * noise);
  }

  private static double noise(double[] values) {
    if (values.length < 8) {
      return 0;
    }
    double[] sizes = new double[values.length - 3];
    for (int i = 0; i < sizes.length; i++) {
      sizes[i] = Math.abs(values[i + 3] - 3 * values[i + 2] + 3 * values[i + 1] - values[i]);
    }
    return DEVIATION_OF_MEDIAN * median(sizes) / THIRD_DIFFERENCE;
  }

  /** The median by Hoare's selection, which leaves the values in another order. */
  private static double median(double[] values) {
    int wanted = values.length / 2;
    int low = 0;
    int high = values.length - 1;
    while (low < high) {
      double pivot = values[(low + high) >>> 1];
      int i = low;
      int j = high;
      while (i <= j) {
        while (values[i] < pivot) {
          i++;
        }
        while (values[j] > pivot) {
          j--;
        }
        if (i <= j) {
          double swapped = values[i];
          values[i++] = values[j];
          values[j--] = swapped;
        }
      }
      if (wanted <= j) {
        high = j;
      } else if (wanted >= i) {
        low = i;
      } else {
        break;
      }
    }
    return values[wanted];
  }

  List<Peak> peaks() {
    List<Peak> peaks = new ArrayList<>();
    for (int i = 1; i < values.length - 1; i++) {
      if (values[i] >= rise && values[i] > values[i - 1] && values[i] >= values[i + 1]) {
        double prominence = values[i] - Math.max(valley(i, -1), valley(i, 1));
        if (prominence >= rise) {
          peaks.add(peak(i, prominence));
        }
      }
    }
    peaks.sort(Comparator.comparingDouble(Peak::height).reversed());
    return List.copyOf(peaks);
  }

  /** The lowest value between a sample and the next higher one, or the spectrum's end. */
  private double valley(int top, int step) {
    double least = values[top];
    for (int i = top + step; i >= 0 && i < values.length; i += step) {
      // Of two samples of one height the first is the peak.
      if (values[i] > values[top] || (step < 0 && values[i] == values[top])) {
        return least;
      }
      least = Math.min(least, values[i]);
    }
    return least;
  }

  private Peak peak(int top, double prominence) {
    int below = foot(top, -1);
    int above = foot(top, 1);
    double floor = values[top] - Math.max(TOP * values[top], NOISE_DEVIATIONS * noise);
    int from = top - 1;
    while (from - 1 > below && values[from - 1] >= floor) {
      from--;
    }
    int to = top + 1;
    while (to + 1 < above && values[to + 1] >= floor) {
      to++;
    }
    double[] summit = summit(top, from, to);
    double half = summit[1] / 2;
    Finding<Double> low = crossing(top, below, -1, half);
    Finding<Double> high = crossing(top, above, 1, half);
    return new Peak(summit[0], summit[1], prominence, low.flatMap(a -> high.map(b -> b - a)));
  }

  /** The lowest sample before a rise that counts; one beyond the last where there is none. */
  private int foot(int top, int step) {
    int lowest = top;
    int i = top + step;
    while (i >= 0 && i < values.length && values[i] < values[lowest] + rise) {
      if (values[i] < values[lowest]) {
        lowest = i;
      }
      i += step;
    }
    return i < 0 || i >= values.length ? i : lowest;
  }

  /**
   * Wavelength and height of the top of a parabola through samples by least squares, written in
   * polynomials that are orthogonal over them; those of the highest sample where it has no top
   * there.
   */
  private double[] summit(int top, int from, int to) {
    int n = to - from + 1;
    double mean = 0;
    double level = 0;
    for (int i = from; i <= to; i++) {
      mean += wavelengths.nm(i) / n;
      level += values[i] / n;
    }
    double squares = 0;
    double cubes = 0;
    double slope = 0;
    for (int i = from; i <= to; i++) {
      double first = wavelengths.nm(i) - mean;
      squares += first * first;
      cubes += first * first * first;
      slope += values[i] * first;
    }
    slope /= squares;
    double skew = cubes / squares;
    double bend = 0;
    double size = 0;
    for (int i = from; i <= to; i++) {
      double first = wavelengths.nm(i) - mean;
      double second = (first - skew) * first - squares / n;
      bend += values[i] * second;
      size += second * second;
    }
    bend /= size;
    double turn = (skew - slope / bend) / 2;
    boolean within =
        bend < 0 && turn > wavelengths.nm(from) - mean && turn < wavelengths.nm(to) - mean;
    return within
        ? new double[] {
          mean + turn, level + slope * turn + bend * ((turn - skew) * turn - squares / n)
        }
        : new double[] {wavelengths.nm(top), values[top]};
  }

  /** Where the line between samples first falls to half the height, before the foot. */
  private Finding<Double> crossing(int top, int foot, int step, double half) {
    for (int i = top + step; i != foot + step && i >= 0 && i < values.length; i += step) {
      if (values[i] <= half) {
        double before = wavelengths.nm(i - step);
        double share = (values[i - step] - half) / (values[i - step] - values[i]);
        return Finding.of(before + share * (wavelengths.nm(i) - before));
      }
    }
    return Finding.notDefined(
        foot < 0 || foot >= values.length
            ? "the spectrum ends before a flank falls to half the peak"
            : "another peak rises before a flank falls to half the peak");
  }
}
