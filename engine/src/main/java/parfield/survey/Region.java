package parfield.survey;

import java.util.Objects;
import parfield.tank.Rectangle;

/**
 * A named part of the tank, seen from above.
 *
 * @param name what the bench calls it
 * @param rectangle where it is, edges included
 */
public record Region(String name, Rectangle rectangle) {
  public Region {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(rectangle, "rectangle");
  }
}
