package parfield.survey;

import java.util.Objects;
import parfield.tank.Place;

/**
 * A PPFD and where it is.
 *
 * @param place where
 * @param ppfd there [µmol m⁻² s⁻¹]
 */
public record Spot(Place place, double ppfd) {
  public Spot {
    Objects.requireNonNull(place, "place");
  }
}
