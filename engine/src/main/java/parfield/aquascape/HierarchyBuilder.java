package parfield.aquascape;

import java.util.Arrays;

/**
 * Builds a {@link Hierarchy}: bodies are parted where the surface area heuristic, taken over a few
 * bins of their centres, expects the least work.
 *
 * <p>Wald 2007, On fast Construction of SAH-based Bounding Volume Hierarchies, IEEE Symposium on
 * Interactive Ray Tracing. Single-threaded; made once and thrown away.
 */
final class HierarchyBuilder {
  private static final int BINS = 16;

  /** Leaves hold no more bodies than this. */
  private static final int FULL_LEAF = 4;

  /** Cost of looking into a node, in tests of a body. */
  private static final double LOOK = 0.5;

  /** From this depth on branches are parted at the middle, which ends before the deepest. */
  private static final int DEEP = 30;

  /** Bounds stand this far off what they hold, so that rounding cannot lose it [m]. */
  private static final double MARGIN = 1e-9;

  /** Numbers, kind and rock of each body, in the order of the rocks. */
  final double[] bodies;

  final byte[] kind;
  final int[] rock;

  /** Bodies in the order of the leaves. */
  final int[] order;

  double[] bounds = new double[6 * 16];
  int[] after = new int[16];
  int[] first = new int[16];
  int[] second = new int[16];

  private final double[] boxes;
  private int nodes;

  HierarchyBuilder(Shape... shapes) {
    int count = 0;
    for (Shape one : shapes) {
      count += one instanceof Mesh mesh ? mesh.triangles() : 1;
    }
    bodies = new double[Hierarchy.NUMBERS * count];
    kind = new byte[count];
    rock = new int[count];
    boxes = new double[6 * count];
    order = new int[count];
    Arrays.setAll(order, i -> i);
    int body = 0;
    for (int r = 0; r < shapes.length; r++) {
      Shape shape = shapes[r];
      int last = body + (shape instanceof Mesh mesh ? mesh.triangles() : 1);
      Arrays.fill(rock, body, last, r);
      if (shape instanceof Mesh mesh) {
        for (int t = 0; t < mesh.triangles(); t++) {
          add(mesh, t, body++);
        }
      } else if (shape instanceof Box box) {
        kind[body] = Hierarchy.BOX;
        frame(body, box.x(), box.y(), box.depth(), box.yaw());
        half(body, box.sizeX() / 2, box.sizeY() / 2, box.sizeZ() / 2);
        enclose(body++, box.bounds());
      } else if (shape instanceof Ellipsoid ellipsoid) {
        kind[body] = Hierarchy.ELLIPSOID;
        frame(body, ellipsoid.x(), ellipsoid.y(), ellipsoid.depth(), ellipsoid.yaw());
        half(body, ellipsoid.semiX(), ellipsoid.semiY(), ellipsoid.semiZ());
        enclose(body++, ellipsoid.bounds());
      }
    }
    if (count > 0) {
      build(0, count, 0);
    }
  }

  int nodes() {
    return nodes;
  }

