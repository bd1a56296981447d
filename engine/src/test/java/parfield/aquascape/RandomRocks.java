package parfield.aquascape;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import parfield.optics.Reflectance;

/** Rocks about a tank of a metre, drawn at random. */
public final class RandomRocks {
  private RandomRocks() {}

  /** One to so many rocks of all shapes, many of them in special positions. */
  public static Aquascape draw(SplittableRandom random, int most) {
    List<Rock> rocks = new ArrayList<>();
    int count = random.nextInt(1, most + 1);
    for (int i = 0; i < count; i++) {
      Shape shape =
          switch (random.nextInt(4)) {
            case 0 -> box(random);
            case 1 -> ellipsoid(random);
            case 2 -> Meshes.of(box(random));
            default -> Meshes.of(ellipsoid(random), random.nextInt(4));
          };
      rocks.add(new Rock("rock " + i, shape, Reflectance.gray(random.nextDouble(0.9))));
    }
    return Aquascape.of(rocks);
  }

  static Box box(SplittableRandom random) {
    double yaw = random.nextInt(3) == 0 ? 0 : random.nextDouble(-4, 4);
    return new Box(
        coordinate(random),
        coordinate(random),
        coordinate(random),
        random.nextDouble(0.001, 0.4),
        random.nextDouble(0.001, 0.4),
        random.nextDouble(0.001, 0.4),
        yaw);
  }

  static Ellipsoid ellipsoid(SplittableRandom random) {
    return new Ellipsoid(
        coordinate(random),
        coordinate(random),
        coordinate(random),
        random.nextDouble(0.001, 0.3),
        random.nextDouble(0.001, 0.3),
        random.nextDouble(0.001, 0.3),
        random.nextDouble(-4, 4));
  }

  /** Often a round number, so that faces fall together and rays run along them. */
  static double coordinate(SplittableRandom random) {
    return random.nextInt(3) == 0 ? random.nextInt(0, 11) / 10.0 : random.nextDouble();
  }
}
