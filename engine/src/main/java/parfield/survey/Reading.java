package parfield.survey;

import java.util.Locale;
import parfield.tank.Place;

/**
 * One reading as the meter showed it.
 *
 * @param line where it stands in its file, 1-based; 0 if it has no file
 * @param place where the sensor stood
 * @param value what the meter showed [µmol m⁻² s⁻¹], 0 or more
 */
public record Reading(int line, Place place, double value) {
  public Reading {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a PPFD reading must be 0 or more; got %s on line %d", value, line));
    }
  }
}
