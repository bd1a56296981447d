package parfield.plan;

/**
 * How good a choice is, as one number: what the search raises and what options are ranked by.
 *
 * <p>Merit = probability that all demands are met + mean part of each demand that is met + {@value
 * #COVERAGE} × mean coverage − {@value #FIXTURE} for each fixture after the first. The first term
 * decides where something meets the demands, the second where nothing does, the third between
 * choices that do equally well; another fixture must earn its keep.
 */
final class Merit {
  /** Worth of coverage beyond what is demanded. */
  static final double COVERAGE = 0.2;

  /** Cost of each fixture after the first. */
  static final double FIXTURE = 0.03;

  private Merit() {}

  /** Merit in one truth. */
  static double of(boolean allMet, double meanPart, double meanCoverage) {
    return (allMet ? 1 : 0) + meanPart + COVERAGE * meanCoverage;
  }

  /**
   * How much of a demand is met: 1 if it is, else the ratio of the value to the limit it misses.
   *
   * @param value 0 or more
   * @param least lower limit, 0 or more
   * @param most upper limit, may be infinite
   */
  static double part(double value, double least, double most) {
    if (value < least) {
      return value / least;
    }
    return value > most ? most / value : 1;
  }
}
