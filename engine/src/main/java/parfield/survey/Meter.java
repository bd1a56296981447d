package parfield.survey;

import java.util.Locale;
import java.util.Objects;

/**
 * A quantum sensor and what is known of its errors.
 *
 * @param name what the bench calls it
 * @param immersion immersion factor: true over shown value when the sensor is under water, above 0
 * @param applied whether the shown values already contain the immersion factor
 * @param ambient what it shows with the fixture off [µmol m⁻² s⁻¹], subtracted first
 * @param scaleError standard relative error that all its readings share; never averages out
 * @param repeatError standard relative error of each reading by itself
 * @param positionError standard error of the sensor's place along each of x and y [m]
 * @param resolution smallest step of the display [µmol m⁻² s⁻¹], 0 or more
 */
public record Meter(
    String name,
    double immersion,
    boolean applied,
    double ambient,
    double scaleError,
    double repeatError,
    double positionError,
    double resolution) {
  public Meter {
    Objects.requireNonNull(name, "name");
    if (!(immersion > 0) || Double.isInfinite(immersion)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "meter %s: immersion factor must be above 0; got %s", name, immersion));
    }
    requireNotNegative(name, "ambient", ambient);
    requireNotNegative(name, "scale error", scaleError);
    requireNotNegative(name, "repeat error", repeatError);
    requireNotNegative(name, "position error", positionError);
    requireNotNegative(name, "resolution", resolution);
  }

  private static void requireNotNegative(String name, String what, double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "meter %s: %s must be 0 or more; got %s", name, what, value));
    }
  }

  /**
   * PPFD from what the meter showed: ambient subtracted, immersion factor applied exactly once.
   *
   * @param shown the value on the display [µmol m⁻² s⁻¹]
   * @return PPFD [µmol m⁻² s⁻¹]; below 0 only if {@code shown} is below the ambient
   */
  public double ppfd(double shown) {
    return (shown - ambient) * (applied ? 1 : immersion);
  }

  /**
   * What the meter would show at a PPFD: the inverse of {@link #ppfd}.
   *
   * @param ppfd PPFD [µmol m⁻² s⁻¹]
   * @return the value on the display [µmol m⁻² s⁻¹], not rounded
   */
  public double shown(double ppfd) {
    return ppfd / (applied ? 1 : immersion) + ambient;
  }
}
