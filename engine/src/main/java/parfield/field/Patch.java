package parfield.field;

import java.util.ArrayList;
import java.util.List;
import parfield.tank.Side;
import parfield.tank.Tank;

/**
 * A flat rectangular piece of a diffuse surface: bottom or covered pane.
 *
 * @param x of its centre [m]
 * @param y of its centre [m]
 * @param z depth of its centre [m]
 * @param nx unit normal into the water, x component
 * @param ny y component
 * @param nz z component, positive downward
 * @param sizeU size along the first in-plane axis (x, or y for the end panes) [m]
 * @param sizeV size along the second (y for the bottom, depth for panes) [m]
 * @param side the pane it lies on, or null for the bottom
 */
record Patch(
    double x,
    double y,
    double z,
    double nx,
    double ny,
    double nz,
    double sizeU,
    double sizeV,
    Side side) {
  /** Panes that reflect less than this diffusely are left out: below 0.2 % of the light. */
  private static final double LEAST_DIFFUSE = 0.015;

  /** How many patches the bottom is cut into, about. */
  private static final double BOTTOM_PATCHES = 54;

  /** The diffuse surfaces of a tank, bottom first. */
  static List<Patch> of(Tank tank) {
    double size = Math.sqrt(tank.length() * tank.width() / BOTTOM_PATCHES);
    int columns = count(tank.length(), size);
    int rows = count(tank.width(), size);
    int layers = count(tank.depth(), size * 1.3);
    List<Patch> patches = new ArrayList<>();
    double dx = tank.length() / columns;
    double dy = tank.width() / rows;
    double dz = tank.depth() / layers;
    if (tank.bottomReflectance() > 0) {
      for (int j = 0; j < rows; j++) {
        for (int i = 0; i < columns; i++) {
          patches.add(
              new Patch((i + 0.5) * dx, (j + 0.5) * dy, tank.depth(), 0, 0, -1, dx, dy, null));
        }
      }
    }
    for (Side side : Side.values()) {
      if (tank.walls().on(side).diffuseReflectance() < LEAST_DIFFUSE) {
        continue;
      }
      boolean end = side == Side.LEFT || side == Side.RIGHT;
      boolean low = side == Side.LEFT || side == Side.FRONT;
      for (int k = 0; k < layers; k++) {
        for (int i = 0; i < (end ? rows : columns); i++) {
          double z = (k + 0.5) * dz;
          double into = low ? 1 : -1;
          patches.add(
              end
                  ? new Patch(low ? 0 : tank.length(), (i + 0.5) * dy, z, into, 0, 0, dy, dz, side)
                  : new Patch((i + 0.5) * dx, low ? 0 : tank.width(), z, 0, into, 0, dx, dz, side));
        }
      }
    }
    return List.copyOf(patches);
  }

  private static int count(double span, double size) {
    return Math.max(3, (int) Math.round(span / size));
  }

  double area() {
    return sizeU * sizeV;
  }

  /** Diffuse reflectance of the surface it belongs to. */
  double reflectance(Tank tank) {
    return side == null ? tank.bottomReflectance() : tank.walls().on(side).diffuseReflectance();
  }

  /** A point on the patch, u and v from −1 to 1 [m]. */
  double[] point(double u, double v) {
    double a = u * sizeU / 2;
    double b = v * sizeV / 2;
    if (side == null) {
      return new double[] {x + a, y + b, z};
    }
    return nx != 0 ? new double[] {x, y + a, z + b} : new double[] {x + a, y, z + b};
  }

  /** Its corners in order. */
  double[][] corners() {
    return new double[][] {point(-1, -1), point(1, -1), point(1, 1), point(-1, 1)};
  }
}
