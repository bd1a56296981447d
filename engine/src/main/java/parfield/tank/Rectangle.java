package parfield.tank;

import java.util.Locale;

/**
 * A rectangle seen from above.
 *
 * @param fromX left edge [m]
 * @param toX right edge [m], above {@code fromX}
 * @param fromY front edge [m]
 * @param toY back edge [m], above {@code fromY}
 */
public record Rectangle(double fromX, double toX, double fromY, double toY) {
  public Rectangle {
    if (!(toX > fromX) || !(toY > fromY)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a rectangle must have some size; got x %s to %s m, y %s to %s m",
              fromX,
              toX,
              fromY,
              toY));
    }
  }

  /** Returns whether a point lies inside, edges included. */
  public boolean contains(double x, double y) {
    return x >= fromX && x <= toX && y >= fromY && y <= toY;
  }

  /** Area [m²]. */
  public double area() {
    return (toX - fromX) * (toY - fromY);
  }
}
