package parfield.formats;

import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Free space above the water: what a fixture must fit into.
 *
 * @param height above the still water surface [m], if stated
 * @param length along the tank's length [m], if stated
 * @param width from front to back [m], if stated
 */
public record Room(OptionalDouble height, OptionalDouble length, OptionalDouble width) {
  public Room {
    Objects.requireNonNull(height, "height");
    Objects.requireNonNull(length, "length");
    Objects.requireNonNull(width, "width");
  }

  /** Nothing stated. */
  public static Room unbounded() {
    return new Room(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
  }
}
