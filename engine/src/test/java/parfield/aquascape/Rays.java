package parfield.aquascape;

import java.util.SplittableRandom;

/** Rays as origin and unit direction, drawn at random. */
final class Rays {
  private Rays() {}

  /** A ray from somewhere about a tank of a metre, toward the bounds of the rocks or past them. */
  static double[] toward(SplittableRandom random, Aquascape rocks) {
    Bounds bounds = rocks.bounds().orElseThrow();
    double x = random.nextDouble(-1, 2);
    double y = random.nextDouble(-1, 2);
    double z = random.nextDouble(-1, 2);
    return between(
        x,
        y,
        z,
        bounds.fromX() + bounds.sizeX() * random.nextDouble(-0.2, 1.2),
        bounds.fromY() + bounds.sizeY() * random.nextDouble(-0.2, 1.2),
        bounds.fromDepth() + bounds.sizeZ() * random.nextDouble(-0.2, 1.2));
  }

  /** A ray along one axis or in the plane of two, through round coordinates. */
  static double[] alongAxes(SplittableRandom random) {
    double[] ray = new double[6];
    for (int axis = 0; axis < 3; axis++) {
      ray[axis] = RandomRocks.coordinate(random) + random.nextInt(-1, 2);
      ray[3 + axis] = random.nextInt(-1, 2);
      if (ray[3 + axis] == 0 && random.nextBoolean()) {
        ray[3 + axis] = -0.0;
      }
    }
    return unit(ray);
  }

  static double[] between(double x, double y, double z, double toX, double toY, double toZ) {
    return unit(new double[] {x, y, z, toX - x, toY - y, toZ - z});
  }

  private static double[] unit(double[] ray) {
    double length = Math.sqrt(ray[3] * ray[3] + ray[4] * ray[4] + ray[5] * ray[5]);
    if (length > 0) {
      ray[3] /= length;
      ray[4] /= length;
      ray[5] /= length;
    }
    return ray;
  }
}
