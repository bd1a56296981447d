package parfield.field;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
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
    Map<Double, int[]> counts = new TreeMap<>();
    for (double d : depth) {
      counts.computeIfAbsent(d, key -> new int[1])[0]++;
    }
    Map<Double, int[]> members = new TreeMap<>();
    counts.forEach((d, count) -> members.put(d, new int[count[0]]));
    for (int i = depth.length - 1; i >= 0; i--) {
      members.get(depth[i])[--counts.get(depth[i])[0]] = i;
    }
    return members.entrySet().stream()
        .map(entry -> plane(entry.getKey(), entry.getValue(), x, y))
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

  private static double[] distinct(int[] members, double[] values) {
    return IntStream.of(members).mapToDouble(i -> values[i]).sorted().distinct().toArray();
  }

  private static int[] index(int[] members, double[] values, double[] distinct) {
    return IntStream.of(members).map(i -> Arrays.binarySearch(distinct, values[i])).toArray();
  }
}
