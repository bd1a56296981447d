package parfield.tank;

import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * Where light may enter: the inner rectangle less a rim and everything opaque, under a lid.
 *
 * @param rim width of the opaque rim along all four panes [m], 0 or more
 * @param opaque braces and other opaque rectangles over the water
 * @param lid what lies over the opening
 */
public record Opening(double rim, List<Rectangle> opaque, Lid lid) {
  public Opening {
    if (!(rim >= 0)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "a rim must be 0 m or more; got %s m", rim));
    }
    opaque = List.copyOf(opaque);
    Objects.requireNonNull(lid, "lid");
  }

  /** The whole inner rectangle, nothing in the way. */
  public static Opening free() {
    return new Opening(0, List.of(), new Lid.None());
  }
}
