package parfield.field;

import java.util.List;
import java.util.Locale;
import parfield.tank.Place;
import parfield.tank.Tank;

/** Places in the water, in a fixed order. Immutable; lengths in metres, depth positive downward. */
public final class Places {
  private final double[] x;
  private final double[] y;
  private final double[] depth;

  private Places(double[] x, double[] y, double[] depth) {
    this.x = x;
    this.y = y;
    this.depth = depth;
  }

  /** The places of a list, in its order. */
  public static Places of(List<Place> places) {
    int n = places.size();
    double[] x = new double[n];
    double[] y = new double[n];
    double[] depth = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = places.get(i).x();
      y[i] = places.get(i).y();
      depth[i] = places.get(i).depth();
    }
    return new Places(x, y, depth);
  }

  /**
   * Centres of equal cells of one depth plane: x fastest, then y.
   *
   * @param tank the tank
   * @param depth of the plane [m]
   * @param columns cells along x
   * @param rows cells along y
   */
  public static Places plane(Tank tank, double depth, int columns, int rows) {
    return cells(tank, columns, rows, new double[] {depth});
  }

  /**
   * Centres of equal cells of the whole water volume: x fastest, then y, then depth.
   *
   * @param tank the tank
   * @param columns cells along x
   * @param rows cells along y
   * @param layers cells along depth
   */
  public static Places volume(Tank tank, int columns, int rows, int layers) {
    double[] depths = new double[layers];
    for (int k = 0; k < layers; k++) {
      depths[k] = tank.depth() * (k + 0.5) / layers;
    }
    return cells(tank, columns, rows, depths);
  }

  private static Places cells(Tank tank, int columns, int rows, double[] depths) {
    if (columns < 1 || rows < 1 || depths.length < 1) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a grid of cells needs at least one each way; got %d x %d x %d",
              columns,
              rows,
              depths.length));
    }
    int n = columns * rows * depths.length;
    double[] x = new double[n];
    double[] y = new double[n];
    double[] depth = new double[n];
    int at = 0;
    for (double plane : depths) {
      for (int j = 0; j < rows; j++) {
        for (int i = 0; i < columns; i++, at++) {
          x[at] = tank.length() * (i + 0.5) / columns;
          y[at] = tank.width() * (j + 0.5) / rows;
          depth[at] = plane;
        }
      }
    }
    return new Places(x, y, depth);
  }

  /** Returns the number of places. */
  public int size() {
    return x.length;
  }

  /** Returns x of place {@code i} [m]. */
  public double x(int i) {
    return x[i];
  }

  /** Returns y of place {@code i} [m]. */
  public double y(int i) {
    return y[i];
  }

  /** Returns the depth of place {@code i} [m]. */
  public double depth(int i) {
    return depth[i];
  }

  /** Returns place {@code i}. */
  public Place get(int i) {
    return new Place(x[i], y[i], depth[i]);
  }
}
