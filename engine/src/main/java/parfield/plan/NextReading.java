package parfield.plan;

import java.util.Locale;
import java.util.Objects;
import parfield.tank.Place;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/**
 * A reading that would verify or sharpen a recommendation, taken with the recommended rig at the
 * recommended dials.
 *
 * @param place where to read
 * @param shown what the bench's meter should show after its known corrections, with the interval
 *     that holds the reading with 90 % probability, its repeat error included [µmol m⁻² s⁻¹]
 * @param spreadLeft variance of the predicted field that is left once this reading and those before
 *     it are known, as a share of the variance now, 0 to 1
 */
public record NextReading(Place place, Estimate shown, double spreadLeft) {
  public NextReading {
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(shown, "shown");
  }

  /** Where to read and what to expect, as a sentence. */
  public String inWords(LengthUnit unit) {
    return String.format(
        Locale.ROOT,
        "At x %s, y %s, depth %s %s the meter should show %.0f (%.0f–%.0f) %s.",
        Wording.number(unit.fromMetres(place.x()), 1),
        Wording.number(unit.fromMetres(place.y()), 1),
        Wording.number(unit.fromMetres(place.depth()), 1),
        unit.symbol(),
        shown.value(),
        shown.low(),
        shown.high(),
        Wording.PPFD);
  }
}
