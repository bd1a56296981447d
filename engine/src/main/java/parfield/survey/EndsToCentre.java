package parfield.survey;

import java.util.Optional;
import java.util.OptionalDouble;
import parfield.field.Places;
import parfield.tank.Tank;

/**
 * Ends-to-centre ratio: mean PPFD of the end columns over mean of the centre columns.
 *
 * <p>The ends are the outer sixth of the length on either side, the centre is the middle third: of
 * six equal columns the first and the last against the two in the middle. Every value counts once,
 * at its own place; nothing is interpolated. Common practice wants 0.75 or more of spaced fixtures
 * (no source).
 *
 * @param leftEnd the left end runs from x = 0 to here [m]
 * @param centreFrom where the centre begins [m]
 * @param centreTo where the centre ends [m]
 * @param rightEnd the right end runs from here to the right pane [m]
 * @param endCount values in both ends together, at least one
 * @param endMean mean PPFD of them [µmol m⁻² s⁻¹]
 * @param centreCount values in the centre, at least one
 * @param centreMean mean PPFD of them [µmol m⁻² s⁻¹]
 */
public record EndsToCentre(
    double leftEnd,
    double centreFrom,
    double centreTo,
    double rightEnd,
    int endCount,
    double endMean,
    int centreCount,
    double centreMean) {
  /** A cell centre on the very edge of a zone belongs to it, whatever the rounding [m]. */
  private static final double EDGE = 1e-9;

  /**
   * The ratio, 0 or more, or none if the centre is dark.
   *
   * @return mean of the ends over mean of the centre
   */
  public OptionalDouble ratio() {
    return centreMean > 0 ? OptionalDouble.of(endMean / centreMean) : OptionalDouble.empty();
  }

  /**
   * Splits values by their x.
   *
   * @return none if the ends together or the centre hold no value
   */
  static Optional<EndsToCentre> of(Tank tank, Places places, double[] ppfd) {
    double length = tank.length();
    double leftEnd = length / 6;
    double centreFrom = length / 3;
    double centreTo = length * 2 / 3;
    double rightEnd = length * 5 / 6;
    double endSum = 0;
    double centreSum = 0;
    int endCount = 0;
    int centreCount = 0;
    for (int i = 0; i < ppfd.length; i++) {
      double x = places.x(i);
      if (x <= leftEnd + EDGE || x >= rightEnd - EDGE) {
        endSum += ppfd[i];
        endCount++;
      } else if (x >= centreFrom - EDGE && x <= centreTo + EDGE) {
        centreSum += ppfd[i];
        centreCount++;
      }
    }
    if (endCount == 0 || centreCount == 0) {
      return Optional.empty();
    }
    return Optional.of(
        new EndsToCentre(
            leftEnd,
            centreFrom,
            centreTo,
            rightEnd,
            endCount,
            endSum / endCount,
            centreCount,
            centreSum / centreCount));
  }
}
