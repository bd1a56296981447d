package parfield.field;

import java.util.Locale;

/**
 * The light at a set of places. Immutable.
 *
 * <p>E_d is downwelling plane irradiance: what a cosine sensor that faces up reads; PPFD in the
 * trade's words.
 */
public final class LightField {
  private final Places places;
  private final double[] downwelling;

  /**
   * Wraps computed values.
   *
   * @param places where
   * @param downwelling E_d at each place [µmol m⁻² s⁻¹], copied
   * @throws IllegalArgumentException if the lengths differ or a value is not a number
   */
  public LightField(Places places, double[] downwelling) {
    if (places.size() != downwelling.length) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a field needs one value a place; got %d for %d",
              downwelling.length,
              places.size()));
    }
    for (int i = 0; i < downwelling.length; i++) {
      if (Double.isNaN(downwelling[i])) {
        throw new IllegalArgumentException(
            String.format(Locale.ROOT, "the field is not a number at place %d", i));
      }
    }
    this.places = places;
    this.downwelling = downwelling.clone();
  }

  /** Returns the places. */
  public Places places() {
    return places;
  }

  /** Returns E_d, the PPFD that a cosine sensor facing up reads at place {@code i}. */
  public double ppfd(int i) {
    return downwelling[i];
  }

  /** Returns a copy of E_d at all places [µmol m⁻² s⁻¹]. */
  public double[] ppfd() {
    return downwelling.clone();
  }
}
