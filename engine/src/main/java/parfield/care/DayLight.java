package parfield.care;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import parfield.fit.PredictedField;
import parfield.units.Estimate;

/**
 * Dose and peak of a day at some places, in every truth that the readings allow. Immutable.
 *
 * <p>All of it is true light: the meter's own scale error is in the draws.
 */
public final class DayLight {
  /** From µmol to mol. */
  private static final double MOL = 1e-6;

  private final double[][] doses;
  private final double[][] peaks;

  private DayLight(double[][] doses, double[][] peaks) {
    this.doses = doses;
    this.peaks = peaks;
  }

  /**
   * Dose and peak of a day.
   *
   * @param field of the rig that {@code outputs} belong to
   * @param outputs through the day
   */
  public static DayLight of(PredictedField field, DayOutputs outputs) {
    double[][] seconds = outputs.fullSeconds();
    double[][][] moments = outputs.brightest();
    double[][] doses = new double[field.draws() + 1][];
    double[][] peaks = new double[field.draws() + 1][];
    for (int truth = 0; truth <= field.draws(); truth++) {
      doses[truth] = times(truth(field, truth, seconds), MOL);
      peaks[truth] = new double[doses[truth].length];
      for (double[][] moment : moments) {
        double[] ppfd = truth(field, truth, moment);
        for (int i = 0; i < ppfd.length; i++) {
          peaks[truth][i] = Math.max(peaks[truth][i], ppfd[i]);
        }
      }
    }
    return new DayLight(doses, peaks);
  }

  /** True light in one truth: 0 is the best estimate, d + 1 is draw d with its meter scale. */
  private static double[] truth(PredictedField field, int truth, double[][] weights) {
    return truth == 0
        ? field.bestWeighted(weights)
        : times(field.drawWeighted(truth - 1, weights), field.meterScale(truth - 1));
  }

  private static double[] times(double[] values, double factor) {
    return Arrays.stream(values).map(value -> value * factor).toArray();
  }

  /**
   * PPFD at each place at one time of day [µmol m⁻² s⁻¹].
   *
   * @param field of the rig that {@code outputs} belong to
   * @param outputs through the day
   * @param secondOfDay 0 to 86 400
   */
  public static Estimate[] ppfdAt(PredictedField field, DayOutputs outputs, double secondOfDay) {
    double[][] weights = outputs.at(secondOfDay);
    double[][] truths = new double[field.draws() + 1][];
    for (int truth = 0; truth <= field.draws(); truth++) {
      truths[truth] = truth(field, truth, weights);
    }
    return estimates(truths);
  }

  private static Estimate[] estimates(double[][] truths) {
    Estimate[] all = new Estimate[truths[0].length];
    for (int i = 0; i < all.length; i++) {
      all[i] = estimate(truths, i);
    }
    return all;
  }

  private static Estimate estimate(double[][] truths, int place) {
    double[] sample = new double[truths.length - 1];
    for (int d = 0; d < sample.length; d++) {
      sample[d] = truths[d + 1][place];
    }
    return Estimate.ofSample(truths[0][place], sample);
  }

  /** Number of truths: the best estimate, then the draws. */
  public int truths() {
    return doses.length;
  }

  /** Number of places. */
  public int places() {
    return doses[0].length;
  }

  /** Daily light integral of a place in one truth [mol m⁻² d⁻¹]. */
  public double dli(int truth, int place) {
    return doses[truth][place];
  }

  /** Highest PPFD of the day at a place in one truth [µmol m⁻² s⁻¹]. */
  public double peak(int truth, int place) {
    return peaks[truth][place];
  }

  /** Daily light integral of each place [mol m⁻² d⁻¹]. */
  public Estimate[] dli() {
    return estimates(doses);
  }

  /** Highest PPFD of the day at each place [µmol m⁻² s⁻¹]. */
  public Estimate[] peak() {
    return estimates(peaks);
  }

  /** Mean daily light integral of all places [mol m⁻² d⁻¹]. */
  public Estimate meanDli() {
    return meanDli(IntStream.range(0, places()).toArray());
  }

  /**
   * Mean daily light integral of some places [mol m⁻² d⁻¹].
   *
   * @param some their numbers, at least one
   */
  public Estimate meanDli(int... some) {
    return ofTruths(
        truth -> Arrays.stream(some).mapToDouble(i -> doses[truth][i]).average().orElseThrow());
  }

  /** Daily light integral of the dimmest place [mol m⁻² d⁻¹]. */
  public Estimate leastDli() {
    return ofTruths(truth -> Arrays.stream(doses[truth]).min().orElseThrow());
  }

  /** Daily light integral of the brightest place [mol m⁻² d⁻¹]. */
  public Estimate mostDli() {
    return ofTruths(truth -> Arrays.stream(doses[truth]).max().orElseThrow());
  }

  /**
   * Share of the places whose daily light integral lies in a range, both ends included.
   *
   * @param from [mol m⁻² d⁻¹]
   * @param to [mol m⁻² d⁻¹]
   */
  public Estimate share(double from, double to) {
    return ofTruths(
        truth ->
            (double) Arrays.stream(doses[truth]).filter(dli -> dli >= from && dli <= to).count()
                / places());
  }

  /** A figure of each truth, as an estimate. */
  Estimate ofTruths(IntToDoubleFunction figure) {
    double[] sample = new double[truths() - 1];
    for (int d = 0; d < sample.length; d++) {
      sample[d] = figure.applyAsDouble(d + 1);
    }
    return Estimate.ofSample(figure.applyAsDouble(0), sample);
  }
}
