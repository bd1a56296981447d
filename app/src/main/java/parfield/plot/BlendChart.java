package parfield.plot;

import java.util.List;
import java.util.Locale;

/**
 * Places by figures, each cell with its difference in numbers, tinted by its size: blue below,
 * amber above. The sign tells the side, the tint only helps.
 */
public final class BlendChart {
  private static final double ROW = 24;
  private static final String BELOW = "#2f6ea5";
  private static final String ABOVE = "#b36a12";

  private BlendChart() {}

  /**
   * Draws a chart.
   *
   * @param spec what to show
   * @return one SVG document
   */
  public static String svg(BlendChartSpec spec) {
    Sheet sheet = new Sheet(spec.caption());
    Svg svg = sheet.body();
    double names =
        Math.min(
            170,
            30
                + spec.places().stream()
                    .mapToDouble(place -> Look.width(place.name(), Look.SMALL))
                    .max()
                    .orElseThrow());
    double left = Look.MARGIN + names;
    double width = (Look.WIDTH - Look.MARGIN - left) / spec.columns().size();
    double top = sheet.bottom() + 34;
    for (int c = 0; c < spec.columns().size(); c++) {
      List<String> lines = spec.columns().get(c).name().lines().toList();
      for (int k = 0; k < lines.size(); k++) {
        text(
            svg,
            lines.get(k),
            left + (c + 0.5) * width,
            top - 8 - 14 * (lines.size() - 1 - k),
            "middle",
            Look.QUIET);
      }
    }
    for (int p = 0; p < spec.places().size(); p++) {
      BlendChartSpec.Place place = spec.places().get(p);
      double y = top + p * ROW;
      svg.empty(
          "rect",
          "x",
          Look.MARGIN,
          "y",
          y + 5,
          "width",
          14,
          "height",
          14,
          "fill",
          place.colour(),
          "stroke",
          Look.QUIET);
      text(svg, fitted(place.name(), names - 26), Look.MARGIN + 20, y + 16.5, "start", Look.INK);
      for (int c = 0; c < spec.columns().size(); c++) {
        cell(svg, spec, c, place.differences().get(c), left + c * width, y, width);
      }
    }
    double bottom = top + spec.places().size() * ROW;
    sheet.fillTo(bottom + 2);
    sheet.key(
        List.of(
            new Sheet.Sign(
                "less than the mean of all places", (out, x, y) -> sign(out, x, y, BELOW)),
            new Sheet.Sign("more", (out, x, y) -> sign(out, x, y, ABOVE))),
        Look.MARGIN);
    return sheet.finished();
  }

  private static void sign(Svg svg, double x, double y, String colour) {
    svg.empty(
        "rect",
        "x",
        x - 9,
        "y",
        y - 6,
        "width",
        18,
        "height",
        12,
        "fill",
        colour,
        "fill-opacity",
        0.5);
  }

  private static String fitted(String name, double room) {
    if (Look.width(name, Look.SMALL) <= room) {
      return name;
    }
    int length = name.length();
    while (length > 1 && Look.width(name.substring(0, length) + "…", Look.SMALL) > room) {
      length--;
    }
    return name.substring(0, length) + "…";
  }

  private static void cell(
      Svg svg,
      BlendChartSpec spec,
      int column,
      double difference,
      double x,
      double y,
      double width) {
    BlendChartSpec.Column of = spec.columns().get(column);
    double share = Math.min(1, Math.abs(difference) / of.most());
    if (share >= spec.least()) {
      svg.empty(
          "rect",
          "x",
          x + 1,
          "y",
          y + 1,
          "width",
          width - 2,
          "height",
          ROW - 2,
          "fill",
          difference < 0 ? BELOW : ABOVE,
          "fill-opacity",
          0.08 + 0.42 * share);
    }
    text(svg, number(difference, of), x + width / 2, y + 16.5, "middle", Look.INK);
  }

  private static String number(double value, BlendChartSpec.Column column) {
    String sign = column.signed() ? "+" : "";
    String text = String.format(Locale.ROOT, "%" + sign + "." + column.digits() + "f", value);
    return text.matches("[+-]0(\\.0+)?") ? text.substring(1) : text.replace('-', '\u2212');
  }

  private static void text(Svg svg, String text, double x, double y, String anchor, String colour) {
    svg.element(
        "text",
        text,
        "x",
        x,
        "y",
        y,
        "font-size",
        Look.SMALL,
        "fill",
        colour,
        "text-anchor",
        anchor);
  }
}
