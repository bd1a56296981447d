package parfield.aquascape;

import java.util.Arrays;

/**
 * How often the triangles of a mesh run through each edge, one way and the other.
 *
 * <p>Edges that are run through more often one way than the other are the rim of a hole. As every
 * triangle is a closed tour, so is their sum: the rims always close.
 */
final class EdgeBalance {
  private final long[] unbalanced;

  /** Counts the edges of triangles, three corners each. */
  EdgeBalance(int[] corners) {
    // An edge as one number: ends ascending, and in the last bit which way it is run through.
    long[] edges = new long[corners.length];
    for (int i = 0; i < corners.length; i++) {
      int from = corners[i];
      int to = corners[i % 3 == 2 ? i - 2 : i + 1];
      long low = Math.min(from, to);
      long high = Math.max(from, to);
      edges[i] = (low << 32 | high) << 1 | (from < to ? 0 : 1);
    }
    Arrays.sort(edges);
    long[] found = new long[16];
    int size = 0;
    for (int i = 0; i < edges.length; ) {
      long edge = edges[i] >>> 1;
      int balance = 0;
      for (; i < edges.length && edges[i] >>> 1 == edge; i++) {
        balance += (edges[i] & 1) == 0 ? 1 : -1;
      }
      long low = edge >>> 32;
      long high = edge & 0xFFFF_FFFFL;
      for (int k = Math.abs(balance); k > 0; k--) {
        if (size == found.length) {
          found = Arrays.copyOf(found, 2 * size);
        }
        found[size++] = balance > 0 ? low << 32 | high : high << 32 | low;
      }
    }
    unbalanced = Arrays.copyOf(found, size);
  }

  /** Edges without their opposite: where from in the upper 32 bits, where to in the lower. */
  long[] unbalanced() {
    return unbalanced.clone();
  }
}
