package parfield.aquascape;

import java.util.Locale;

/**
 * A rectangular block, turned about the vertical.
 *
 * @param x of its centre [m]
 * @param y of its centre [m]
 * @param depth of its centre [m]
 * @param sizeX along its own first axis [m], above 0
 * @param sizeY along its own second axis [m], above 0
 * @param sizeZ downward [m], above 0
 * @param yaw of its first axis from +x toward +y [rad]
 */
public record Box(
    double x, double y, double depth, double sizeX, double sizeY, double sizeZ, double yaw)
    implements Shape {
  public Box {
    requireFinite("a box", x, y, depth, yaw);
    requireSizes("a box's sizes", sizeX, sizeY, sizeZ);
  }

  @Override
  public Bounds bounds() {
    double cosine = Math.abs(Math.cos(yaw));
    double sine = Math.abs(Math.sin(yaw));
    double halfX = (cosine * sizeX + sine * sizeY) / 2;
    double halfY = (sine * sizeX + cosine * sizeY) / 2;
    return new Bounds(
        x - halfX, x + halfX, y - halfY, y + halfY, depth - sizeZ / 2, depth + sizeZ / 2);
  }

  @Override
  public double volume() {
    return sizeX * sizeY * sizeZ;
  }

  static void requireFinite(String what, double x, double y, double depth, double yaw) {
    if (!Double.isFinite(x)
        || !Double.isFinite(y)
        || !Double.isFinite(depth)
        || !Double.isFinite(yaw)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "%s needs finite numbers; got centre x %s, y %s, depth %s m, yaw %s rad",
              what,
              x,
              y,
              depth,
              yaw));
    }
  }

  static void requireSizes(String what, double a, double b, double c) {
    for (double size : new double[] {a, b, c}) {
      if (!(size > 0) || Double.isInfinite(size)) {
        throw new IllegalArgumentException(
            String.format(Locale.ROOT, "%s must be above 0 m; got %s, %s, %s m", what, a, b, c));
      }
    }
  }
}
