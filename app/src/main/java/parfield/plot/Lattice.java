package parfield.plot;

import java.util.function.DoubleBinaryOperator;
import java.util.function.IntToDoubleFunction;

/**
 * Values at the nodes of a rectangular lattice over a plane, edges included; both coordinates run
 * from 0 to 1.
 *
 * @param x of the columns of nodes, ascending
 * @param y of the rows of nodes, ascending
 * @param values row by row
 */
record Lattice(double[] x, double[] y, double[] values) {

  /**
   * A smooth surface through the cells of a raster, as finely as asked. Between the outermost cells
   * and the edge it goes straight on, but not below 0 unless the raster does.
   */
  static Lattice of(Raster raster, int columns, int rows) {
    double[] x = nodes(columns);
    double[] y = nodes(rows);
    // Along x first: one row of the raster at a time.
    double[] narrow = new double[raster.rows() * columns];
    for (int row = 0; row < raster.rows(); row++) {
      int fixed = row;
      for (int i = 0; i < columns; i++) {
        narrow[row * columns + i] =
            between(raster.columns(), x[i], column -> raster.value(column, fixed));
      }
    }
    double floor = Math.min(0, raster.min());
    double[] values = new double[columns * rows];
    for (int j = 0; j < rows; j++) {
      for (int i = 0; i < columns; i++) {
        int fixed = i;
        values[j * columns + i] =
            Math.max(floor, between(raster.rows(), y[j], row -> narrow[row * columns + fixed]));
      }
    }
    return new Lattice(x, y, values);
  }

  /** A function of both coordinates, as finely as asked. */
  static Lattice of(int columns, int rows, DoubleBinaryOperator at) {
    double[] x = nodes(columns);
    double[] y = nodes(rows);
    double[] values = new double[columns * rows];
    for (int j = 0; j < rows; j++) {
      for (int i = 0; i < columns; i++) {
        values[j * columns + i] = at.applyAsDouble(x[i], y[j]);
      }
    }
    return new Lattice(x, y, values);
  }

  /** Returns the value at a node. */
  double value(int column, int row) {
    return values[row * x.length + column];
  }

  /** Returns the value at a point of an evenly spaced lattice, bilinear between nodes. */
  double at(double px, double py) {
    double u = Math.max(0, Math.min(1, px)) * (x.length - 1);
    double v = Math.max(0, Math.min(1, py)) * (y.length - 1);
    int i = Math.min((int) u, x.length - 2);
    int j = Math.min((int) v, y.length - 2);
    double s = u - i;
    double t = v - j;
    return (value(i, j) * (1 - s) + value(i + 1, j) * s) * (1 - t)
        + (value(i, j + 1) * (1 - s) + value(i + 1, j + 1) * s) * t;
  }

  /** Joins two lattices of the same nodes. */
  Lattice with(Lattice other, DoubleBinaryOperator join) {
    double[] joined = new double[values.length];
    for (int i = 0; i < joined.length; i++) {
      joined[i] = join.applyAsDouble(values[i], other.values[i]);
    }
    return new Lattice(x, y, joined);
  }

  /** This lattice within a ring of no width at one value: closes contours along the edge. */
  Lattice ringed(double ring) {
    int columns = x.length + 2;
    int rows = y.length + 2;
    double[] wide = new double[columns * rows];
    for (int j = 0; j < rows; j++) {
      for (int i = 0; i < columns; i++) {
        boolean inside = i > 0 && j > 0 && i < columns - 1 && j < rows - 1;
        wide[j * columns + i] = inside ? value(i - 1, j - 1) : ring;
      }
    }
    return new Lattice(doubledEnds(x), doubledEnds(y), wide);
  }

  private static double[] doubledEnds(double[] nodes) {
    double[] wide = new double[nodes.length + 2];
    System.arraycopy(nodes, 0, wide, 1, nodes.length);
    wide[0] = nodes[0];
    wide[wide.length - 1] = nodes[nodes.length - 1];
    return wide;
  }

  private static double[] nodes(int count) {
    double[] nodes = new double[count];
    for (int i = 0; i < count; i++) {
      nodes[i] = i / (count - 1.0);
    }
    return nodes;
  }

  /** A row of cell centres read at a share of its span: Catmull–Rom, straight on at its ends. */
  private static double between(int cells, double share, IntToDoubleFunction at) {
    double position = share * cells - 0.5;
    int i = (int) Math.floor(position);
    double t = position - i;
    double p0 = extended(i - 1, cells, at);
    double p1 = extended(i, cells, at);
    double p2 = extended(i + 1, cells, at);
    double p3 = extended(i + 2, cells, at);
    return p1
        + 0.5 * t * (p2 - p0 + t * (2 * p0 - 5 * p1 + 4 * p2 - p3 + t * (3 * (p1 - p2) + p3 - p0)));
  }

  /** The value of a cell, beyond either end on the straight line through the last two. */
  private static double extended(int cell, int cells, IntToDoubleFunction at) {
    int inside = Math.max(0, Math.min(cells - 1, cell));
    int inward = inside == 0 ? 1 : inside - 1;
    double value = at.applyAsDouble(inside);
    return cell == inside
        ? value
        : value + Math.abs(cell - inside) * (value - at.applyAsDouble(inward));
  }
}
