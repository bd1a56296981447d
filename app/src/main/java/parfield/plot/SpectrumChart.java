package parfield.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * Spectra by wavelength: lines told apart by their dash, one of them filled with the colours of its
 * wavelengths if wished, the difference below on a scale of its own.
 */
public final class SpectrumChart {
  private static final double LEFT = Look.MARGIN + 46;
  private static final double HEIGHT = 270;
  private static final double DIFFERENCE_HEIGHT = 110;

  /** Width of a strip of one colour [nm]. */
  private static final double STRIP = 4;

  private SpectrumChart() {}

  /**
   * Draws a chart.
   *
   * @param spec what to show
   * @return one SVG document
   */
  public static String svg(SpectrumChartSpec spec) {
    Sheet sheet = new Sheet(spec.caption());
    Svg svg = sheet.body();
    double top = sheet.bottom() + 10;
    title(svg, written(spec.vertical()), top);
    boolean words = !spec.spans().isEmpty();
    Curves.Axes axes = axes(spec, spec.lines(), top + (words ? 34 : 12), HEIGHT);
    spans(svg, axes, spec.spans());
    rules(svg, axes, spec.vertical());
    if (spec.filled()) {
      fill(svg, axes, spec.lines().get(0));
    }
    for (int i = spec.lines().size() - 1; i >= 0; i--) {
      draw(svg, axes, spec.lines().get(i), Style.values()[i]);
    }
    Curves.Axes lowest = axes;
    if (spec.difference().isPresent()) {
      SpectrumLine difference = spec.difference().get();
      title(svg, difference.name(), axes.bottom() + 30);
      lowest = axes(spec, List.of(difference), axes.bottom() + 42, DIFFERENCE_HEIGHT);
      rules(svg, lowest, spec.vertical());
      draw(svg, lowest, difference, Style.SHORT);
    }
    wavelengths(svg, lowest);
    sheet.fillTo(lowest.bottom() + 40);
    if (spec.lines().size() > 1) {
      sheet.key(signs(spec.lines()), LEFT);
    }
    return sheet.finished();
  }

  private static String written(Axis axis) {
    return axis.unit().isEmpty() ? axis.label() : axis.label() + ", " + axis.unit();
  }

  private static void title(Svg svg, String text, double y) {
    svg.element(
        "text", text, "x", Look.MARGIN, "y", y, "font-size", Look.SMALL, "fill", Look.QUIET);
  }

  private static Curves.Axes axes(
      SpectrumChartSpec spec, List<SpectrumLine> values, double top, double height) {
    double low = 0;
    double high = 0;
    for (SpectrumLine line : values) {
      for (int i = 0; i < line.size(); i++) {
        low = Math.min(low, line.value(i));
        high = Math.max(high, line.value(i));
      }
    }
    double from = spec.lines().stream().mapToDouble(line -> line.nm(0)).min().orElseThrow();
    double to =
        spec.lines().stream().mapToDouble(line -> line.nm(line.size() - 1)).max().orElseThrow();
    Scale vertical = spec.vertical().range().orElse(around(low, high, spec.vertical().perValue()));
    return new Curves.Axes(
        LEFT, top, Look.WIDTH - Look.MARGIN - LEFT, height, new Scale(from, to), vertical);
  }

  /** Round ends, but no more room below zero than noise needs. */
  private static Scale around(double low, double high, double perValue) {
    Scale round = Scale.around(Math.min(0, low * perValue), high * perValue);
    double bottom = low < 0 && low > -0.1 * high ? low * perValue * 1.2 : round.low();
    return new Scale(bottom / perValue, round.high() / perValue);
  }

