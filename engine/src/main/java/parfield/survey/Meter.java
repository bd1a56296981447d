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
 * @param spectralFactor what readings are multiplied by for the colour of the light that is read,
 *     above 0; 1 for none (see {@link SpectralCorrection})
 */
public record Meter(
    String name,
    double immersion,
    boolean applied,
    double ambient,
    double scaleError,
    double repeatError,
    double positionError,
    double resolution,
    double spectralFactor) {
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
    if (!(spectralFactor > 0) || Double.isInfinite(spectralFactor)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "meter %s: spectral factor must be above 0; got %s",
              name,
              spectralFactor));
    }
  }

  /** A meter whose readings are not multiplied for the colour of the light. */
  public Meter(
      String name,
      double immersion,
      boolean applied,
      double ambient,
      double scaleError,
      double repeatError,
      double positionError,
      double resolution) {
    this(name, immersion, applied, ambient, scaleError, repeatError, positionError, resolution, 1);
  }

  private static void requireNotNegative(String name, String what, double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "meter %s: %s must be 0 or more; got %s", name, what, value));
    }
  }

  /**
   * This meter under the light of one rig: its readings are corrected for the colour of that light
   * as far as the correction goes, and what that leaves uncertain joins the scale error (root of
   * the sum of squares, JCGM 100).
   */
  public Meter under(SpectralCorrection correction) {
    return new Meter(
        name,
        immersion,
        applied,
        ambient,
        Math.hypot(scaleError, correction.error()),
        repeatError,
        positionError,
        resolution,
        correction.factor());
  }

  /**
   * PPFD from what the meter showed: ambient subtracted, immersion factor and spectral factor each
   * applied exactly once.
   *
   * @param shown the value on the display [µmol m⁻² s⁻¹]
   * @return PPFD [µmol m⁻² s⁻¹]; below 0 only if {@code shown} is below the ambient
   */
  public double ppfd(double shown) {
    return (shown - ambient) * (applied ? 1 : immersion) * spectralFactor;
  }

  /**
   * What the meter would show at a PPFD: the inverse of {@link #ppfd}.
   *
   * @param ppfd PPFD [µmol m⁻² s⁻¹]
   * @return the value on the display [µmol m⁻² s⁻¹], not rounded
   */
  public double shown(double ppfd) {
    return ppfd / spectralFactor / (applied ? 1 : immersion) + ambient;
  }
}
