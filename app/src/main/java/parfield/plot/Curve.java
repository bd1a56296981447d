package parfield.plot;

import java.util.List;

/**
 * One curve as it is drawn.
 *
 * @param series its points
 * @param style its looks
 * @param axes where it is drawn
 */
record Curve(Series series, Style style, Curves.Axes axes) {

  /** Least distance between two markers [px]. */
  private static final double MARKER_GAP = 20;

  /** Draws the interval as a ribbon. */
  void drawRibbon(Svg svg) {
    List<Series.Point> points = series.points();
    int n = points.size();
    double[] x = new double[2 * n + 1];
    double[] y = new double[2 * n + 1];
    for (int i = 0; i < n; i++) {
      x[i] = axes.x(points.get(i).x());
      y[i] = axes.y(points.get(i).y().high());
      x[2 * n - 1 - i] = x[i];
      y[2 * n - 1 - i] = axes.y(points.get(i).y().low());
    }
    x[2 * n] = x[0];
    y[2 * n] = y[0];
    svg.empty("path", "d", new Line(x, y).straight(), "fill", style.colour, "fill-opacity", 0.14);
  }

  /** Draws line and markers, and takes their room from labels. */
  void draw(Svg svg, Placement placement) {
    Line line = line();
    svg.empty(
        "path",
        "d",
        line.straight(),
        "fill",
        "none",
        "stroke",
        style.colour,
        "stroke-width",
        2,
        "stroke-dasharray",
        style.dashes,
        "stroke-linejoin",
        "round");
    double[] distances = line.distances();
    double last = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < line.size(); i++) {
      if (distances[i] - last >= MARKER_GAP || i == line.size() - 1) {
        svg.empty(
            "path",
            "d",
            style.marker,
            "transform",
            "translate(" + Svg.number(line.x()[i]) + " " + Svg.number(line.y()[i]) + ")",
            "fill",
            Look.PAPER,
            "stroke",
            style.colour,
            "stroke-width",
            1.8);
        last = distances[i];
      }
      int pieces = i == 0 ? 1 : (int) Math.ceil((distances[i] - distances[i - 1]) / 6);
      for (int k = 1; k <= pieces; k++) {
        double t = i == 0 ? 0 : k / (double) pieces;
        int from = Math.max(0, i - 1);
        placement.take(
            line.x()[from] * (1 - t) + line.x()[i] * t,
            line.y()[from] * (1 - t) + line.y()[i] * t,
            4);
      }
    }
  }

  double endX() {
    return axes.x(series.points().get(series.points().size() - 1).x());
  }

  double endY() {
    return axes.y(series.points().get(series.points().size() - 1).y().value());
  }

  private Line line() {
    return new Line(
        series.points().stream().mapToDouble(point -> axes.x(point.x())).toArray(),
        series.points().stream().mapToDouble(point -> axes.y(point.y().value())).toArray());
  }
}
