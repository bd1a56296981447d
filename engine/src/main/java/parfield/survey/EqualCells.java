package parfield.survey;

import java.util.Locale;
import java.util.function.IntPredicate;
import parfield.field.Places;
import parfield.tank.Tank;

/**
 * Whether places are the centres of equal cells, so that a count of them is an area or a volume.
 */
final class EqualCells {
  /** Distance from a cell's centre that rounding may cause [m]. */
  private static final double ROUNDING = 1e-9;

  private EqualCells() {}

  /**
   * The number of layers of a grid of equal cells that fills the tank's plan, x fastest, then y.
   *
   * @throws IllegalArgumentException if the places are no such grid; the message names the first
   *     that is off
   */
  static int layers(Tank tank, Places places) {
    int size = places.size();
    if (size == 0) {
      throw new IllegalArgumentException("area and volume figures need a field; got no place");
    }
    int columns = run(size, i -> places.x(i) > places.x(i - 1));
    int plane = run(size, i -> places.depth(i) == places.depth(i - 1));
    int rows = plane / columns;
    for (int i = 0; i < size; i++) {
      int cell = i % plane;
      int column = cell % columns;
      int row = cell / columns;
      double x = tank.length() * (column + 0.5) / columns;
      double y = tank.width() * (row + 0.5) / rows;
      boolean sameDepth = places.depth(i) == places.depth(i - cell);
      if (rows * columns != plane
          || size % plane != 0
          || !sameDepth
          || Math.abs(places.x(i) - x) > ROUNDING
          || Math.abs(places.y(i) - y) > ROUNDING) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "area and volume figures need a field on equal cells (a plane or a volume of"
                    + " places); place %d at x %.3f, y %.3f, depth %.3f m is not the centre of one",
                i,
                places.x(i),
                places.y(i),
                places.depth(i)));
      }
    }
    return size / plane;
  }

  /** Refuses layers whose middles are not spread evenly over the water's depth. */
  static void requireLayersFillWater(Tank tank, Places places, int layers) {
    int plane = places.size() / layers;
    for (int k = 0; k < layers; k++) {
      double expected = tank.depth() * (k + 0.5) / layers;
      if (Math.abs(places.depth(k * plane) - expected) > ROUNDING) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "volume figures need layers that fill the water evenly; layer %d of %d is at depth"
                    + " %.3f m where its middle is %.3f m",
                k + 1,
                layers,
                places.depth(k * plane),
                expected));
      }
    }
  }

  /** Length of the run at the start in which each place follows on from the one before. */
  private static int run(int size, IntPredicate follows) {
    int length = 1;
    while (length < size && follows.test(length)) {
      length++;
    }
    return length;
  }
}
