package parfield.field;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import parfield.aquascape.Rock;
import parfield.tank.Place;
import parfield.tank.Tank;

/** Places in the water, in a fixed order. Immutable; lengths in metres, depth positive downward. */
public final class Places {
  private final double[] x;
  private final double[] y;
  private final double[] depth;
  private final Optional<Cells> cells;

  private Places(double[] x, double[] y, double[] depth, Optional<Cells> cells) {
    this.x = x;
    this.y = y;
    this.depth = depth;
    this.cells = cells;
  }

  /** The places of a list, in its order. */
  public static Places of(List<Place> places) {
    return of(places, Optional.empty());
  }

  private static Places of(List<Place> places, Optional<Cells> cells) {
    int n = places.size();
    double[] x = new double[n];
    double[] y = new double[n];
    double[] depth = new double[n];
    for (int i = 0; i < n; i++) {
      x[i] = places.get(i).x();
      y[i] = places.get(i).y();
      depth[i] = places.get(i).depth();
    }
    return new Places(x, y, depth, cells);
  }

  /**
   * Centres of equal cells of one depth plane, those in rock left out: x fastest, then y.
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
   * Centres of equal cells of the whole water volume, those in rock left out: x fastest, then y,
   * then depth.
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
    List<Place> centres = new ArrayList<>(columns * rows * depths.length);
    for (double plane : depths) {
      for (int j = 0; j < rows; j++) {
        for (int i = 0; i < columns; i++) {
          double x = tank.length() * (i + 0.5) / columns;
          double y = tank.width() * (j + 0.5) / rows;
          centres.add(new Place(x, y, plane));
        }
      }
    }
    return inWater(Cells.inWater(tank, columns, rows, depths.length, centres), centres);
  }

  /**
   * Centres of equal cells of the upright plane through the middle of the tank, those in rock left
   * out: x fastest, then depth, which takes the place of rows.
   *
   * @param tank the tank
   * @param columns cells along x
   * @param layers cells along depth
   */
  public static Places upright(Tank tank, int columns, int layers) {
    List<Place> centres = new ArrayList<>(columns * layers);
    for (int k = 0; k < layers; k++) {
      for (int i = 0; i < columns; i++) {
        double x = tank.length() * (i + 0.5) / columns;
        double depth = tank.depth() * (k + 0.5) / layers;
        centres.add(new Place(x, tank.width() / 2, depth));
      }
    }
    return inWater(Cells.inWater(tank, columns, layers, 1, centres), centres);
  }

  private static Places inWater(Cells cells, List<Place> centres) {
    if (cells.size() == 0) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "there is no water among the %d cells: rocks fill them all",
              centres.size()));
    }
    List<Place> water =
        IntStream.range(0, cells.size()).mapToObj(i -> centres.get(cells.cell(i))).toList();
    return of(water, Optional.of(cells));
  }

  /** How these places are the centres of equal cells; empty where they are any places. */
  public Optional<Cells> cells() {
    return cells;
  }

  /**
   * Checks that all places lie in the water.
   *
   * @param tank with its rocks
   * @throws IllegalArgumentException if one lies outside the tank or in a rock; the message names
   *     it
   */
  public void requireInWater(Tank tank) {
    for (int i = 0; i < size(); i++) {
      if (!tank.contains(get(i))) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "place %d lies outside the water: x %s, y %s, depth %s m in a tank of %s x %s x %s m",
                i,
                x[i],
                y[i],
                depth[i],
                tank.length(),
                tank.width(),
                tank.depth()));
      }
      Optional<Rock> rock = tank.aquascape().at(x[i], y[i], depth[i]);
      if (rock.isPresent()) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "place %d lies in rock %s: x %s, y %s, depth %s m; leave it out, or move the rock",
                i,
                rock.get().name(),
                x[i],
                y[i],
                depth[i]));
      }
    }
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
