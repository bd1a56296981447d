package parfield.plan;

import java.util.Arrays;
import java.util.stream.IntStream;
import parfield.fit.PredictedField;

/**
 * True PPFD of one rig in every truth that the readings allow, channels apart.
 *
 * <p>Truth 0 is the best estimate, with a meter scale of 1; truth d + 1 is draw d, its meter scale
 * and the model's own discrepancy included. Immutable.
 */
final class RigField {
  private final double[][][] channels;

  private RigField(double[][][] channels) {
    this.channels = channels;
  }

  /**
   * The true field behind a predicted one.
   *
   * @param predicted of a rig of alike fixtures
   * @param count channels of the fixture
   */
  static RigField of(PredictedField predicted, int count) {
    double[][][] channels = new double[predicted.draws() + 1][count][];
    for (int c = 0; c < count; c++) {
      channels[0][c] = predicted.bestOfChannel(c);
      for (int d = 0; d < predicted.draws(); d++) {
        channels[d + 1][c] = predicted.drawOfChannel(d, c);
        scale(channels[d + 1][c], predicted.meterScale(d));
      }
    }
    return new RigField(channels);
  }

  private static void scale(double[] values, double factor) {
    for (int i = 0; i < values.length; i++) {
      values[i] *= factor;
    }
  }

  int truths() {
    return channels.length;
  }

  /**
   * PPFD in one truth at some outputs [µmol m⁻² s⁻¹].
   *
   * @param truth which
   * @param outputs of each channel, as a fraction of full output
   * @param from first place
   * @param to place after the last
   */
  double[] ppfd(int truth, double[] outputs, int from, int to) {
    double[] sum = new double[to - from];
    for (int c = 0; c < outputs.length; c++) {
      double output = outputs[c];
      if (output != 0) {
        double[] channel = channels[truth][c];
        for (int i = 0; i < sum.length; i++) {
          sum[i] += output * channel[from + i];
        }
      }
    }
    return sum;
  }

  /** Mean of each channel at full output over each extent: [truth][extent][channel]. */
  double[][][] means(Sampling sampling) {
    return Arrays.stream(channels)
        .map(
            truth ->
                IntStream.range(0, sampling.extents().size())
                    .mapToObj(extent -> means(truth, sampling, extent))
                    .toArray(double[][]::new))
        .toArray(double[][][]::new);
  }

  private static double[] means(double[][] truth, Sampling sampling, int extent) {
    int from = sampling.first(extent);
    return Arrays.stream(truth)
        .mapToDouble(
            channel ->
                Arrays.stream(channel, from, from + sampling.counted(extent))
                    .average()
                    .orElseThrow())
        .toArray();
  }
}
