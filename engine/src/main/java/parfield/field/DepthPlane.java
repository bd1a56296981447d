package parfield.field;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Receivers that share one depth, with their distinct coordinates told apart from the pairs.
 *
 * @param depth of the plane [m]
 * @param members indices of the receivers among all places
 * @param x distinct x coordinates [m]
 * @param y distinct y coordinates [m]
 * @param xIndex for each member the index of its x
 * @param yIndex for each member the index of its y
 */
record DepthPlane(double depth, int[] members, double[] x, double[] y, int[] xIndex, int[] yIndex) {

  /** Groups places by depth, shallow first. */
  static List<DepthPlane> of(double[] x, double[] y, double[] depth) {
    int[] all = IntStream.range(0, depth.length).toArray();
    double[] depths = distinct(all, depth);
    int[] plane = index(all, depth, depths);
    int[] counts = new int[depths.length];
    for (int p : plane) {
      counts[p]++;
    }
    int[][] members = new int[depths.length][];
    for (int p = 0; p < depths.length; p++) {
      members[p] = new int[counts[p]];
    }
    for (int i = plane.length - 1; i >= 0; i--) {
      members[plane[i]][--counts[plane[i]]] = i;
    }
    return IntStream.range(0, depths.length)
        .mapToObj(p -> plane(depths[p], members[p], x, y))
        .toList();
  }

  private static DepthPlane plane(double depth, int[] members, double[] x, double[] y) {
    double[] distinctX = distinct(members, x);
    double[] distinctY = distinct(members, y);
    return new DepthPlane(
        depth,
        members,
        distinctX,
        distinctY,
        index(members, x, distinctX),
        index(members, y, distinctY));
  }

  /** The values of some members without repetition, ascending. */
  private static double[] distinct(int[] members, double[] values) {
    double[] sorted = new double[members.length];
    int changes = 0;
    for (int member : members) {
      double value = values[member];
      if (changes == 0 || Double.compare(value, sorted[changes - 1]) != 0) {
        sorted[changes++] = value;
      }
    }
    Arrays.sort(sorted, 0, changes);
    int count = 0;
    for (int i = 0; i < changes; i++) {
      double value = sorted[i];
      if (count == 0 || Double.compare(value, sorted[count - 1]) != 0) {
        sorted[count++] = value;
      }
    }
    return Arrays.copyOf(sorted, count);
  }

  /** Where each member's value stands among the distinct ones. */
  private static int[] index(int[] members, double[] values, double[] distinct) {
    int[] index = new int[members.length];
    int at = 0;
    for (int m = 0; m < index.length; m++) {
      double value = values[members[m]];
      // A neighbour often has the same value, or the next one along a row.
      if (distinct[at] != value) {
        at =
            at + 1 < distinct.length && distinct[at + 1] == value
                ? at + 1
                : Arrays.binarySearch(distinct, value);
      }
      index[m] = at;
    }
    return index;
  }
}
