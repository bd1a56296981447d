package parfield.plot;

import java.util.ArrayList;
import java.util.List;

/** Where labels already stand, so that none covers another. A label counts as a row of discs. */
final class Placement {
  private final List<double[]> discs = new ArrayList<>();

  /** Takes the room of a disc. */
  void take(double x, double y, double radius) {
    discs.add(new double[] {x, y, radius});
  }

  /**
   * Takes the room of a label if nothing stands there yet.
   *
   * @param x of its centre
   * @param y of its centre
   * @param width along its baseline
   * @param height across
   * @param angle of its baseline [rad]
   * @return whether it was free
   */
  boolean takeIfFree(double x, double y, double width, double height, double angle) {
    if (!free(x, y, width, height, angle)) {
      return false;
    }
    row(x, y, width, height, angle).forEach(disc -> take(disc[0], disc[1], disc[2]));
    return true;
  }

  /** Returns whether nothing stands where a label would. */
  boolean free(double x, double y, double width, double height, double angle) {
    return row(x, y, width, height, angle).stream()
        .allMatch(
            disc ->
                discs.stream()
                    .allMatch(
                        other ->
                            Math.hypot(disc[0] - other[0], disc[1] - other[1])
                                >= disc[2] + other[2]));
  }

  private static List<double[]> row(double x, double y, double width, double height, double angle) {
    double radius = height / 2;
    double half = Math.max(0, width / 2 - radius);
    int last = (int) Math.ceil(2 * half / radius);
    List<double[]> row = new ArrayList<>();
    for (int i = 0; i <= last; i++) {
      double along = last == 0 ? 0 : -half + 2 * half * i / last;
      row.add(new double[] {x + along * Math.cos(angle), y + along * Math.sin(angle), radius});
    }
    return row;
  }
}
