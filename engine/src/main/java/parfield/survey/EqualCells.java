package parfield.survey;

import java.util.Locale;
import java.util.function.IntPredicate;
import parfield.field.Cells;
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
   * The equal cells of the tank's plan, layer by layer, whose centres places are: all of them, or
   * all that are not in rock.
   *
   * @throws IllegalArgumentException if the places are no such grid; the message names the first
   *     that is off
   */
  static Cells of(Tank tank, Places places) {
    if (places.size() == 0) {
      throw new IllegalArgumentException("area and volume figures need a field; got no place");
    }
    Cells cells = places.cells().orElseGet(() -> complete(places));
    int plane = cells.columns() * cells.rows();
    for (int i = 0; i < places.size(); i++) {
      boolean counted = i < cells.size();
      int cell = counted ? cells.cell(i) : 0;
      int row = cell % plane / cells.columns();
      double x = tank.length() * (cell % plane % cells.columns() + 0.5) / cells.columns();
      double y = tank.width() * (row + 0.5) / cells.rows();
      boolean sameDepth = places.depth(i) == places.depth(cells.first(cell / plane));
      if (!counted
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
    return cells;
  }

  /** The grid that the first places of a list run along. */
  private static Cells complete(Places places) {
    int size = places.size();
    int columns = run(size, i -> places.x(i) > places.x(i - 1));
    int plane = run(size, i -> places.depth(i) == places.depth(i - 1));
    return Cells.complete(columns, plane / columns, size / plane);
  }

  /** Refuses layers whose middles are not spread evenly over the water's depth. */
  static void requireLayersFillWater(Tank tank, Places places, Cells cells) {
    int layers = cells.layers();
    for (int k = 0; k < layers; k++) {
      double expected = tank.depth() * (k + 0.5) / layers;
      int first = cells.first(k);
      boolean allRock = first == cells.first(k + 1);
      if (!allRock && Math.abs(places.depth(first) - expected) > ROUNDING) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "volume figures need layers that fill the water evenly; layer %d of %d is at depth"
                    + " %.3f m where its middle is %.3f m",
                k + 1,
                layers,
                places.depth(first),
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
