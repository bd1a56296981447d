package parfield.aquascape;

import java.util.Arrays;

/**
 * A mesh with every hole closed by triangles about the middle of its rim.
 *
 * @param vertices of the mesh and the middles of its holes
 * @param corners of its triangles and the caps
 * @param holes how many were closed
 * @param widest longest side of the box about the widest hole [m]; 0 if none
 */
record HoleCaps(double[] vertices, int[] corners, int holes, double widest) {
  static HoleCaps of(double[] vertices, int[] corners) {
    EdgeTable edges = new EdgeTable(corners);
    int[] rims = edges.unbalanced();
    if (rims.length == 0) {
      return new HoleCaps(vertices, corners, 0, 0);
    }
    Closing closing = new Closing(vertices, corners, rims.length);
    // Rims leave every vertex as often as they reach it, so a walk along them always comes back.
    int count = vertices.length / 3;
    int[] leaving = new int[count];
    int[] next = new int[rims.length];
    Arrays.fill(leaving, -1);
    for (int i = 0; i < rims.length; i++) {
      next[i] = leaving[edges.from(rims[i])];
      leaving[edges.from(rims[i])] = i;
    }
    int[] placeOnWalk = new int[count];
    Arrays.fill(placeOnWalk, -1);
    int[] walk = new int[rims.length + 1];
    for (int rim : rims) {
      int length = 0;
      int at = edges.from(rim);
      while (true) {
        if (placeOnWalk[at] >= 0) {
          int from = placeOnWalk[at];
          closing.cap(walk, from, length);
          for (int i = from; i < length; i++) {
            placeOnWalk[walk[i]] = -1;
          }
          length = from;
        }
        int side = leaving[at];
        if (side < 0) {
          break;
        }
        leaving[at] = next[side];
        placeOnWalk[at] = length;
        walk[length++] = at;
        at = edges.to(rims[side]);
      }
    }
    return closing.done();
  }

  /** Gathers caps. */
  private static final class Closing {
    private double[] vertices;
    private int[] corners;
    private int usedVertices;
    private int usedCorners;
    private int holes;
    private double widest;

    Closing(double[] vertices, int[] corners, int sides) {
      this.vertices = Arrays.copyOf(vertices, vertices.length + sides);
      this.corners = Arrays.copyOf(corners, corners.length + 3 * sides);
      usedVertices = vertices.length;
      usedCorners = corners.length;
    }

    /** Closes a tour of vertices, its sides run through the opposite way. */
    void cap(int[] tour, int from, int to) {
      holes++;
      double[] middle = new double[3];
      for (int axis = 0; axis < 3; axis++) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
          double value = vertices[3 * tour[i] + axis];
          middle[axis] += value / (to - from);
          low = Math.min(low, value);
          high = Math.max(high, value);
        }
        widest = Math.max(widest, high - low);
      }
      if (to - from == 3) {
        add(tour[from], tour[from + 2], tour[from + 1]);
        return;
      }
      int centre = usedVertices / 3;
      System.arraycopy(middle, 0, vertices, usedVertices, 3);
      usedVertices += 3;
      for (int i = from; i < to; i++) {
        int next = i + 1 == to ? from : i + 1;
        add(tour[next], tour[i], centre);
      }
    }

    private void add(int a, int b, int c) {
      corners[usedCorners++] = a;
      corners[usedCorners++] = b;
      corners[usedCorners++] = c;
    }

    HoleCaps done() {
      return new HoleCaps(
          Arrays.copyOf(vertices, usedVertices),
          Arrays.copyOf(corners, usedCorners),
          holes,
          widest);
    }
  }
}
