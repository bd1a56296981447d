package parfield.plot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Curves with their intervals as ribbons. Each is told apart by dash, marker and the name at its
 * end; colour only helps.
 */
public final class Curves {
  private static final double HEIGHT = 320;
  private static final double NAME_LINE = 15;
  private static final double LEFT = Look.MARGIN + 46;

  private Curves() {}

  /**
   * Draws a chart.
   *
   * @param spec what to show
   * @return one SVG document
   */
  public static String svg(CurvesSpec spec) {
    Sheet sheet = new Sheet(spec.caption());
    Svg svg = sheet.body();
    double names =
        spec.series().stream()
            .mapToDouble(series -> Look.width(series.name(), Look.SMALL) * Look.STRONG + 20)
            .max()
            .orElseThrow();
    double titleY = sheet.bottom() + 10;
    svg.element(
        "text",
        title(spec.vertical()),
        "x",
        Look.MARGIN,
        "y",
        titleY,
        "font-size",
        Look.SMALL,
        "fill",
        Look.QUIET);
    Axes axes =
        new Axes(
            LEFT,
            titleY + 12,
            Look.WIDTH - Look.MARGIN - Math.min(names, 200) - LEFT,
            HEIGHT,
            range(spec.horizontal(), xs(spec)),
            range(spec.vertical(), ys(spec)));
    grid(svg, axes, spec);
    Placement placement = new Placement();
    List<Curve> curves = new ArrayList<>();
    for (int i = 0; i < spec.series().size(); i++) {
      curves.add(new Curve(spec.series().get(i), Style.values()[i], axes));
    }
    curves.forEach(curve -> curve.drawRibbon(svg));
    spec.thresholds().forEach(threshold -> rule(svg, axes, threshold));
    curves.forEach(curve -> curve.draw(svg, placement));
    for (Threshold threshold : spec.thresholds()) {
      words(svg, axes, threshold, placement);
    }
    names(svg, axes, curves);
    sheet.fillTo(axes.bottom() + 40);
    boolean ribbons =
        spec.series().stream()
            .flatMap(series -> series.points().stream())
            .anyMatch(point -> point.y().high() > point.y().low());
    if (ribbons) {
      sheet.key(
          List.of(
              new Sheet.Sign(
                  "5–95 % interval",
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
                          Look.QUIET,
                          "fill-opacity",
                          0.25))),
          axes.left());
    }
    return sheet.finished();
  }

  private static DoubleStream xs(CurvesSpec spec) {
    return spec.series().stream()
        .flatMap(series -> series.points().stream())
        .mapToDouble(Series.Point::x);
  }

  private static DoubleStream ys(CurvesSpec spec) {
    return DoubleStream.concat(
        spec.series().stream()
            .flatMap(series -> series.points().stream())
            .flatMapToDouble(
                point -> DoubleStream.of(point.y().low(), point.y().value(), point.y().high())),
        spec.thresholds().stream().mapToDouble(Threshold::value));
  }

  private static Scale range(Axis axis, DoubleStream values) {
    if (axis.range().isPresent()) {
      return axis.range().get();
    }
    double[] all = values.map(value -> value * axis.perValue()).toArray();
    double low = DoubleStream.of(all).min().orElseThrow();
    double high = DoubleStream.of(all).max().orElseThrow();
    Scale round =
        axis.length().isPresent() && high > low ? new Scale(low, high) : Scale.around(low, high);
    return new Scale(round.low() / axis.perValue(), round.high() / axis.perValue());
  }

  private static String title(Axis axis) {
    return axis.unit().isEmpty() ? axis.label() : axis.label() + ", " + axis.unit();
  }

  private static List<Double> ticks(Axis axis, Scale range, int most) {
    double low = range.low() * axis.perValue();
    double high = range.high() * axis.perValue();
    double step =
        axis.length()
            .map(unit -> Ticks.lengthStep(unit.toMetres(high - low), unit, most))
            .orElse(Ticks.step(high - low, most));
    return Ticks.within(low, high, step);
  }

  private static void grid(Svg svg, Axes axes, CurvesSpec spec) {
    for (double tick : ticks(spec.vertical(), axes.vertical(), Scale.PARTS + 2)) {
      double y = axes.y(tick / spec.vertical().perValue());
      line(svg, axes.left(), y, axes.right(), y, Look.RULE, "none");
      svg.element(
          "text",
          Ticks.text(tick),
          "x",
          axes.left() - 8,
          "y",
          y + 4,
          "font-size",
          Look.SMALL,
          "text-anchor",
          "end");
    }
    for (double tick : ticks(spec.horizontal(), axes.horizontal(), (int) (axes.width() / 46))) {
      double x = axes.x(tick / spec.horizontal().perValue());
      line(svg, x, axes.bottom(), x, axes.bottom() + 5, Look.INK, "none");
      svg.element(
          "text",
          Ticks.text(tick),
          "x",
          x,
          "y",
          axes.bottom() + 18,
          "font-size",
          Look.SMALL,
          "text-anchor",
          "middle");
    }
    line(svg, axes.left(), axes.bottom(), axes.right(), axes.bottom(), Look.INK, "none");
    svg.element(
        "text",
        title(spec.horizontal()),
        "x",
        axes.left() + axes.width() / 2,
        "y",
        axes.bottom() + 36,
        "font-size",
        Look.SMALL,
        "fill",
        Look.QUIET,
        "text-anchor",
        "middle");
  }

  private static void rule(Svg svg, Axes axes, Threshold threshold) {
    double y = axes.y(threshold.value());
    line(svg, axes.left(), y, axes.right(), y, Look.INK, "1 3");
  }

  /** Writes a threshold's label over its line, or under it, where no curve passes. */
  private static void words(Svg svg, Axes axes, Threshold threshold, Placement placement) {
    double y = axes.y(threshold.value());
    double width = Look.width(threshold.label(), Look.SMALL) + 6;
    for (double side : new double[] {-9, 9}) {
      for (double x = axes.left() + width / 2 + 2; x < axes.right() - width / 2; x += 8) {
        if (placement.takeIfFree(x, y + side, width, 13, 0)) {
          svg.haloed(
              threshold.label(),
              3,
              "x",
              x,
              "y",
              y + side + 4,
              "font-size",
              Look.SMALL,
              "text-anchor",
              "middle");
          return;
        }
      }
    }
    svg.haloed(threshold.label(), 3, "x", axes.left() + 4, "y", y - 5, "font-size", Look.SMALL);
  }

  /** Writes each name beside the end of its curve, apart from the others. */
  private static void names(Svg svg, Axes axes, List<Curve> curves) {
    List<Curve> fromTop = curves.stream().sorted(Comparator.comparingDouble(Curve::endY)).toList();
    double room = (Look.WIDTH - Look.MARGIN - axes.right() - 16) / Look.STRONG;
    List<List<String>> names =
        fromTop.stream()
            .map(curve -> Look.wrapped(curve.series().name(), Look.SMALL, room))
            .toList();
    double[] y = fromTop.stream().mapToDouble(Curve::endY).toArray();
    for (int i = 1; i < y.length; i++) {
      y[i] = Math.max(y[i], y[i - 1] + NAME_LINE * names.get(i - 1).size());
    }
    double lowest = axes.bottom() + NAME_LINE;
    for (int i = y.length - 1; i >= 0; i--) {
      lowest = Math.min(y[i], lowest - NAME_LINE * names.get(i).size());
      y[i] = lowest;
    }
    for (int i = 0; i < y.length; i++) {
      Curve curve = fromTop.get(i);
      String colour = curve.style().colour;
      line(svg, curve.endX() + 6, curve.endY(), axes.right() + 12, y[i], colour, "none");
      for (int k = 0; k < names.get(i).size(); k++) {
        svg.element(
            "text",
            names.get(i).get(k),
            "x",
            axes.right() + 16,
            "y",
            y[i] + 4 + NAME_LINE * k,
            "font-size",
            Look.SMALL,
            "font-weight",
            "600",
            "fill",
            colour);
      }
    }
  }

  private static void line(
      Svg svg, double fromX, double fromY, double toX, double toY, String colour, String dashes) {
    svg.empty(
        "path",
        "d",
        new Line(new double[] {fromX, toX}, new double[] {fromY, toY}).straight(),
        "fill",
        "none",
        "stroke",
        colour,
        "stroke-dasharray",
        dashes);
  }

  /** Where the chart's plane stands on the sheet, and what it spans. */
  record Axes(
      double left, double top, double width, double height, Scale horizontal, Scale vertical) {
    double right() {
      return left + width;
    }

    double bottom() {
      return top + height;
    }

    double x(double value) {
      return left + horizontal.share(value) * width;
    }

    double y(double value) {
      return bottom() - vertical.share(value) * height;
    }
  }
}
