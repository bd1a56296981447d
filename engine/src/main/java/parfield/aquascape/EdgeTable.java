package parfield.aquascape;

import java.util.Arrays;

/**
 * The edges of a mesh and the triangles that run along each.
 *
 * <p>Side i of a mesh runs from its i-th corner to the next of the same triangle. Edges that are
 * run through more often one way than the other are the rim of a hole. As every triangle is a
 * closed tour, so is their sum: rims always close.
 */
final class EdgeTable {
  private final int[] corners;

  /** First side of the edge in each slot, −1 where the slot is free. */
  private final int[] first;

  /** Next side along the same edge, −1 after the last. */
  private final int[] next;

  private final int mask;

  EdgeTable(int[] corners) {
    this.corners = corners;
    int size = Integer.highestOneBit(Math.max(4, corners.length)) << 2;
    mask = size - 1;
    first = new int[size];
    next = new int[corners.length];
    Arrays.fill(first, -1);
    for (int side = corners.length - 1; side >= 0; side--) {
      int slot = slot(side);
      next[side] = first[slot];
      first[slot] = side;
    }
  }

  int from(int side) {
    return corners[side];
  }

  int to(int side) {
    return corners[side % 3 == 2 ? side - 2 : side + 1];
  }

  private int slot(int side) {
    long key = edge(side);
    int slot = (int) ((key * 0x9E37_79B9_7F4A_7C15L) >>> 32) & mask;
    while (first[slot] >= 0 && edge(first[slot]) != key) {
      slot = (slot + 1) & mask;
    }
    return slot;
  }

  /** The edge that a side runs along, whichever way. */
  private long edge(int side) {
    long a = from(side);
    long b = to(side);
    return Math.min(a, b) << 32 | Math.max(a, b);
  }

  /** First side along the same edge as a given one. */
  int firstAlong(int side) {
    return first[slot(side)];
  }

  /** Next side along the same edge, −1 after the last. */
  int nextAlong(int side) {
    return next[side];
  }

  /** The other side along an edge that exactly two run along, else −1. */
  int partner(int side) {
    int one = firstAlong(side);
    int other = next[one];
    if (other < 0 || next[other] >= 0) {
      return -1;
    }
    return one == side ? other : one;
  }

  /** Sides that lack one the opposite way along the same edge. */
  int[] unbalanced() {
    int[] found = new int[16];
    int size = 0;
    for (int head : first) {
      if (head < 0) {
        continue;
      }
      int balance = 0;
      for (int side = head; side >= 0; side = next[side]) {
        balance += from(side) == from(head) ? 1 : -1;
      }
      for (int side = head; side >= 0 && balance != 0; side = next[side]) {
        int way = from(side) == from(head) ? 1 : -1;
        if (way == Integer.signum(balance)) {
          if (size == found.length) {
            found = Arrays.copyOf(found, 2 * size);
          }
          found[size++] = side;
          balance -= way;
        }
      }
    }
    return Arrays.copyOf(found, size);
  }
}
