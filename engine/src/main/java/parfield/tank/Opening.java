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
 * @param freeboard how far panes, rim, braces and lid stand above the water line [m], 0 or more
 */
public record Opening(double rim, List<Rectangle> opaque, Lid lid, double freeboard) {
  public Opening {
    if (!(freeboard >= 0) || Double.isInfinite(freeboard)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "the freeboard above the water must be 0 m or more; got %s m",
              freeboard));
    }
    if (!(rim >= 0)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "a rim must be 0 m or more; got %s m", rim));
    }
    opaque = List.copyOf(opaque);
    Objects.requireNonNull(lid, "lid");
  }

  /** An opening at the water line itself. */
  public Opening(double rim, List<Rectangle> opaque, Lid lid) {
    this(rim, opaque, lid, 0);
  }

  /** The whole inner rectangle, nothing in the way. */
  public static Opening free() {
    return new Opening(0, List.of(), new Lid.None());
  }
}
