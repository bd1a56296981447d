package parfield.field;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parfield.tank.Place;
import parfield.tank.Tank;

/**
 * Equal cells in rows and columns, layer by layer, of which those in rock are left out: they are no
 * water, so that no figure counts them. A cell is where its centre is. Immutable.
 */
public final class Cells {
  private final int columns;
  private final int rows;
  private final int layers;

  /** The cell of each place, ascending: x fastest, then y, then layer. */
  private final int[] cellOf;

  private Cells(int columns, int rows, int layers, int[] cellOf) {
    this.columns = columns;
    this.rows = rows;
    this.layers = layers;
    this.cellOf = cellOf;
  }

  /**
   * The cells whose centres are not in a rock.
   *
   * @param tank with its rocks
   * @param columns cells along the first axis, 1 or more
   * @param rows cells along the second, 1 or more
   * @param layers of so many cells, 1 or more
   * @param centres of all cells, x fastest, then y, then layer
   */
  static Cells inWater(Tank tank, int columns, int rows, int layers, List<Place> centres) {
    int[] water =
        IntStream.range(0, centres.size()).filter(i -> !inRock(tank, centres.get(i))).toArray();
    return new Cells(columns, rows, layers, water);
  }

  /** All of so many cells, none in rock. */
  public static Cells complete(int columns, int rows, int layers) {
    return new Cells(columns, rows, layers, IntStream.range(0, columns * rows * layers).toArray());
  }

  private static boolean inRock(Tank tank, Place place) {
    return tank.aquascape().inside(place.x(), place.y(), place.depth());
  }

  /** Returns the number of cells along the first axis. */
  public int columns() {
    return columns;
  }

  /** Returns the number of cells along the second axis. */
  public int rows() {
    return rows;
  }

  /** Returns the number of layers. */
  public int layers() {
    return layers;
  }

  /** Returns the number of cells in water. */
  public int size() {
    return cellOf.length;
  }

  /** Returns the number of cells in water above a layer: the index of its first place. */
  public int first(int layer) {
    int found = Arrays.binarySearch(cellOf, layer * columns * rows);
    return found < 0 ? -found - 1 : found;
  }

  /** The cell of a place among all cells, those in rock too: x fastest, then y, then layer. */
  public int cell(int place) {
    return cellOf[place];
  }

  /**
   * Values of all cells of a layer, for a picture: a cell in rock takes the value of the nearest
   * one in water along rows and columns.
   *
   * @param values one a cell in water
   * @return one a cell, x fastest
   * @throws IllegalArgumentException if there are not as many values as cells in water, several
   *     layers, or no water at all
   */
  public double[] whole(double[] values) {
    if (values.length != cellOf.length || layers != 1 || cellOf.length == 0) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a picture needs one value for each cell in water of one layer, one at least; got %d"
                  + " for %d in %d",
              values.length,
              cellOf.length,
              layers));
    }
    double[] whole = new double[columns * rows];
    boolean[] known = new boolean[whole.length];
    int[] queue = new int[whole.length];
    int waiting = 0;
    for (int i = 0; i < values.length; i++) {
      whole[cellOf[i]] = values[i];
      known[cellOf[i]] = true;
      queue[waiting++] = cellOf[i];
    }
    for (int at = 0; at < waiting; at++) {
      int column = queue[at] % columns;
      int row = queue[at] / columns;
      for (int side = 0; side < 4; side++) {
        int c = column + (side == 0 ? 1 : side == 1 ? -1 : 0);
        int r = row + (side == 2 ? 1 : side == 3 ? -1 : 0);
        int next = r * columns + c;
        if (c >= 0 && c < columns && r >= 0 && r < rows && !known[next]) {
          whole[next] = whole[queue[at]];
          known[next] = true;
          queue[waiting++] = next;
        }
      }
    }
    return whole;
  }
}
