package parfield.aquascape;

import java.util.List;
import java.util.Optional;

/**
 * The rocks of a tank, and what a straight ray meets among them.
 *
 * <p>Immutable and thread-safe; the queries allocate nothing and never return NaN. A ray may start
 * anywhere; one that leaves a surface should start {@link #OFF_SURFACE} off it along the normal,
 * else rounding may let it meet that surface again. Equal rocks make equal aquascapes; the hash is
 * computed once.
 */
public final class Aquascape {
  /** How far off a surface a ray that leaves it should start [m]: beyond rounding, below notice. */
  public static final double OFF_SURFACE = 1e-7;

  private static final Aquascape NONE = new Aquascape(List.of());

  private final List<Rock> rocks;
  private final Hierarchy hierarchy;
  private final int hash;

  private Aquascape(List<Rock> rocks) {
    this.rocks = rocks;
    hierarchy = Hierarchy.of(rocks);
    hash = rocks.hashCode();
  }

  /** No rock at all. */
  public static Aquascape none() {
    return NONE;
  }

  /**
   * The aquascape of some rocks, which may touch and overlap.
   *
   * @param rocks each under its own name
   * @throws IllegalArgumentException if two share a name
   */
  public static Aquascape of(List<Rock> rocks) {
    if (rocks.isEmpty()) {
      return NONE;
    }
    List<Rock> kept = List.copyOf(rocks);
    for (int i = 0; i < kept.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (kept.get(i).name().equals(kept.get(j).name())) {
          throw new IllegalArgumentException(
              "two rocks are called " + kept.get(i).name() + "; each needs its own name");
        }
      }
    }
    return new Aquascape(kept);
  }

  /** The rocks, in the order given. */
  public List<Rock> rocks() {
    return rocks;
  }

  /** Returns whether there is no rock. */
  public boolean isEmpty() {
    return rocks.isEmpty();
  }

  /** The smallest upright box about all rocks; empty where there is none. */
  public Optional<Bounds> bounds() {
    return rocks.stream().map(rock -> rock.shape().bounds()).reduce(Bounds::and);
  }

  /**
   * Finds the first surface that a ray meets, from outside or from within a rock.
   *
   * @param ox origin x [m]
   * @param oy origin y [m]
   * @param oz depth of the origin [m]
   * @param dx direction, x component; of unit length for distances in metres
   * @param dy y component
   * @param dz downward component
   * @param limit surfaces at this distance or beyond do not count [m]
   * @param hit filled with distance, rock and normal; after a miss its rock is −1
   * @return whether a surface was met before the limit
   */
  public boolean nearest(
      double ox, double oy, double oz, double dx, double dy, double dz, double limit, RockHit hit) {
    return hierarchy.nearest(ox, oy, oz, dx, dy, dz, limit, hit);
  }

  /**
   * Returns whether a ray meets any surface before a limit: quicker than {@link #nearest}.
   *
   * @param ox origin x [m]
   * @param oy origin y [m]
   * @param oz depth of the origin [m]
   * @param dx direction, x component; of unit length for a limit in metres
   * @param dy y component
   * @param dz downward component
   * @param limit surfaces at this distance or beyond do not count [m]
   */
  public boolean blocks(
      double ox, double oy, double oz, double dx, double dy, double dz, double limit) {
    return hierarchy.blocks(ox, oy, oz, dx, dy, dz, limit);
  }

  /** Returns whether a place lies inside a rock. */
  public boolean inside(double x, double y, double depth) {
    return hierarchy.inside(x, y, depth);
  }

  /** The first rock that a place lies inside of; empty in open water. Slow: for messages. */
  public Optional<Rock> at(double x, double y, double depth) {
    return inside(x, y, depth)
        ? rocks.stream().filter(rock -> Hierarchy.of(List.of(rock)).inside(x, y, depth)).findFirst()
        : Optional.empty();
  }

  @Override
  public boolean equals(Object other) {
    return this == other
        || (other instanceof Aquascape that && that.hash == hash && that.rocks.equals(rocks));
  }

  @Override
  public int hashCode() {
    return hash;
  }

  @Override
  public String toString() {
    return "Aquascape" + rocks.stream().map(Rock::name).toList();
  }
}
