package parfield.plot;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Isolines by marching squares: linear between nodes, segments joined into lines, saddles resolved
 * by the value at the saddle of the bilinear surface.
 */
final class Contours {
  private static final int NONE = -1;

  private final Lattice field;
  private final double level;
  private final int columns;
  private final int rows;

  /** For each edge of the lattice the edge that its line crosses next, and the one before. */
  private final int[] next;

  private final int[] previous;

  private Contours(Lattice field, double level) {
    this.field = field;
    this.level = level;
    this.columns = field.x().length;
    this.rows = field.y().length;
    this.next = new int[2 * columns * rows];
    this.previous = new int[next.length];
    Arrays.fill(next, NONE);
    Arrays.fill(previous, NONE);
  }

  /**
   * The lines along which a field equals a level. Each keeps the higher side on the same hand.
   *
   * @return open lines first, from edge to edge; then closed ones, whose last point is their first
   */
  static List<Line> of(Lattice field, double level) {
    Contours contours = new Contours(field, level);
    for (int row = 0; row + 1 < contours.rows; row++) {
      for (int column = 0; column + 1 < contours.columns; column++) {
        contours.march(column, row);
      }
    }
    return contours.joined();
  }

  /** Closed lines around everything at or above a level, along the plane's edge where need be. */
  static List<Line> around(Lattice field, double level) {
    double least = Arrays.stream(field.values()).min().orElseThrow();
    return of(field.ringed(Math.min(least, level) - 1), level);
  }

  private void march(int column, int row) {
    // Corners and edges counter-clockwise from the first; edge k joins corners k and k + 1.
    double[] corner = {
      field.value(column, row),
      field.value(column + 1, row),
      field.value(column + 1, row + 1),
      field.value(column, row + 1)
    };
    int[] edge = {
      along(column, row), across(column + 1, row), along(column, row + 1), across(column, row)
    };
    int leaving = 0;
    int entering = NONE;
    for (int k = 0; k < 4; k++) {
      boolean above = corner[k] >= level;
      boolean aboveNext = corner[(k + 1) % 4] >= level;
      if (above && !aboveNext) {
        leaving++;
      } else if (!above && aboveNext) {
        entering = k;
      }
    }
    if (leaving == 0) {
      return;
    }
    double saddle =
        (corner[0] * corner[2] - corner[1] * corner[3])
            / (corner[0] + corner[2] - corner[1] - corner[3]);
    for (int k = 0; k < 4; k++) {
      if (corner[k] >= level && !(corner[(k + 1) % 4] >= level)) {
        int to = leaving == 1 ? entering : (saddle >= level ? k + 1 : k + 3) % 4;
        next[edge[k]] = edge[to];
        previous[edge[to]] = edge[k];
      }
    }
  }

  private List<Line> joined() {
    List<Line> lines = new ArrayList<>();
    for (int edge = 0; edge < next.length; edge++) {
      if (next[edge] != NONE && previous[edge] == NONE) {
        lines.add(follow(edge));
      }
    }
    for (int edge = 0; edge < next.length; edge++) {
      if (next[edge] != NONE) {
        lines.add(follow(edge));
      }
    }
    return lines;
  }

  /** Walks a line and takes its links away. */
  private Line follow(int start) {
    List<double[]> points = new ArrayList<>();
    int edge = start;
    while (edge != NONE) {
      double[] point = crossing(edge);
      if (points.isEmpty() || !Arrays.equals(points.get(points.size() - 1), point)) {
        points.add(point);
      }
      int following = next[edge];
      next[edge] = NONE;
      edge = following;
    }
    return new Line(
        points.stream().mapToDouble(point -> point[0]).toArray(),
        points.stream().mapToDouble(point -> point[1]).toArray());
  }

  private double[] crossing(int edge) {
    boolean across = edge >= columns * rows;
    int node = across ? edge - columns * rows : edge;
    int column = node % columns;
    int row = node / columns;
    int nextColumn = across ? column : column + 1;
    int nextRow = across ? row + 1 : row;
    double from = field.value(column, row);
    double t = (level - from) / (field.value(nextColumn, nextRow) - from);
    return new double[] {
      field.x()[column] * (1 - t) + field.x()[nextColumn] * t,
      field.y()[row] * (1 - t) + field.y()[nextRow] * t
    };
  }

  /** The edge from a node to the next one in its row. */
  private int along(int column, int row) {
    return row * columns + column;
  }

  /** The edge from a node to the next one in its column. */
  private int across(int column, int row) {
    return columns * rows + row * columns + column;
  }
}
