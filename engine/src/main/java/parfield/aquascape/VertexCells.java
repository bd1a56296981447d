package parfield.aquascape;

import java.util.Arrays;

/**
 * A mesh whose vertices in one small cubic cell were joined into their mean, triangles that
 * collapsed left out. A closed mesh stays closed: every side goes where its opposite goes.
 *
 * @param vertices of the cells that triangles use
 * @param corners three cells a triangle
 * @param moved the farthest that a vertex moved [m]
 */
record VertexCells(double[] vertices, int[] corners, double moved) {
  /** No more cells along an axis than this, so that a cell's number fits a long. */
  private static final double MOST = (1 << 21) - 2;

  static VertexCells of(double[] vertices, int[] corners, double cell) {
    int count = vertices.length / 3;
    double[] low = {Double.MAX_VALUE, Double.MAX_VALUE, Double.MAX_VALUE};
    double span = 0;
    for (int axis = 0; axis < 3; axis++) {
      double high = -Double.MAX_VALUE;
      for (int corner : corners) {
        low[axis] = Math.min(low[axis], vertices[3 * corner + axis]);
        high = Math.max(high, vertices[3 * corner + axis]);
      }
      span = Math.max(span, corners.length == 0 ? 0 : high - low[axis]);
    }
    double edge = Math.max(Math.max(cell, span / MOST), Double.MIN_NORMAL);
    int size = Integer.highestOneBit(Math.max(4, count)) << 2;
    int mask = size - 1;
    long[] keys = new long[size];
    int[] cells = new int[size];
    Arrays.fill(cells, -1);
    int[] cellOf = new int[count];
    Arrays.fill(cellOf, -1);
    int[] members = new int[count];
    double[] firsts = new double[3 * count];
    double[] offsets = new double[3 * count];
    int found = 0;
    for (int corner : corners) {
      if (cellOf[corner] >= 0) {
        continue;
      }
      long key = 0;
      for (int axis = 0; axis < 3; axis++) {
        key = key << 21 | (long) ((vertices[3 * corner + axis] - low[axis]) / edge);
      }
      int slot = (int) ((key * 0x9E37_79B9_7F4A_7C15L) >>> 32) & mask;
      while (cells[slot] >= 0 && keys[slot] != key) {
        slot = (slot + 1) & mask;
      }
      if (cells[slot] < 0) {
        keys[slot] = key;
        cells[slot] = found;
        System.arraycopy(vertices, 3 * corner, firsts, 3 * found, 3);
        found++;
      }
      int at = cells[slot];
      cellOf[corner] = at;
      members[at]++;
      for (int axis = 0; axis < 3; axis++) {
        offsets[3 * at + axis] += vertices[3 * corner + axis] - firsts[3 * at + axis];
      }
    }
    // Equal vertices have no offset: their mean is exactly themselves.
    double[] means = new double[3 * found];
    for (int i = 0; i < means.length; i++) {
      means[i] = firsts[i] + offsets[i] / members[i / 3];
    }
    double farthest = 0;
    for (int corner : corners) {
      double square = 0;
      for (int axis = 0; axis < 3; axis++) {
        double d = vertices[3 * corner + axis] - means[3 * cellOf[corner] + axis];
        square += d * d;
      }
      farthest = Math.max(farthest, square);
    }
    int[] kept = new int[corners.length];
    int n = 0;
    for (int t = 0; t < corners.length; t += 3) {
      int a = cellOf[corners[t]];
      int b = cellOf[corners[t + 1]];
      int c = cellOf[corners[t + 2]];
      if (a != b && b != c && c != a) {
        kept[n++] = a;
        kept[n++] = b;
        kept[n++] = c;
      }
    }
    return new VertexCells(means, Arrays.copyOf(kept, n), Math.sqrt(farthest));
  }
}
