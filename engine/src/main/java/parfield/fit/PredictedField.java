package parfield.fit;

import java.util.List;
import java.util.Locale;
import parfield.field.Places;
import parfield.field.UnitFields;
import parfield.lamp.Setting;
import parfield.units.Estimate;

/**
 * The predicted field of one rig: the best estimate and a sample from the posterior, channels kept
 * apart so that any setting costs a weighted sum. Immutable.
 *
 * <p>All PPFD here is as the bench's meter would show it; the meter's own scale error, which moves
 * every value together, is kept apart in {@link #meterScale}.
 */
public final class PredictedField {
  private final UnitFields best;
  private final List<UnitFields> draws;
  private final double[][] discrepancy;
  private final double[] meterScale;

  /**
   * Wraps solved fields.
   *
   * @param best fields of the most plausible truth
   * @param draws fields of the sampled truths, at least one
   * @param discrepancy factor by which the model itself may miss, [draw][place], about 1; kept
   * @param meterScale true PPFD over shown PPFD, one a draw, copied
   */
  public PredictedField(
      UnitFields best, List<UnitFields> draws, double[][] discrepancy, double[] meterScale) {
    if (draws.isEmpty()
        || draws.size() != meterScale.length
        || draws.size() != discrepancy.length) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a predicted field needs one meter scale and discrepancy a draw; got %d, %d, %d",
              draws.size(),
              meterScale.length,
              discrepancy.length));
    }
    this.best = best;
    this.draws = List.copyOf(draws);
    this.discrepancy = discrepancy;
    this.meterScale = meterScale.clone();
  }

  /** Returns the places. */
  public Places places() {
    return best.places();
  }

  /** Returns the number of draws. */
  public int draws() {
    return draws.size();
  }

  /** True PPFD over shown PPFD in draw {@code draw}: one factor for all places and rigs. */
  public double meterScale(int draw) {
    return meterScale[draw];
  }

  /**
   * This prediction with the light at each place multiplied: by what a better solver makes of the
   * best estimate over what this one's did. The draws move along, so that intervals keep their
   * relative width.
   *
   * @param factors one a place, 0 or more
   */
  public PredictedField times(double[] factors) {
    return new PredictedField(
        best.times(factors),
        draws.stream().map(draw -> draw.times(factors)).toList(),
        discrepancy,
        meterScale);
  }

  /** Best estimate at the rig's own setting [µmol m⁻² s⁻¹]. */
  public double[] best() {
    return best.atRigSetting().ppfd();
  }

  /** Best estimate with every fixture at one setting [µmol m⁻² s⁻¹]. */
  public double[] best(Setting setting) {
    return best.at(setting).ppfd();
  }

  /** One draw at the rig's own setting [µmol m⁻² s⁻¹], discrepancy included. */
  public double[] draw(int draw) {
    return withDiscrepancy(draw, draws.get(draw).atRigSetting().ppfd());
  }

  /** One draw with every fixture at one setting [µmol m⁻² s⁻¹], discrepancy included. */
  public double[] draw(int draw, Setting setting) {
    return withDiscrepancy(draw, draws.get(draw).at(setting).ppfd());
  }

  /**
   * Best estimate of all channels of all fixtures, each times a weight, summed.
   *
   * @param weights [hanging][channel], such as output fractions, or seconds at full output
   */
  public double[] bestWeighted(double[][] weights) {
    return best.weighted(weights);
  }

  /**
   * One draw of all channels of all fixtures, each times a weight, summed, discrepancy included.
   *
   * @param weights [hanging][channel], such as output fractions, or seconds at full output
   */
  public double[] drawWeighted(int draw, double[][] weights) {
    return withDiscrepancy(draw, draws.get(draw).weighted(weights));
  }

  /**
   * Best estimate of one channel of all fixtures together at full output [µmol m⁻² s⁻¹].
   *
   * @param channel index in the order of every fixture's channels; fixtures alike
   */
  public double[] bestOfChannel(int channel) {
    return best.ofChannel(channel);
  }

  /**
   * One draw of one channel of all fixtures together at full output, discrepancy included: a draw
   * at any setting is the sum of these, each times its output.
   *
   * @param channel index in the order of every fixture's channels; fixtures alike
   */
  public double[] drawOfChannel(int draw, int channel) {
    return withDiscrepancy(draw, draws.get(draw).ofChannel(channel));
  }

  /** Best estimate with its 5–95 % interval at each place, as the bench's meter would show it. */
  public Estimate[] asShown() {
    return estimates(false);
  }

  /** Best estimate with its 5–95 % interval at each place, the meter's scale error included. */
  public Estimate[] withMeterScale() {
    return estimates(true);
  }

  private Estimate[] estimates(boolean scaled) {
    double[] centre = best();
    double[][] sample = new double[places().size()][draws.size()];
    for (int d = 0; d < draws.size(); d++) {
      double[] field = draw(d);
      double factor = scaled ? meterScale[d] : 1;
      for (int i = 0; i < field.length; i++) {
        sample[i][d] = field[i] * factor;
      }
    }
    Estimate[] estimates = new Estimate[centre.length];
    for (int i = 0; i < centre.length; i++) {
      estimates[i] = Estimate.ofSample(centre[i], sample[i]);
    }
    return estimates;
  }

  private double[] withDiscrepancy(int draw, double[] values) {
    for (int i = 0; i < values.length; i++) {
      values[i] *= discrepancy[draw][i];
    }
    return values;
  }
}
