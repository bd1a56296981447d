package parfield.plan;

import java.util.Locale;
import java.util.Objects;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.tank.Tank;

/**
 * A named box of water: where a kind of coral shall live.
 *
 * @param name what the bench calls it
 * @param area seen from above
 * @param fromDepth upper end [m], 0 or more
 * @param toDepth lower end [m], above {@code fromDepth}
 */
public record Zone(String name, Rectangle area, double fromDepth, double toDepth) {
  public Zone {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(area, "area");
    if (!(fromDepth >= 0) || !(toDepth > fromDepth) || Double.isInfinite(toDepth)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "zone %s must run downward from a depth of 0 m or more; got %s to %s m",
              name,
              fromDepth,
              toDepth));
    }
  }

  /** A zone over the whole floor of a tank between two depths [m]. */
  public static Zone depths(String name, Tank tank, double fromDepth, double toDepth) {
    return new Zone(name, new Rectangle(0, tank.length(), 0, tank.width()), fromDepth, toDepth);
  }

  /** Returns whether a place lies inside, edges included. */
  public boolean contains(Place place) {
    return area.contains(place.x(), place.y())
        && place.depth() >= fromDepth
        && place.depth() <= toDepth;
  }

  /**
   * Checks that the zone lies in the water.
   *
   * @throws IllegalArgumentException if it reaches outside; the message names the zone and the edge
   */
  void checkInside(Tank tank) {
    checkEnd("length", area.fromX(), area.toX(), tank.length());
    checkEnd("width", area.fromY(), area.toY(), tank.width());
    checkEnd("water depth", fromDepth, toDepth, tank.depth());
  }

  private void checkEnd(String along, double from, double to, double limit) {
    // Half a millimetre of grace: lengths arrive converted from centimetres or inches.
    double grace = 5e-4;
    if (from < -grace || to > limit + grace) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "zone %s runs from %s to %s m along the tank's %s, which runs from 0 to %s m; "
                  + "move it inside",
              name,
              from,
              to,
              along,
              limit));
    }
  }
}
