package parfield.plot;

import java.util.List;
import parfield.lamp.Emitter;
import parfield.rig.Hanging;
import parfield.tank.Tank;

/**
 * PPFD on an upright plane along the tank's length, seen from the front: the water line on top, the
 * fixtures over it to scale.
 */
public final class Section {
  private static final double MOST_HEIGHT = 540;

  /** Room over the highest fixture [px]. */
  private static final double HEADROOM = 24;

  private Section() {}

  /**
   * Draws an upright plane of PPFD.
   *
   * @param spec what to show; rows of its raster run from the water line down
   * @return one SVG document
   */
  public static String svg(HeatMapSpec spec) {
    Sheet sheet = new Sheet(spec.caption());
    Frame frame = frame(sheet, spec.scene());
    List<Overlay.Point> readings =
        spec.scene().readings().stream().map(Overlay.Point::fromTheFront).toList();
    Svg svg = sheet.body();
    frame.openClipped(svg);
    HeatMap.plane(svg, frame, spec, readings);
    svg.close("svg");
    sheet.fillTo(frame.drawAxes(svg, spec.scene().length(), "from the left pane", "depth"));
    overWater(svg, frame, spec.scene());
    Legend.draw(sheet, frame, spec);
    sheet.key(Legend.signs(spec.scene().withFixtures(List.of()), frame), frame.left());
    return sheet.finished();
  }

  /** Room for the water, and over it for the fixtures, below what a sheet already holds. */
  static Frame frame(Sheet sheet, Scene scene) {
    Tank tank = scene.tank();
    double air = scene.fixtures().stream().mapToDouble(Hanging::height).max().orElse(0);
    double scale = Frame.scale(tank.length(), tank.depth(), air, MOST_HEIGHT);
    return new Frame(
        Look.MARGIN + Frame.GUTTER,
        sheet.bottom() + HEADROOM + air * scale,
        tank.length(),
        tank.depth(),
        scale,
        false);
  }

  /** The water line and the fixtures over it. */
  static void overWater(Svg svg, Frame frame, Scene scene) {
    waterLine(svg, frame);
    Placement placement = new Placement();
    scene.fixtures().forEach(hanging -> fixture(svg, frame, scene, hanging, placement));
  }

  private static void waterLine(Svg svg, Frame frame) {
    svg.empty(
        "path",
        "d",
        level(frame.left() - 6, frame.right() + 6, frame.top()),
        "stroke",
        Look.WATER,
        "stroke-width",
        3.0);
    svg.element(
        "text",
        "water line",
        "x",
        frame.left(),
        "y",
        frame.top() - 7,
        "font-size",
        Look.SMALL,
        "fill",
        Look.WATER);
  }

  private static void fixture(
      Svg svg, Frame frame, Scene scene, Hanging hanging, Placement placement) {
    double y = frame.y(-hanging.height());
    double half = hanging.fixture().length() / 2;
    for (Emitter emitter : hanging.fixture().emitters()) {
      half = Math.max(half, Math.abs(emitter.x()) + 0.01);
    }
    half *= Math.abs(Math.cos(hanging.yaw()));
    double width = Math.max(12, 2 * half * frame.scale());
    svg.empty(
        "rect",
        "x",
        frame.x(hanging.x()) - width / 2,
        "y",
        y - 12,
        "width",
        width,
        "height",
        9,
        "rx",
        1.5,
        "fill",
        "#e6eaeb",
        "stroke",
        Look.INK,
        "stroke-width",
        1.2);
    for (Emitter emitter : hanging.fixture().emitters()) {
      double x =
          frame.x(
              hanging.x()
                  + emitter.x() * Math.cos(hanging.yaw())
                  - emitter.y() * Math.sin(hanging.yaw()));
      double side = Math.max(8, emitter.aperture() * frame.scale());
      svg.empty(
          "rect", "x", x - side / 2, "y", y - 3, "width", side, "height", 3, "fill", Look.INK);
    }
    height(svg, frame, scene, hanging, placement);
  }

  /** The mounting height as a measured line from the water to the emitters. */
  private static void height(
      Svg svg, Frame frame, Scene scene, Hanging hanging, Placement placement) {
    double x = frame.x(hanging.x());
    double y = frame.y(-hanging.height());
    double high = Math.rint(scene.length().fromMetres(hanging.height()) * 10) / 10;
    String words = Ticks.text(high) + " " + scene.length().symbol();
    double width = Look.width(words, Look.SMALL) + 8;
    double middle = (y + frame.top()) / 2;
    if (frame.top() - y < 26 || !placement.takeIfFree(x + width / 2 + 4, middle, width, 14, 0)) {
      return;
    }
    svg.empty(
        "path",
        "d",
        level(x - 4, x + 4, y + 1)
            + level(x - 4, x + 4, frame.top() - 3)
            + new Line(new double[] {x, x}, new double[] {y + 1, frame.top() - 3}).straight(),
        "stroke",
        Look.QUIET,
        "fill",
        "none");
    svg.element("text", words, "x", x + 8, "y", middle + 4, "font-size", Look.SMALL);
  }

  private static String level(double from, double to, double y) {
    return new Line(new double[] {from, to}, new double[] {y, y}).straight();
  }
}
