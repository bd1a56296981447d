package parfield.plot;

import java.util.List;
import java.util.Locale;
import parfield.units.Estimate;

/**
 * One curve with its intervals.
 *
 * @param name written at its end, not blank
 * @param points from left to right, at least one
 */
public record Series(String name, List<Point> points) {
  public Series {
    points = List.copyOf(points);
    if (name.isBlank() || points.isEmpty()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a curve needs a name and at least one point; got \"%s\" with %d",
              name,
              points.size()));
    }
    for (int i = 1; i < points.size(); i++) {
      if (!(points.get(i).x() > points.get(i - 1).x())) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "the points of curve %s must run from left to right; got %s after %s",
                name,
                points.get(i).x(),
                points.get(i - 1).x()));
      }
    }
  }

  /**
   * A point of a curve.
   *
   * @param x in the unit of the horizontal axis' values
   * @param y with its interval, in the unit of the vertical axis' values
   */
  public record Point(double x, Estimate y) {
    public Point {
      if (!Double.isFinite(x)
          || !Double.isFinite(y.value())
          || !Double.isFinite(y.low())
          || !Double.isFinite(y.high())) {
        throw new IllegalArgumentException(
            String.format(Locale.ROOT, "a point must be finite; got %s at %s", y, x));
      }
    }
  }
}
