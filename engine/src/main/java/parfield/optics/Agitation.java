package parfield.optics;

/**
 * How much the water surface moves: the variance of its slope.
 *
 * <p>The variances of the moving surfaces are those that Cox and Munk (1954, J. Opt. Soc. Am.
 * 44:838) give for winds of 1 and 5 m/s, σ² = 0.003 + 0.00512 U; which aquarium pump they stand for
 * is common practice, no source.
 */
public enum Agitation {
  /** A mirror. */
  STILL(0),
  /** Ripples of a gentle return flow. */
  GENTLE(0.00812),
  /** Wave makers at work. */
  STRONG(0.0286);

  private final double slopeVariance;

  Agitation(double slopeVariance) {
    this.slopeVariance = slopeVariance;
  }

  /** Total variance of the slope, both directions together: σ², a pure number. */
  public double slopeVariance() {
    return slopeVariance;
  }
}
