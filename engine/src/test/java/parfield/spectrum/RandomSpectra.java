package parfield.spectrum;

import java.util.SplittableRandom;

/** Spectra for laws: bells and noise on wavelengths of uneven steps. */
final class RandomSpectra {
  private RandomSpectra() {}

  static Wavelengths wavelengths(
      SplittableRandom random, double from, double to, double finest, double widest) {
    double[] nm = new double[(int) ((to - from) / finest) + 2];
    int n = 0;
    for (double at = from; at < to; at += finest + (widest - finest) * random.nextDouble()) {
      nm[n++] = at;
    }
    nm[n++] = to;
    return Wavelengths.of(java.util.Arrays.copyOf(nm, n));
  }

  /** One to five bells and noise of a hundredth of the largest. */
  static double[] values(SplittableRandom random, Wavelengths wavelengths) {
    double[] values = new double[wavelengths.size()];
    int bells = 1 + random.nextInt(5);
    for (int bell = 0; bell < bells; bell++) {
      double height = 0.2 + random.nextDouble();
      double peak = 400 + 280 * random.nextDouble();
      double sigma = 5 + 50 * random.nextDouble();
      for (int i = 0; i < values.length; i++) {
        double z = (wavelengths.nm(i) - peak) / sigma;
        values[i] += height * Math.exp(-z * z / 2);
      }
    }
    for (int i = 0; i < values.length; i++) {
      values[i] += 0.01 * random.nextGaussian();
    }
    return values;
  }
}