  private static void spans(Svg svg, Curves.Axes axes, List<SpectrumChartSpec.Span> spans) {
    for (SpectrumChartSpec.Span span : spans) {
      double from = axes.x(span.from());
      double to = axes.x(span.to());
      if (!(to - from > 1)) {
        continue;
      }
      svg.empty(
          "path",
          "d",
          "M"
              + Svg.number(from)
              + " "
              + Svg.number(axes.top())
              + "V"
              + Svg.number(axes.bottom())
              + "M"
              + Svg.number(to)
              + " "
              + Svg.number(axes.top())
              + "V"
              + Svg.number(axes.bottom()),
          "stroke",
          Look.RULE,
          "fill",
          "none");
      if (Look.width(span.word(), Look.SMALL) < to - from) {
        svg.element(
            "text",
            span.word(),
            "x",
            (from + to) / 2,
            "y",
            axes.top() - 6,
            "font-size",
            Look.SMALL,
            "text-anchor",
            "middle");
      }
    }
  }

  private static void fill(Svg svg, Curves.Axes axes, SpectrumLine line) {
    double from = axes.horizontal().low();
    double to = axes.horizontal().high();
    double zero = axes.y(0);
    for (double nm = from; nm < to; nm += STRIP) {
      double end = Math.min(to, nm + STRIP);
      List<double[]> edge = new ArrayList<>();
      // Strips overlap by half a pixel, so that no seam of paper shows between them.
      double over = end < to ? 0.5 : 0;
      edge.add(new double[] {axes.x(nm), axes.y(line.at(nm))});
      for (int i = 0; i < line.size(); i++) {
        if (line.nm(i) > nm && line.nm(i) < end) {
          edge.add(new double[] {axes.x(line.nm(i)), axes.y(line.value(i))});
        }
      }
      edge.add(new double[] {axes.x(end), axes.y(line.at(end))});
      edge.add(new double[] {axes.x(end) + over, axes.y(line.at(end))});
      edge.add(new double[] {axes.x(end) + over, zero});
      edge.add(new double[] {axes.x(nm), zero});
      edge.add(edge.get(0));
      Line outline =
          new Line(
              edge.stream().mapToDouble(point -> point[0]).toArray(),
              edge.stream().mapToDouble(point -> point[1]).toArray());
      if (edge.stream().allMatch(point -> zero - point[1] < 0.2)) {
        continue;
      }
      svg.empty("path", "d", outline.straight(), "fill", WavelengthColour.hex((nm + end) / 2));
    }
  }

  private static void rules(Svg svg, Curves.Axes axes, Axis vertical) {
    double perValue = vertical.perValue();
    Scale scale = axes.vertical();
    double low = scale.low() * perValue;
    double high = scale.high() * perValue;
    int parts = axes.height() > 200 ? 6 : 3;
    for (double tick : Ticks.within(low, high, Ticks.step(high - low, parts))) {
      double y = axes.y(tick / perValue);
      stroke(svg, axes.left(), y, axes.right(), y, tick == 0 ? Look.INK : Look.RULE);
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
  }

  private static void wavelengths(Svg svg, Curves.Axes axes) {
    double span = axes.horizontal().high() - axes.horizontal().low();
    double step = Ticks.step(span, (int) (axes.width() / 60));
    for (double tick : Ticks.within(axes.horizontal().low(), axes.horizontal().high(), step)) {
      double x = axes.x(tick);
      stroke(svg, x, axes.bottom(), x, axes.bottom() + 5, Look.INK);
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
    svg.element(
        "text",
        "wavelength, nm",
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

  private static void stroke(
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

  private static void draw(Svg svg, Curves.Axes axes, SpectrumLine line, Style style) {
    svg.empty(
        "path",
        "d",
        line.on(axes).straight(),
        "fill",
        "none",
        "stroke",
        style.colour,
        "stroke-width",
        1.8,
        "stroke-dasharray",
        style.dashes,
        "stroke-linejoin",
        "round");
  }

  private static List<Sheet.Sign> signs(List<SpectrumLine> lines) {
    List<Sheet.Sign> signs = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      Style style = Style.values()[i];
      signs.add(
          new Sheet.Sign(
              lines.get(i).name(),
              (out, x, y) ->
                  out.empty(
                      "path",
                      "d",
                      new Line(new double[] {x - 12, x + 9}, new double[] {y, y}).straight(),
                      "fill",
                      "none",
                      "stroke",
                      style.colour,
                      "stroke-width",
                      1.8,
                      "stroke-dasharray",
                      style.dashes)));
    }
    return signs;
  }
}
