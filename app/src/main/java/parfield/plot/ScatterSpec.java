package parfield.plot;

import java.util.List;
import java.util.Objects;

/**
 * Values that were measured over what was predicted for them.
 *
 * @param caption title and summary
 * @param unit of both
 * @param points in any order
 * @param band relative half-width of the ribbon about the line on which both are the same
 */
public record ScatterSpec(Caption caption, String unit, List<Point> points, double band) {
  public ScatterSpec {
    Objects.requireNonNull(caption, "caption");
    Objects.requireNonNull(unit, "unit");
    points = List.copyOf(points);
    if (points.isEmpty()) {
      throw new IllegalArgumentException("a scatter needs at least one point; got none");
    }
  }

  /**
   * One value.
   *
   * @param predicted what the model says
   * @param measured what the meter said
   * @param marked whether it looks wrong
   */
  public record Point(double predicted, double measured, boolean marked) {}
}
