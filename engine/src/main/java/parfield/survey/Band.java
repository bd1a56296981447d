package parfield.survey;

import java.util.Locale;
import java.util.Objects;

/**
 * A wanted range of PPFD.
 *
 * @param name what the bench calls it
 * @param from lower end [µmol m⁻² s⁻¹], 0 or more
 * @param to upper end [µmol m⁻² s⁻¹], above {@code from}
 */
public record Band(String name, double from, double to) {
  public Band {
    Objects.requireNonNull(name, "name");
    if (!(from >= 0) || !(to > from)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "band %s must run upward from 0 or more; got %s to %s", name, from, to));
    }
  }

  /** Returns whether a PPFD lies inside, both ends included. */
  public boolean contains(double ppfd) {
    return ppfd >= from && ppfd <= to;
  }
}
