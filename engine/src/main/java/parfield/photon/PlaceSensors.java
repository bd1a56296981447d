package parfield.photon;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import parfield.field.Places;

/**
 * Flat square sensors that lie level: what crosses them downward, and what crosses them upward.
 *
 * <p>Immutable but for a scratch array: single-threaded.
 */
final class PlaceSensors implements Detector {
  private final Places places;
  private final int first;
  private final double half;
  private final Plane[] planes;

  /** A path that ends at a plane may miss it by this much [m]. */
  private static final double ROUNDING = 1e-12;

  private final double[] fluxes;
  private final int channels;

  /** Sensors of one depth, found by the cell of a grid that a ray crosses. */
  private record Plane(
      double depth, double fromX, double fromY, int columns, int rows, int[][] members) {}

  /**
   * Sensors at places.
   *
   * @param places their centres
   * @param side of the square [m]
   * @param first slot that is free; E_d of all places comes first, then E_u of all
   * @param channels of all lamps together
   */
  PlaceSensors(Places places, double side, int first, int channels) {
    this.places = places;
    this.first = first;
    this.channels = channels;
    half = side / 2;
    fluxes = new double[channels];
    int[] order =
        IntStream.range(0, places.size())
            .boxed()
            .sorted(Comparator.comparingDouble(places::depth))
            .mapToInt(Integer::intValue)
            .toArray();
    List<int[]> groups = new java.util.ArrayList<>();
    for (int i = 0; i < order.length; ) {
      int end = i + 1;
      while (end < order.length && places.depth(order[end]) == places.depth(order[i])) {
        end++;
      }
      groups.add(Arrays.copyOfRange(order, i, end));
      i = end;
    }
    planes = groups.stream().map(this::plane).toArray(Plane[]::new);
  }

  private Plane plane(int[] group) {
    double fromX = Double.POSITIVE_INFINITY;
    double fromY = Double.POSITIVE_INFINITY;
    double toX = Double.NEGATIVE_INFINITY;
    double toY = Double.NEGATIVE_INFINITY;
    for (int i : group) {
      fromX = Math.min(fromX, places.x(i) - half);
      fromY = Math.min(fromY, places.y(i) - half);
      toX = Math.max(toX, places.x(i) + half);
      toY = Math.max(toY, places.y(i) + half);
    }
    double cell = 2 * half;
    int columns = (int) Math.ceil((toX - fromX) / cell) + 1;
    int rows = (int) Math.ceil((toY - fromY) / cell) + 1;
    IntStream.Builder[] lists = new IntStream.Builder[columns * rows];
    for (int i : group) {
      int left = (int) ((places.x(i) - half - fromX) / cell);
      int right = (int) ((places.x(i) + half - fromX) / cell);
      int front = (int) ((places.y(i) - half - fromY) / cell);
      int back = (int) ((places.y(i) + half - fromY) / cell);
      for (int row = front; row <= back; row++) {
        for (int column = left; column <= right; column++) {
          int at = row * columns + column;
          if (lists[at] == null) {
            lists[at] = IntStream.builder();
          }
          lists[at].add(i);
        }
      }
    }
    int[][] members = new int[lists.length][];
    for (int at = 0; at < lists.length; at++) {
      members[at] = lists[at] == null ? new int[0] : lists[at].build().toArray();
    }
    return new Plane(places.depth(group[0]), fromX, fromY, columns, rows, members);
  }

  @Override
  public int slots() {
    return 2 * places.size();
  }

  @Override
  public void pass(Packet packet, double length, double[] totals) {
    if (packet.dz == 0) {
      return;
    }
    boolean down = packet.dz > 0;
    double end = packet.z + length * packet.dz;
    for (Plane plane : planes) {
      double depth = plane.depth;
      if (down
          ? depth < packet.z || depth > end + ROUNDING
          : depth > packet.z || depth < end - ROUNDING) {
        continue;
      }
      double distance = (depth - packet.z) / packet.dz;
      cross(plane, packet, distance, down, totals);
    }
  }

  private void cross(Plane plane, Packet packet, double distance, boolean down, double[] totals) {
    double x = packet.x + distance * packet.dx;
    double y = packet.y + distance * packet.dy;
    double column = (x - plane.fromX) / (2 * half);
    double row = (y - plane.fromY) / (2 * half);
    if (!(column >= 0 && column < plane.columns && row >= 0 && row < plane.rows)) {
      return;
    }
    boolean known = false;
    for (int i : plane.members[((int) row) * plane.columns + (int) column]) {
      if (Math.abs(x - places.x(i)) > half || Math.abs(y - places.y(i)) > half) {
        continue;
      }
      if (!known) {
        packet.fluxes(distance, fluxes);
        known = true;
      }
      int slot = first + (down ? i : places.size() + i);
      int at = slot * channels + packet.firstChannel;
      for (int c = 0; c < packet.factor.length; c++) {
        totals[at + c] += fluxes[c];
      }
    }
  }
}