  private void add(Mesh mesh, int triangle, int body) {
    kind[body] = Hierarchy.TRIANGLE;
    for (int axis = 0; axis < 3; axis++) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int corner = 0; corner < 3; corner++) {
        double value = mesh.coordinate(triangle, corner, axis);
        bodies[Hierarchy.NUMBERS * body + 3 * corner + axis] = value;
        low = Math.min(low, value);
        high = Math.max(high, value);
      }
      boxes[6 * body + axis] = low - MARGIN;
      boxes[6 * body + 3 + axis] = high + MARGIN;
    }
  }

  private void frame(int body, double x, double y, double depth, double yaw) {
    int at = Hierarchy.NUMBERS * body;
    bodies[at] = x;
    bodies[at + 1] = y;
    bodies[at + 2] = depth;
    bodies[at + 3] = Math.cos(yaw);
    bodies[at + 4] = Math.sin(yaw);
  }

  private void half(int body, double x, double y, double z) {
    int at = Hierarchy.NUMBERS * body;
    bodies[at + 5] = x;
    bodies[at + 6] = y;
    bodies[at + 7] = z;
  }

  private void enclose(int body, Bounds around) {
    boxes[6 * body] = around.fromX() - MARGIN;
    boxes[6 * body + 1] = around.fromY() - MARGIN;
    boxes[6 * body + 2] = around.fromDepth() - MARGIN;
    boxes[6 * body + 3] = around.toX() + MARGIN;
    boxes[6 * body + 4] = around.toY() + MARGIN;
    boxes[6 * body + 5] = around.toDepth() + MARGIN;
  }

  private void build(int from, int to, int depth) {
    int node = nodes++;
    grow();
    double[] about = new double[6];
    double[] centres = new double[6];
    empty(about, 0);
    empty(centres, 0);
    for (int i = from; i < to; i++) {
      int body = order[i];
      include(about, 0, boxes, 6 * body);
      for (int axis = 0; axis < 3; axis++) {
        double centre = centre(body, axis);
        centres[axis] = Math.min(centres[axis], centre);
        centres[3 + axis] = Math.max(centres[3 + axis], centre);
      }
    }
    System.arraycopy(about, 0, bounds, 6 * node, 6);
    int axis = widest(centres);
    int middle =
        depth < DEEP ? part(from, to, axis, centres, area(about, 0)) : halve(from, to, axis);
    if (middle < 0) {
      first[node] = from;
      second[node] = to - from;
    } else {
      first[node] = -1 - axis;
      build(from, middle, depth + 1);
      second[node] = nodes;
      build(middle, to, depth + 1);
    }
    after[node] = nodes;
  }

  /** Parts a run of bodies; returns where the second part begins, or −1 for a leaf. */
  private int part(int from, int to, int axis, double[] centres, double area) {
    int count = to - from;
    double low = centres[axis];
    double span = centres[3 + axis] - low;
    if (count == 1 || !(span > 0)) {
      return halve(from, to, axis);
    }
    int[] counts = new int[BINS];
    double[] held = new double[6 * BINS];
    for (int bin = 0; bin < BINS; bin++) {
      empty(held, 6 * bin);
    }
    for (int i = from; i < to; i++) {
      int bin = bin(order[i], axis, low, span);
      counts[bin]++;
      include(held, 6 * bin, boxes, 6 * order[i]);
    }
    // Work above each cut, then from the other end below it.
    double[] above = new double[BINS];
    double[] sum = new double[6];
    empty(sum, 0);
    int n = 0;
    for (int bin = BINS - 1; bin > 0; bin--) {
      include(sum, 0, held, 6 * bin);
      n += counts[bin];
      above[bin] = n * area(sum, 0);
    }
    empty(sum, 0);
    n = 0;
    double least = Double.POSITIVE_INFINITY;
    int cut = 0;
    for (int bin = 1; bin < BINS; bin++) {
      include(sum, 0, held, 6 * (bin - 1));
      n += counts[bin - 1];
      double work = n * area(sum, 0) + above[bin];
      if (n > 0 && n < count && work < least) {
        least = work;
        cut = bin;
      }
    }
    if (count <= FULL_LEAF && !(LOOK * area + least < count * area)) {
      return -1;
    }
    int i = from;
    int j = to - 1;
    while (i <= j) {
      if (bin(order[i], axis, low, span) < cut) {
        i++;
      } else {
        int swap = order[i];
        order[i] = order[j];
        order[j--] = swap;
      }
    }
    return i;
  }

  private int bin(int body, int axis, double low, double span) {
    return Math.min(BINS - 1, (int) (BINS * ((centre(body, axis) - low) / span)));
  }

  /** Parts a run at its middle body along an axis, or leaves it whole if a leaf can hold it. */
  private int halve(int from, int to, int axis) {
    if (to - from <= FULL_LEAF) {
      return -1;
    }
    Integer[] run = new Integer[to - from];
    Arrays.setAll(run, i -> order[from + i]);
    Arrays.sort(run, (a, b) -> Double.compare(centre(a, axis), centre(b, axis)));
    for (int i = 0; i < run.length; i++) {
      order[from + i] = run[i];
    }
    return from + run.length / 2;
  }

  /** Twice the centre of a body's bounds. */
  private double centre(int body, int axis) {
    return boxes[6 * body + axis] + boxes[6 * body + 3 + axis];
  }

  private static int widest(double[] centres) {
    double x = centres[3] - centres[0];
    double y = centres[4] - centres[1];
    double z = centres[5] - centres[2];
    return x >= y && x >= z ? 0 : y >= z ? 1 : 2;
  }

  private static void empty(double[] box, int at) {
    for (int axis = 0; axis < 3; axis++) {
      box[at + axis] = Double.POSITIVE_INFINITY;
      box[at + 3 + axis] = Double.NEGATIVE_INFINITY;
    }
  }

  private static void include(double[] box, int at, double[] other, int from) {
    for (int axis = 0; axis < 3; axis++) {
      box[at + axis] = Math.min(box[at + axis], other[from + axis]);
      box[at + 3 + axis] = Math.max(box[at + 3 + axis], other[from + 3 + axis]);
    }
  }

  /** Half the surface of a box; 0 of an empty one. */
  private static double area(double[] box, int at) {
    double x = box[at + 3] - box[at];
    double y = box[at + 4] - box[at + 1];
    double z = box[at + 5] - box[at + 2];
    return x >= 0 ? x * y + y * z + z * x : 0;
  }

  private void grow() {
    if (nodes > after.length) {
      int size = 2 * after.length;
      bounds = Arrays.copyOf(bounds, 6 * size);
      after = Arrays.copyOf(after, size);
      first = Arrays.copyOf(first, size);
      second = Arrays.copyOf(second, size);
    }
  }
}
