package parfield.aquascape;

import java.util.HashMap;
import java.util.Map;

/** Meshes of known bodies. */
public final class Meshes {
  private static final int[] BLOCK = {
    0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3,
    7, 1, 7, 5
  };

  private Meshes() {}

  /** The twelve triangles of a box. */
  public static Mesh of(Box box) {
    double[] vertices = new double[24];
    double cosine = Math.cos(box.yaw());
    double sine = Math.sin(box.yaw());
    for (int i = 0; i < 8; i++) {
      double u = ((i & 1) - 0.5) * box.sizeX();
      double v = ((i >> 1 & 1) - 0.5) * box.sizeY();
      vertices[3 * i] = box.x() + cosine * u - sine * v;
      vertices[3 * i + 1] = box.y() + sine * u + cosine * v;
      vertices[3 * i + 2] = box.depth() + ((i >> 2 & 1) - 0.5) * box.sizeZ();
    }
    return Mesh.of(vertices, BLOCK);
  }

  /** An ellipsoid as an icosphere of 20 · 4^n triangles, its vertices on the surface. */
  public static Mesh of(Ellipsoid ellipsoid, int n) {
    Sphere sphere = new Sphere();
    for (int i = 0; i < n; i++) {
      sphere.divide();
    }
    double[] vertices = new double[sphere.size];
    double cosine = Math.cos(ellipsoid.yaw());
    double sine = Math.sin(ellipsoid.yaw());
    for (int i = 0; i < sphere.size; i += 3) {
      double u = sphere.vertices[i] * ellipsoid.semiX();
      double v = sphere.vertices[i + 1] * ellipsoid.semiY();
      vertices[i] = ellipsoid.x() + cosine * u - sine * v;
      vertices[i + 1] = ellipsoid.y() + sine * u + cosine * v;
      vertices[i + 2] = ellipsoid.depth() + sphere.vertices[i + 2] * ellipsoid.semiZ();
    }
    return Mesh.of(vertices, sphere.corners);
  }

  private static final class Sphere {
    private static final double GOLDEN = (1 + Math.sqrt(5)) / 2;

    private double[] vertices = new double[3 * 64];
    private int size;
    private int[] corners = {
      0, 11, 5, 0, 5, 1, 0, 1, 7, 0, 7, 10, 0, 10, 11, 1, 5, 9, 5, 11, 4, 11, 10, 2, 10, 7, 6, 7, 1,
      8, 3, 9, 4, 3, 4, 2, 3, 2, 6, 3, 6, 8, 3, 8, 9, 4, 9, 5, 2, 4, 11, 6, 2, 10, 8, 6, 7, 9, 8, 1
    };

    Sphere() {
      double g = GOLDEN;
      double[][] twelve = {
        {-1, g, 0},
        {1, g, 0},
        {-1, -g, 0},
        {1, -g, 0},
        {0, -1, g},
        {0, 1, g},
        {0, -1, -g},
        {0, 1, -g},
        {g, 0, -1},
        {g, 0, 1},
        {-g, 0, -1},
        {-g, 0, 1}
      };
      for (double[] one : twelve) {
        add(one[0], one[1], one[2]);
      }
    }

    private int add(double x, double y, double z) {
      if (size + 3 > vertices.length) {
        vertices = java.util.Arrays.copyOf(vertices, 2 * vertices.length);
      }
      double length = Math.sqrt(x * x + y * y + z * z);
      vertices[size++] = x / length;
      vertices[size++] = y / length;
      vertices[size++] = z / length;
      return size / 3 - 1;
    }

    void divide() {
      Map<Long, Integer> middles = new HashMap<>();
      int[] finer = new int[4 * corners.length];
      for (int t = 0; t < corners.length; t += 3) {
        int a = corners[t];
        int b = corners[t + 1];
        int c = corners[t + 2];
        int ab = middle(middles, a, b);
        int bc = middle(middles, b, c);
        int ca = middle(middles, c, a);
        int[] four = {a, ab, ca, b, bc, ab, c, ca, bc, ab, bc, ca};
        System.arraycopy(four, 0, finer, 4 * t, 12);
      }
      corners = finer;
    }

    private int middle(Map<Long, Integer> middles, int a, int b) {
      long key = (long) Math.min(a, b) << 32 | Math.max(a, b);
      Integer known = middles.get(key);
      if (known == null) {
        known =
            add(
                vertices[3 * a] + vertices[3 * b],
                vertices[3 * a + 1] + vertices[3 * b + 1],
                vertices[3 * a + 2] + vertices[3 * b + 2]);
        middles.put(key, known);
      }
      return known;
    }
  }
}
