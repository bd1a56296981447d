package parfield.plot;

import java.util.Arrays;
import java.util.Locale;

/**
 * Values at the centres of equal cells that cover a plane of the tank whole: {@code columns} cells
 * along x, {@code rows} cells along y (front first) or along depth (shallowest first). Immutable.
 */
public final class Raster {
  private final int columns;
  private final int rows;
  private final double[] values;

  /**
   * Wraps values.
   *
   * @param columns cells along x, at least 2
   * @param rows cells along the other axis, at least 2
   * @param values row by row from the first row, x running fastest; copied
   * @throws IllegalArgumentException if the plane has fewer than 2 × 2 cells, the number of values
   *     is another one, or a value is not finite
   */
  public Raster(int columns, int rows, double[] values) {
    if (!(columns >= 2) || !(rows >= 2)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a raster needs at least 2 x 2 cells; got %d x %d", columns, rows));
    }
    if (values.length != (long) columns * rows) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a raster of %d x %d cells needs %d values; got %d",
              columns,
              rows,
              (long) columns * rows,
              values.length));
    }
    for (int i = 0; i < values.length; i++) {
      if (!Double.isFinite(values[i])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "a raster's values must be finite; got %s in column %d of row %d",
                values[i],
                i % columns,
                i / columns));
      }
    }
    this.columns = columns;
    this.rows = rows;
    this.values = values.clone();
  }

  /** Returns the number of cells along x. */
  public int columns() {
    return columns;
  }

  /** Returns the number of cells along y or depth. */
  public int rows() {
    return rows;
  }

  /** Returns the value at the centre of one cell, both indices from 0. */
  public double value(int column, int row) {
    return values[row * columns + column];
  }

  /** Returns the lowest value. */
  public double min() {
    return Arrays.stream(values).min().orElseThrow();
  }

  /** Returns the highest value. */
  public double max() {
    return Arrays.stream(values).max().orElseThrow();
  }
}
