package parfield.plot;

import java.util.List;
import java.util.Locale;
import parfield.tank.Tank;

/**
 * Residuals of a plane seen from above: a disc where a reading is brighter than the model, a ring
 * where it is darker, as wide as the residual is large, each with its percentage.
 */
public final class ResidualMap {
  private static final double MOST_HEIGHT = 420;

  /** Radius of the sign of a residual of 10 % [px]. */
  private static final double OF_TENTH = 11;

  private ResidualMap() {}

  /**
   * Draws a map.
   *
   * @param spec what to show
   * @return one SVG document
   */
  public static String svg(ResidualMapSpec spec) {
    Tank tank = spec.scene().tank();
    Sheet sheet = new Sheet(spec.caption());
    Frame frame =
        new Frame(
            Look.MARGIN + Frame.GUTTER,
            sheet.bottom(),
            tank.length(),
            tank.width(),
            Frame.scale(tank.length(), tank.width(), 0, MOST_HEIGHT),
            true);
    frame.openClipped(sheet.body());
    Overlay.fixtures(sheet.body(), frame, spec.scene().fixtures());
    sheet.body().close("svg");
    spec.residuals().forEach(residual -> sign(sheet.body(), frame, residual));
    Placement placement = new Placement();
    spec.residuals()
        .forEach(
            residual ->
                placement.take(
                    frame.x(residual.x()), frame.y(residual.y()), radius(residual.relative())));
    spec.residuals().forEach(residual -> words(sheet.body(), frame, residual, placement));
    sheet.fillTo(
        frame.drawAxes(
            sheet.body(), spec.scene().length(), "from the left pane", "from the front pane"));
    sheet.key(
        List.of(
            new Sheet.Sign(
                "brighter than the model", (svg, x, y) -> draw(svg, x, y, 6, true, false)),
            new Sheet.Sign(
                "darker than the model", (svg, x, y) -> draw(svg, x, y, 6, false, false)),
            new Sheet.Sign(
                "reading that does not fit", (svg, x, y) -> draw(svg, x, y, 3, false, true))),
        frame.left());
    return sheet.finished();
  }

  private static double radius(double relative) {
    return Math.max(2.5, Math.min(2 * OF_TENTH, OF_TENTH * Math.sqrt(Math.abs(relative) / 0.1)));
  }

  private static void sign(Svg svg, Frame frame, ResidualMapSpec.Residual residual) {
    draw(
        svg,
        frame.x(residual.x()),
        frame.y(residual.y()),
        radius(residual.relative()),
        residual.relative() >= 0,
        residual.marked());
  }

  private static void draw(
      Svg svg, double x, double y, double radius, boolean brighter, boolean marked) {
    svg.empty(
        "circle",
        "cx",
        x,
        "cy",
        y,
        "r",
        radius,
        "fill",
        brighter ? Style.DASHED.colour : "none",
        "fill-opacity",
        0.55,
        "stroke",
        brighter ? Style.DASHED.colour : Style.SOLID.colour,
        "stroke-width",
        2);
    if (marked) {
      svg.empty(
          "path",
          "d",
          "M-7 -7L7 7M-7 7L7 -7",
          "transform",
          "translate(" + Svg.number(x) + " " + Svg.number(y) + ")",
          "stroke",
          Look.INK,
          "stroke-width",
          2);
    }
  }

  private static void words(
      Svg svg, Frame frame, ResidualMapSpec.Residual residual, Placement placement) {
    String text = String.format(Locale.ROOT, "%+.0f", 100 * residual.relative());
    double x = frame.x(residual.x());
    double radius = radius(residual.relative());
    double width = Look.width(text, Look.SMALL);
    for (double side : new double[] {1, -1}) {
      double y = frame.y(residual.y()) + side * (radius + 9);
      if (y > frame.top() + 4
          && y < frame.bottom() - 4
          && placement.takeIfFree(x, y, width, 11, 0)) {
        svg.haloed(text, 3, "x", x, "y", y + 4, "font-size", Look.SMALL, "text-anchor", "middle");
        return;
      }
    }
  }
}
