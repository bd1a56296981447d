package parfield.spectrum;

import java.util.List;

/**
 * Many weighted sums of one spectrum at once.
 *
 * <p>The weights of one sample stand side by side, so that all sums grow together, several samples
 * at a time: that is what a processor's vector units can do. Immutable.
 */
final class WeightMatrix {
  private static final int AT_A_TIME = 4;

  private final int samples;
  private final int sums;
  private final double[] weights;

  /**
   * The matrix of rows of weights.
   *
   * @param rows one for each sum, all as long as the spectra
   */
  WeightMatrix(List<double[]> rows) {
    this.samples = rows.get(0).length;
    this.sums = rows.size();
    this.weights = new double[samples * sums];
    for (int k = 0; k < sums; k++) {
      double[] row = rows.get(k);
      for (int i = 0; i < samples; i++) {
        weights[i * sums + k] = row[i];
      }
    }
  }

  /** All sums of a spectrum, in the order of the rows. */
  double[] sums(Samples spectrum) {
    double[] totals = new double[sums];
    int i = 0;
    for (; i + AT_A_TIME <= samples; i += AT_A_TIME) {
      double a = spectrum.value(i);
      double b = spectrum.value(i + 1);
      double c = spectrum.value(i + 2);
      double d = spectrum.value(i + 3);
      int rowA = i * sums;
      int rowB = rowA + sums;
      int rowC = rowB + sums;
      int rowD = rowC + sums;
      for (int k = 0; k < totals.length; k++) {
        totals[k] +=
            a * weights[rowA + k]
                + b * weights[rowB + k]
                + c * weights[rowC + k]
                + d * weights[rowD + k];
      }
    }
    for (; i < samples; i++) {
      double value = spectrum.value(i);
      int row = i * sums;
      for (int k = 0; k < totals.length; k++) {
        totals[k] += value * weights[row + k];
      }
    }
    return totals;
  }
}
