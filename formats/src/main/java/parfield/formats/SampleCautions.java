package parfield.formats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/**
 * What a measured spectrum may suffer from without being wrong: a dark signal left in, noise, a
 * step or bandpass too wide for its peak, a range too short. The values themselves stay as they
 * are.
 */
final class SampleCautions {
  /** Fewest samples at an end that tell a level. */
  private static final int FEWEST = 5;

  /** A level at both ends that is worth a word, as a share of the peak. */
  private static final double DARK = 0.005;

  /** A level at the ends that is rather light than dark signal, as a share of the peak. */
  private static final double LIGHT = 0.1;

  /** Noise that is worth a word, as a share of the peak. */
  private static final double NOISE = 0.01;

  /** Deviations of a normal law: its median absolute one is this share of the standard one. */
  private static final double MEDIAN_SHARE = 0.6745;

  private final double[] nm;
  private final double[] values;
  private final double peak;
  private final List<String> cautions = new ArrayList<>();

  private SampleCautions(double[] nm, double[] values) {
    this.nm = nm;
    this.values = values;
    this.peak = DoubleStream.of(values).max().orElseThrow();
  }

  /**
   * Looks for what is worth a word.
   *
   * @param nm wavelengths [nm], ascending
   * @param values per nm, the greatest above 0
   * @param bandpass of the spectrometer, full width at half maximum [nm], where it is stated
   * @return one plain sentence each
   */
  static List<String> of(double[] nm, double[] values, OptionalDouble bandpass) {
    SampleCautions found = new SampleCautions(nm, values);
    found.dark();
    found.noise();
    found.width(bandpass);
    return List.copyOf(found.cautions);
  }

  private void say(String format, Object... args) {
    cautions.add(String.format(Locale.ROOT, format, args));
  }

  private static double median(double[] some) {
    double[] sorted = some.clone();
    Arrays.sort(sorted);
    int n = sorted.length;
    return n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
  }

  /** A level at both ends, alike and far below the peak, is rather the sensor's than the lamp's. */
  private void dark() {
    int count = Math.max(FEWEST, nm.length / 20);
    if (nm.length < 4 * count) {
      return;
    }
    double left = median(Arrays.copyOfRange(values, 0, count));
    double right = median(Arrays.copyOfRange(values, nm.length - count, nm.length));
    double least = Math.min(Math.abs(left), Math.abs(right));
    double most = Math.max(Math.abs(left), Math.abs(right));
    boolean alike = Math.signum(left) == Math.signum(right) && most <= 2 * least;
    if (alike && least > DARK * peak && most < LIGHT * peak) {
      double level = (left + right) / 2;
      double all = 0;
      double lit = 0;
      for (int i = 1; i < nm.length; i++) {
        all += (nm[i] - nm[i - 1]) * (values[i] + values[i - 1]) / 2;
        lit += (nm[i] - nm[i - 1]) * level;
      }
      say(
          "it lies at %s %% of its peak at both ends: a dark signal may have been left in, %s %% of"
              + " the whole; take a spectrum with the light off and subtract it",
          NumberText.shown(Math.rint(1000 * level / peak) / 10),
          NumberText.shown(Math.rint(1000 * lit / all) / 10));
    }
  }

  /** Noise, from the second differences where there is little light and little slope. */
  private void noise() {
    double[] dim =
        IntStream.range(1, nm.length - 1)
            .filter(i -> values[i] < LIGHT * peak && nm[i + 1] - nm[i - 1] <= 4)
            .mapToDouble(i -> Math.abs(values[i - 1] - 2 * values[i] + values[i + 1]))
            .toArray();
    if (dim.length < 2 * FEWEST) {
      return;
    }
    // The second difference of white noise has six times its variance.
    double noise = median(dim) / MEDIAN_SHARE / Math.sqrt(6);
    if (noise > NOISE * peak) {
      say(
          "its noise is about %s %% of its peak: average more spectra, or take a longer integration"
              + " time; values below zero are kept, so that the noise averages out",
          NumberText.shown(Math.rint(1000 * noise / peak) / 10));
    }
  }

  /** Whether the highest peak is wide enough for the step and the bandpass. */
  private void width(OptionalDouble bandpass) {
    int top = 0;
    for (int i = 1; i < values.length; i++) {
      top = values[i] > values[top] ? i : top;
    }
    double right = halfway(top, 1);
    double left = halfway(top, -1);
    if (Double.isNaN(left) || Double.isNaN(right)) {
      return;
    }
    double width = right - left;
    double step = (nm[Math.min(nm.length - 1, top + 1)] - nm[Math.max(0, top - 1)]) / 2;
    if (width < 3 * step) {
      say(
          "its highest peak, at %s nm, is %s nm wide and sampled every %s nm: its height and width"
              + " are rough; export smaller steps",
          NumberText.shown(nm[top]),
          NumberText.shown(Math.rint(10 * width) / 10),
          NumberText.shown(Math.rint(10 * step) / 10));
    }
    if (bandpass.isPresent() && bandpass.getAsDouble() > width / 2) {
      say(
          "the spectrometer's bandpass of %s nm widens its highest peak, at %s nm, which shows %s"
              + " nm: the true one is narrower and higher",
          NumberText.shown(bandpass.getAsDouble()),
          NumberText.shown(nm[top]),
          NumberText.shown(Math.rint(10 * width) / 10));
    }
  }

  /** Where the flank of a peak falls to half of it [nm]; NaN if it does not. */
  private double halfway(int top, int way) {
    for (int i = top; i + way >= 0 && i + way < nm.length; i += way) {
      if (values[i + way] <= values[top] / 2) {
        double share = (values[i] - values[top] / 2) / (values[i] - values[i + way]);
        return nm[i] + share * (nm[i + way] - nm[i]);
      }
    }
    return Double.NaN;
  }
}
