package parfield.photon;

import parfield.optics.PhaseFunction;

/**
 * A horizontal layer of one medium, with what it does to each waveband.
 *
 * <p>Scattering is drawn for one coefficient that all wavebands share; where a waveband scatters
 * otherwise, its weight makes up for it, so that one path serves all. Immutable.
 */
final class Layer {
  /** A step of the table dims no waveband by more than this exponent. */
  private static final double STEP_EXPONENT = 0.02;

  private static final int MOST_STEPS = 4096;

  final double top;
  final double bottom;
  final double index;

  /** Coefficient that the free paths are drawn for [m⁻¹]. */
  final double scattering;

  final PhaseFunction phase;

  /** Weight of each waveband at a scattering: its own coefficient over the common one. */
  final double[] scatteringRatio;

  /** Whether all wavebands scatter alike. */
  final boolean gray;

  /** What dims each waveband along a path beyond what is drawn [m⁻¹]. */
  private final double[] dimming;

  private final double step;
  private final double[][] table;

  /**
   * Makes a layer.
   *
   * @param top depth of its upper face [m]
   * @param bottom depth of its lower face [m]; may be infinite
   * @param index refractive index
   * @param absorption by waveband [m⁻¹]
   * @param scattering by waveband [m⁻¹]
   * @param phase how it scatters
   * @param longest straight path that is common [m]; longer ones are right, but slower
   */
  Layer(
      double top,
      double bottom,
      double index,
      double[] absorption,
      double[] scattering,
      PhaseFunction phase,
      double longest) {
    this.top = top;
    this.bottom = bottom;
    this.index = index;
    this.phase = phase;
    int bands = absorption.length;
    double mean = 0;
    for (double b : scattering) {
      mean += b / bands;
    }
    this.scattering = mean;
    scatteringRatio = new double[bands];
    dimming = new double[bands];
    boolean alike = true;
    double strongest = 0;
    for (int k = 0; k < bands; k++) {
      scatteringRatio[k] = mean > 0 ? scattering[k] / mean : 1;
      // The mean of equal numbers may miss them by a rounding.
      boolean same = Math.abs(scattering[k] - mean) <= 1e-12 * mean;
      alike &= same;
      dimming[k] = absorption[k] + (same ? 0 : scattering[k] - mean);
      strongest = Math.max(strongest, Math.abs(dimming[k]));
    }
    gray = alike;
    if (bands == 1 || strongest == 0) {
      step = 0;
      table = new double[0][];
    } else {
      step = STEP_EXPONENT / strongest;
      int steps = (int) Math.min(MOST_STEPS, Math.ceil(longest / step) + 1);
      table = new double[steps][bands];
      for (int i = 0; i < steps; i++) {
        for (int k = 0; k < bands; k++) {
          table[i][k] = Math.exp(-dimming[k] * step * i);
        }
      }
    }
  }

  /** Beam attenuation c = a + b of one waveband [m⁻¹]. */
  double beamAttenuation(int band) {
    return dimming[band] + scattering;
  }

  /**
   * Dims every waveband along a straight path: w ← w e^(−d s).
   *
   * <p>The exponential is one of a table times the cubic of what is left of the exponent, at most
   * 0.02: relative error below 7e-9, without a call of the exponential.
   *
   * @param weight by waveband
   * @param distance [m], 0 or more
   */
  void attenuate(double[] weight, double distance) {
    double position = distance / step;
    if (!(position < table.length)) {
      for (int k = 0; k < weight.length; k++) {
        weight[k] *= Math.exp(-dimming[k] * distance);
      }
      return;
    }
    int i = (int) position;
    double rest = -(distance - i * step);
    double[] row = table[i];
    for (int k = 0; k < weight.length; k++) {
      double e = dimming[k] * rest;
      weight[k] *= row[k] * (1 + e * (1 + e * (0.5 + e * (1.0 / 6))));
    }
  }
}
