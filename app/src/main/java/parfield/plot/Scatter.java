package parfield.plot;

import java.util.List;
import java.util.stream.DoubleStream;

/** Measured over predicted: what lies on the rising line is as the model says. */
public final class Scatter {
  private static final double SIDE = 420;
  private static final double LEFT = Look.MARGIN + 56;

  private Scatter() {}

  /**
   * Draws a chart.
   *
   * @param spec what to show
   * @return one SVG document
   */
  public static String svg(ScatterSpec spec) {
    Sheet sheet = new Sheet(spec.caption());
    Svg svg = sheet.body();
    double top = sheet.bottom() + 20;
    double greatest =
        spec.points().stream()
            .flatMapToDouble(
                point ->
                    point.marked()
                        ? DoubleStream.of(point.predicted())
                        : DoubleStream.of(point.predicted(), point.measured()))
            .max()
            .orElseThrow();
    double step = Ticks.step(greatest > 0 ? greatest : 1, 6);
    double full = step * Math.max(1, Math.ceil(greatest / step - 1e-9));
    Curves.Axes axes =
        new Curves.Axes(LEFT, top, SIDE, SIDE, new Scale(0, full), new Scale(0, full));
    frame(svg, axes, step, full, spec.unit());
    ribbon(svg, axes, full, spec.band());
    for (ScatterSpec.Point point : spec.points()) {
      // What does not fit may lie far off: it is drawn at the edge then.
      mark(
          svg, axes.x(point.predicted()), axes.y(Math.min(full, point.measured())), point.marked());
    }
    sheet.fillTo(axes.bottom() + 42);
    sheet.key(
        List.of(
            new Sheet.Sign("reading", (out, x, y) -> mark(out, x, y, false)),
            new Sheet.Sign("reading that does not fit", (out, x, y) -> mark(out, x, y, true)),
            new Sheet.Sign(
                "within the model's usual error",
                (out, x, y) ->
                    out.empty(
                        "rect",
                        "x",
                        x - 9,
                        "y",
                        y - 5,
                        "width",
                        18,
                        "height",
                        10,
                        "fill",
                        Look.WATER,
                        "fill-opacity",
                        0.2))),
        LEFT);
    return sheet.finished();
  }

  private static void frame(Svg svg, Curves.Axes axes, double step, double full, String unit) {
    svg.element(
        "text",
        "measured, " + unit,
        "x",
        Look.MARGIN,
        "y",
        axes.top() - 8,
        "font-size",
        Look.SMALL,
        "fill",
        Look.QUIET);
    for (double tick : Ticks.within(0, full, step)) {
      rule(svg, axes.left(), axes.y(tick), axes.right(), axes.y(tick), Look.RULE);
      rule(svg, axes.x(tick), axes.top(), axes.x(tick), axes.bottom(), Look.RULE);
      svg.element(
          "text",
          Ticks.text(tick),
          "x",
          axes.left() - 8,
          "y",
          axes.y(tick) + 4,
          "font-size",
          Look.SMALL,
          "text-anchor",
          "end");
      svg.element(
          "text",
          Ticks.text(tick),
          "x",
          axes.x(tick),
          "y",
          axes.bottom() + 18,
          "font-size",
          Look.SMALL,
          "text-anchor",
          "middle");
    }
    svg.element(
        "text",
        "predicted, " + unit,
        "x",
        axes.left() + SIDE / 2,
        "y",
        axes.bottom() + 36,
        "font-size",
        Look.SMALL,
        "fill",
        Look.QUIET,
        "text-anchor",
        "middle");
  }

  private static void ribbon(Svg svg, Curves.Axes axes, double full, double band) {
    double upper = Math.min(1, 1 / (1 + band));
    double[] x = {0, upper * full, full, full, 0};
    double[] y = {0, full, full, Math.max(0, 1 - band) * full, 0};
    for (int i = 0; i < x.length; i++) {
      x[i] = axes.x(x[i]);
      y[i] = axes.y(y[i]);
    }
    svg.empty("path", "d", new Line(x, y).straight(), "fill", Look.WATER, "fill-opacity", 0.2);
    rule(svg, axes.x(0), axes.y(0), axes.x(full), axes.y(full), Look.QUIET);
  }

  private static void rule(
      Svg svg, double fromX, double fromY, double toX, double toY, String colour) {
    svg.empty(
        "path",
        "d",
        new Line(new double[] {fromX, toX}, new double[] {fromY, toY}).straight(),
        "fill",
        "none",
        "stroke",
        colour);
  }

  private static void mark(Svg svg, double x, double y, boolean marked) {
    String at = "translate(" + Svg.number(x) + " " + Svg.number(y) + ")";
    if (marked) {
      svg.empty(
          "path",
          "d",
          "M-5 -5L5 5M-5 5L5 -5",
          "transform",
          at,
          "stroke",
          Style.LONG.colour,
          "stroke-width",
          2.4);
    } else {
      svg.empty(
          "circle",
          "cx",
          x,
          "cy",
          y,
          "r",
          3.2,
          "fill",
          Look.PAPER,
          "stroke",
          Style.SOLID.colour,
          "stroke-width",
          1.6);
    }
  }
}
