package parfield.plan;

import java.util.List;
import java.util.Objects;
import parfield.optics.Water;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/**
 * A tank of a list, to be told a starting point for.
 *
 * @param name what a person calls it, such as "cube 60"
 * @param tank its size and what is known of its condition
 */
public record NamedTank(String name, Tank tank) {
  /** Bottom, water and panes where a list of sizes states none; common practice, no source. */
  private static final double BOTTOM = 0.3;

  private static final double YELLOWING = 0.05;

  public NamedTank {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(tank, "tank");
    if (name.isBlank()) {
      throw new IllegalArgumentException("a tank of a list needs a name; got none");
    }
  }

  /**
   * A tank of which only the inner size is known: open, panes with a thin film and the back grown
   * over, a bottom of sand, clear water that is still. Common practice, no source.
   *
   * @param name what a person calls it
   * @param length along the front [m]
   * @param width from front to back [m]
   * @param depth of the water [m]
   */
  public static NamedTank ofSize(String name, double length, double width, double depth) {
    Wall film = Wall.film();
    return new NamedTank(
        name,
        Tank.of(length, width, depth)
            .withWalls(new Walls(film, film, film, Wall.coralline()))
            .withBottomReflectance(BOTTOM)
            .withWater(Water.seaWater(YELLOWING)));
  }

  /** Tanks of common sizes, in plain proportions; common practice, no source. */
  public static List<NamedTank> common() {
    return List.of(
        ofSize("small", 0.45, 0.45, 0.40),
        ofSize("cube", 0.60, 0.60, 0.50),
        ofSize("long and shallow", 1.20, 0.60, 0.30),
        ofSize("four-foot", 1.20, 0.60, 0.50),
        ofSize("six-foot", 1.80, 0.60, 0.60));
  }
}
