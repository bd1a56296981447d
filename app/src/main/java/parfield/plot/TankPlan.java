package parfield.plot;

import parfield.tank.Rectangle;
import parfield.tank.Tank;

/** The tank seen from above, to scale: rim and braces, rocks, and what hangs over it. */
public final class TankPlan {
  private static final double MOST_HEIGHT = 420;

  private TankPlan() {}

  /**
   * Draws a plan.
   *
   * @param caption title and summary
   * @param scene the tank, its fixtures, and the depth at which rocks are cut
   * @return one SVG document
   */
  public static String svg(Caption caption, Scene scene) {
    Tank tank = scene.tank();
    Sheet sheet = new Sheet(caption);
    Frame frame =
        new Frame(
            Look.MARGIN + Frame.GUTTER,
            sheet.bottom(),
            tank.length(),
            tank.width(),
            Frame.scale(tank.length(), tank.width(), 0, MOST_HEIGHT),
            true);
    Svg svg = sheet.body();
    frame.openClipped(svg);
    double rim = tank.opening().rim();
    if (rim > 0) {
      opaque(svg, frame, new Rectangle(0, tank.length(), 0, rim));
      opaque(svg, frame, new Rectangle(0, tank.length(), tank.width() - rim, tank.width()));
      opaque(svg, frame, new Rectangle(0, rim, 0, tank.width()));
      opaque(svg, frame, new Rectangle(tank.length() - rim, tank.length(), 0, tank.width()));
    }
    tank.opening().opaque().forEach(brace -> opaque(svg, frame, brace));
    CutRocks.of(frame, scene).draw(svg, frame);
    Overlay.fixtures(svg, frame, scene.fixtures());
    svg.close("svg");
    sheet.fillTo(frame.drawAxes(svg, scene.length(), "from the left pane", "from the front pane"));
    return sheet.finished();
  }

  private static void opaque(Svg svg, Frame frame, Rectangle part) {
    svg.empty(
        "rect",
        "x",
        frame.x(part.fromX()),
        "y",
        frame.y(part.toY()),
        "width",
        frame.x(part.toX()) - frame.x(part.fromX()),
        "height",
        frame.y(part.fromY()) - frame.y(part.toY()),
        "fill",
        Look.QUIET,
        "fill-opacity",
        0.45);
  }
}
