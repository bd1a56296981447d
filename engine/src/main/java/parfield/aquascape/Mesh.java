package parfield.aquascape;

import java.util.Arrays;
import java.util.Locale;

/**
 * A closed surface of triangles. Immutable; equal content is equal.
 *
 * <p>Closed means that every edge is run through as often one way as the other, so that each place
 * is either inside or outside; outward means that the enclosed volume counts positive. A surface
 * may cross itself: what any part of it encloses is rock. {@link MeshRepair} makes such a mesh out
 * of most others.
 */
public final class Mesh implements Shape {
  private final double[] vertices;
  private final int[] corners;
  private final Bounds bounds;
  private final double volume;
  private final int hash;

  private Mesh(double[] vertices, int[] corners) {
    this.vertices = vertices;
    this.corners = corners;
    bounds = bounds(vertices, corners);
    volume = volume(vertices, corners);
    hash = 31 * Arrays.hashCode(vertices) + Arrays.hashCode(corners);
  }

  /**
   * Makes a mesh.
   *
   * @param vertices x, y, depth of each vertex in turn [m], finite, copied
   * @param corners three vertex numbers for each triangle in turn, copied
   * @throws IllegalArgumentException if a number is not finite or out of range, a triangle has a
   *     corner twice, the surface is open or encloses no volume; the message names what and where
   */
  public static Mesh of(double[] vertices, int[] corners) {
    if (vertices.length % 3 != 0 || corners.length % 3 != 0 || corners.length == 0) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a mesh needs three numbers a vertex and three corners a triangle, one triangle at"
                  + " least; got %d numbers and %d corners",
              vertices.length,
              corners.length));
    }
    for (int i = 0; i < vertices.length; i++) {
      if (!Double.isFinite(vertices[i])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT, "vertex %d of a mesh is not finite: %s", i / 3 + 1, vertices[i]));
      }
    }
    for (int i = 0; i < corners.length; i++) {
      if (corners[i] < 0 || corners[i] >= vertices.length / 3) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "triangle %d of a mesh has corner %d where vertices run from 0 to %d",
                i / 3 + 1,
                corners[i],
                vertices.length / 3 - 1));
      }
    }
    for (int t = 0; t < corners.length / 3; t++) {
      int a = corners[3 * t];
      int b = corners[3 * t + 1];
      int c = corners[3 * t + 2];
      if (a == b || b == c || c == a) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "triangle %d of a mesh has a corner twice: %d, %d, %d",
                t + 1,
                a,
                b,
                c));
      }
    }
    int open = new EdgeTable(corners).unbalanced().length;
    if (open > 0) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a mesh must be closed; %d of its edges are not run through as often one way as the"
                  + " other",
              open));
    }
    Mesh mesh = new Mesh(vertices.clone(), corners.clone());
    if (!(mesh.volume > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a mesh must enclose some volume, its triangles facing outward; got %s m³",
              mesh.volume));
    }
    return mesh;
  }

  /** Returns the number of triangles. */
  public int triangles() {
    return corners.length / 3;
  }

  /**
   * A coordinate of a corner [m].
   *
   * @param triangle which, from 0
   * @param corner 0 to 2, in the order that turns outward
   * @param axis 0 for x, 1 for y, 2 for depth
   */
  public double coordinate(int triangle, int corner, int axis) {
    return vertices[3 * corners[3 * triangle + corner] + axis];
  }

  /** Area of a triangle [m²]. */
  public double area(int triangle) {
    return area(vertices, corners, triangle);
  }

  @Override
  public Bounds bounds() {
    return bounds;
  }

  @Override
  public double volume() {
    return volume;
  }

  static double area(double[] vertices, int[] corners, int triangle) {
    double[] normal = normal(vertices, corners, triangle);
    return Math.sqrt(normal[0] * normal[0] + normal[1] * normal[1] + normal[2] * normal[2]) / 2;
  }

  /** Cross product of two edges: outward, twice the area long. */
  static double[] normal(double[] vertices, int[] corners, int triangle) {
    int a = 3 * corners[3 * triangle];
    int b = 3 * corners[3 * triangle + 1];
    int c = 3 * corners[3 * triangle + 2];
    double ux = vertices[b] - vertices[a];
    double uy = vertices[b + 1] - vertices[a + 1];
    double uz = vertices[b + 2] - vertices[a + 2];
    double vx = vertices[c] - vertices[a];
    double vy = vertices[c + 1] - vertices[a + 1];
    double vz = vertices[c + 2] - vertices[a + 2];
    return new double[] {uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx};
  }

  /** Enclosed volume by the divergence theorem, about the first vertex used. */
  static double volume(double[] vertices, int[] corners) {
    int first = 3 * corners[0];
    double sum = 0;
    for (int t = 0; t < corners.length / 3; t++) {
      double[] normal = normal(vertices, corners, t);
      int a = 3 * corners[3 * t];
      for (int axis = 0; axis < 3; axis++) {
        sum += (vertices[a + axis] - vertices[first + axis]) * normal[axis];
      }
    }
    return sum / 6;
  }

  private static Bounds bounds(double[] vertices, int[] corners) {
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
    return new Bounds(low[0], high[0], low[1], high[1], low[2], high[2]);
  }

  @Override
  public boolean equals(Object other) {
    return this == other
        || (other instanceof Mesh that
            && that.hash == hash
            && Arrays.equals(that.corners, corners)
            && Arrays.equals(that.vertices, vertices));
  }

  @Override
  public int hashCode() {
    return hash;
  }

  @Override
  public String toString() {
    return String.format(Locale.ROOT, "Mesh[%d triangles, %s]", triangles(), bounds);
  }
}
