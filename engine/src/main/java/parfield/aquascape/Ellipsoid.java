package parfield.aquascape;

/**
 * An ellipsoid with one axis upright, turned about the vertical.
 *
 * @param x of its centre [m]
 * @param y of its centre [m]
 * @param depth of its centre [m]
 * @param semiX half its length along its own first axis [m], above 0
 * @param semiY half its length along its own second axis [m], above 0
 * @param semiZ half its height [m], above 0
 * @param yaw of its first axis from +x toward +y [rad]
 */
public record Ellipsoid(
    double x, double y, double depth, double semiX, double semiY, double semiZ, double yaw)
    implements Shape {
  public Ellipsoid {
    Box.requireFinite("an ellipsoid", x, y, depth, yaw);
    Box.requireSizes("an ellipsoid's semi-axes", semiX, semiY, semiZ);
  }

  @Override
  public Bounds bounds() {
    double halfX = Math.hypot(Math.cos(yaw) * semiX, Math.sin(yaw) * semiY);
    double halfY = Math.hypot(Math.sin(yaw) * semiX, Math.cos(yaw) * semiY);
    return new Bounds(x - halfX, x + halfX, y - halfY, y + halfY, depth - semiZ, depth + semiZ);
  }

  @Override
  public double volume() {
    return 4 * Math.PI / 3 * semiX * semiY * semiZ;
  }
}
