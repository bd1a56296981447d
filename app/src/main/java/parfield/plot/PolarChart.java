package parfield.plot;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import parfield.units.Estimate;

/** A polar chart of a lamp's intensity, the lamp on top, its interval as a ribbon. */
public final class PolarChart {
  private static final double RADIUS = 230;
  private static final int RINGS = 4;

  private PolarChart() {}

  /**
   * Draws a chart.
   *
   * @param spec what to show
   * @return one SVG document
   */
  public static String svg(PolarChartSpec spec) {
    Sheet sheet = new Sheet(spec.caption());
    Svg svg = sheet.body();
    double cx = Look.WIDTH / 2;
    double cy = sheet.bottom() + 24;
    double greatest =
        spec.lobes().stream()
            .flatMap(lobe -> lobe.intensities().stream())
            .mapToDouble(Estimate::high)
            .max()
            .orElseThrow();
    double step = Ticks.step(greatest > 0 ? greatest : 1, RINGS);
    double full = step * Math.max(1, Math.ceil(greatest / step - 1e-9));
    rings(svg, cx, cy, step, full, spec.unit());
    for (int i = 0; i < spec.lobes().size(); i++) {
      lobe(svg, cx, cy, full, spec.lobes().get(i), Style.values()[i]);
    }
    sheet.fillTo(cy + RADIUS + 26);
    sheet.key(signs(spec), Look.MARGIN);
    return sheet.finished();
  }

  private static void rings(Svg svg, double cx, double cy, double step, double full, String unit) {
    int count = (int) Math.round(full / step);
    for (int ring = 1; ring <= count; ring++) {
      double radius = RADIUS * ring / count;
      svg.empty(
          "path",
          "d",
          String.format(
              Locale.ROOT,
              "M%s %sA%s %s 0 0 0 %s %s",
              Svg.number(cx - radius),
              Svg.number(cy),
              Svg.number(radius),
              Svg.number(radius),
              Svg.number(cx + radius),
              Svg.number(cy)),
          "fill",
          "none",
          "stroke",
          Look.RULE);
      svg.haloed(
          Ticks.text(ring * step) + (ring == count ? " " + unit : ""),
          3,
          "x",
          cx + 5,
          "y",
          cy + radius - 4,
          "font-size",
          Look.SMALL,
          "fill",
          Look.QUIET);
    }
    for (int degrees = -90; degrees <= 90; degrees += 30) {
      double angle = Math.toRadians(degrees);
      double x = cx + RADIUS * Math.sin(angle);
      double y = cy + RADIUS * Math.cos(angle);
      svg.empty("path", "d", path(cx, cy, x, y), "stroke", Look.RULE, "fill", "none");
      svg.element(
          "text",
          Math.abs(degrees) + "°",
          "x",
          cx + (RADIUS + 16) * Math.sin(angle),
          "y",
          cy + (RADIUS + 14) * Math.cos(angle) + 4,
          "font-size",
          Look.SMALL,
          "fill",
          Look.QUIET,
          "text-anchor",
          "middle");
    }
  }

  private static String path(double fromX, double fromY, double toX, double toY) {
    return new Line(new double[] {fromX, toX}, new double[] {fromY, toY}).straight();
  }

  private static void lobe(
      Svg svg, double cx, double cy, double full, PolarChartSpec.Lobe lobe, Style style) {
    int n = lobe.angles().size();
    double[] x = new double[2 * n + 1];
    double[] y = new double[2 * n + 1];
    for (int i = 0; i < n; i++) {
      double angle = lobe.angles().get(i);
      double outer = RADIUS * lobe.intensities().get(i).high() / full;
      double inner = RADIUS * lobe.intensities().get(i).low() / full;
      x[i] = cx + outer * Math.sin(angle);
      y[i] = cy + outer * Math.cos(angle);
      x[2 * n - 1 - i] = cx + inner * Math.sin(angle);
      y[2 * n - 1 - i] = cy + inner * Math.cos(angle);
    }
    x[2 * n] = x[0];
    y[2 * n] = y[0];
    svg.empty("path", "d", new Line(x, y).straight(), "fill", style.colour, "fill-opacity", 0.16);
    svg.empty(
        "path",
        "d",
        curve(cx, cy, full, lobe, Estimate::value).straight(),
        "fill",
        "none",
        "stroke",
        style.colour,
        "stroke-width",
        2,
        "stroke-dasharray",
        style.dashes);
  }

  private static Line curve(
      double cx, double cy, double full, PolarChartSpec.Lobe lobe, ToDoubleFunction<Estimate> end) {
    int n = lobe.angles().size();
    double[] x = new double[n];
    double[] y = new double[n];
    for (int i = 0; i < n; i++) {
      double radius = RADIUS * end.applyAsDouble(lobe.intensities().get(i)) / full;
      x[i] = cx + radius * Math.sin(lobe.angles().get(i));
      y[i] = cy + radius * Math.cos(lobe.angles().get(i));
    }
    return new Line(x, y);
  }

  private static List<Sheet.Sign> signs(PolarChartSpec spec) {
    List<Sheet.Sign> signs = new java.util.ArrayList<>();
    for (int i = 0; i < spec.lobes().size(); i++) {
      Style style = Style.values()[i];
      signs.add(
          new Sheet.Sign(
              spec.lobes().get(i).name() + ", with its 5–95 % interval",
              (svg, x, y) -> {
                svg.empty(
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
                    style.colour,
                    "fill-opacity",
                    0.16);
                svg.empty(
                    "path",
                    "d",
                    path(x - 9, y, x + 9, y),
                    "stroke",
                    style.colour,
                    "stroke-width",
                    2,
                    "stroke-dasharray",
                    style.dashes,
                    "fill",
                    "none");
              }));
    }
    return signs;
  }
}
