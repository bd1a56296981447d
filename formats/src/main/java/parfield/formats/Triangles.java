package parfield.formats;

import java.util.Arrays;
import java.util.Locale;

/**
 * The triangles of a mesh file, in its own unit and axes, vertices still as it writes them.
 *
 * @param vertices three coordinates each
 * @param corners three vertex numbers a triangle, all in range
 */
record Triangles(double[] vertices, int[] corners) {
  /** More triangles than this are refused: no rock needs them, and no memory bears them. */
  static final int MOST = 2_000_000;

  /** Which way is up in a file, and how its axes lie in the tank: x along, y to the back. */
  enum Up {
    /** z is up: x along the tank, y to the back. */
    Z,
    /** y is up: x along the tank, z to the front. */
    Y
  }

  /**
   * The mesh about the middle of its foot, in the tank's axes: as depth counts downward, they turn
   * the other way than a file's, and so do the triangles.
   *
   * @param metres one unit of the file [m]
   * @param up which axis is up
   * @param yaw by which it is turned, from +x toward +y [rad]
   * @return x, y, depth of each vertex; depth is 0 at the foot and negative above it
   */
  Triangles aboutFoot(double metres, Up up, double yaw) {
    double[] low = new double[3];
    double[] high = new double[3];
    Arrays.fill(low, Double.POSITIVE_INFINITY);
    Arrays.fill(high, Double.NEGATIVE_INFINITY);
    for (int corner : corners) {
      for (int axis = 0; axis < 3; axis++) {
        low[axis] = Math.min(low[axis], vertices[3 * corner + axis]);
        high[axis] = Math.max(high[axis], vertices[3 * corner + axis]);
      }
    }
    double cosine = Math.cos(yaw);
    double sine = Math.sin(yaw);
    double[] turned = new double[vertices.length];
    for (int i = 0; i < vertices.length; i += 3) {
      double x = metres * (vertices[i] - (low[0] + high[0]) / 2);
      double y;
      double above;
      if (up == Up.Z) {
        y = metres * (vertices[i + 1] - (low[1] + high[1]) / 2);
        above = metres * (vertices[i + 2] - low[2]);
      } else {
        y = -metres * (vertices[i + 2] - (low[2] + high[2]) / 2);
        above = metres * (vertices[i + 1] - low[1]);
      }
      turned[i] = cosine * x - sine * y;
      turned[i + 1] = sine * x + cosine * y;
      turned[i + 2] = -above;
    }
    int[] opposite = corners.clone();
    for (int t = 0; t < corners.length; t += 3) {
      opposite[t + 1] = corners[t + 2];
      opposite[t + 2] = corners[t + 1];
    }
    return new Triangles(turned, opposite);
  }

  /** Its longest extent along an axis of the file, in the file's unit. */
  double longest() {
    double longest = 0;
    for (int axis = 0; axis < 3; axis++) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int corner : corners) {
        low = Math.min(low, vertices[3 * corner + axis]);
        high = Math.max(high, vertices[3 * corner + axis]);
      }
      longest = Math.max(longest, high - low);
    }
    return longest;
  }

  /** Gathers triangles; growing arrays. */
  static final class Builder {
    private double[] vertices = new double[3 * 1024];
    private int[] corners = new int[3 * 1024];
    private int usedVertices;
    private int usedCorners;

    /** The number of vertices so far. */
    int vertices() {
      return usedVertices / 3;
    }

    int triangles() {
      return usedCorners / 3;
    }

    boolean full() {
      return triangles() >= MOST;
    }

    void vertex(double x, double y, double z) {
      if (usedVertices == vertices.length) {
        vertices = Arrays.copyOf(vertices, 2 * vertices.length);
      }
      vertices[usedVertices++] = x;
      vertices[usedVertices++] = y;
      vertices[usedVertices++] = z;
    }

    void triangle(int a, int b, int c) {
      if (usedCorners == corners.length) {
        corners = Arrays.copyOf(corners, 2 * corners.length);
      }
      corners[usedCorners++] = a;
      corners[usedCorners++] = b;
      corners[usedCorners++] = c;
    }

    Triangles build() {
      return new Triangles(
          Arrays.copyOf(vertices, usedVertices), Arrays.copyOf(corners, usedCorners));
    }
  }

  /** The fault of a file with more triangles than may be. */
  static Fault tooMany(String file, int line) {
    return new Fault(
        file,
        line,
        0,
        "number of triangles",
        "more",
        String.format(Locale.ROOT, "at most %d", MOST),
        "thin the mesh in the program that made it; 100000 are plenty for a rock");
  }
}
