package parfield.plot;

import java.util.List;
import parfield.lamp.Emitter;
import parfield.rig.Hanging;
import parfield.survey.Spot;
import parfield.tank.Rectangle;

/** What is drawn over the values of a plane: readings, fixtures, the part not measured. */
final class Overlay {
  private static final double HATCH_GAP = 8;

  /** Least side of an emitter's outline [px]. */
  private static final double LEAST_EMITTER = 9;

  private Overlay() {}

  /** Hatches the plane outside a rectangle. */
  static void hatchOutside(Svg svg, Frame frame, Rectangle measured) {
    double width = frame.spanX();
    double height = frame.spanY();
    Regions.hatch(
        svg,
        frame,
        (u, v) -> !measured.contains(u * width, v * height),
        Regions.RISING,
        HATCH_GAP,
        Look.PAPER,
        1.4,
        0.75);
    svg.empty(
        "rect",
        "x",
        frame.x(measured.fromX()),
        "y",
        Math.min(frame.y(measured.fromY()), frame.y(measured.toY())),
        "width",
        (measured.toX() - measured.fromX()) * frame.scale(),
        "height",
        (measured.toY() - measured.fromY()) * frame.scale(),
        "fill",
        "none",
        "stroke",
        Look.PAPER,
        "stroke-dasharray",
        "2 3");
  }

  /** Outlines fixtures and their emitters, seen from above. */
  static void fixtures(Svg svg, Frame frame, List<Hanging> fixtures) {
    for (Hanging hanging : fixtures) {
      double halfLength = hanging.fixture().length() / 2;
      double halfWidth = hanging.fixture().width() / 2;
      if (halfLength > 0 && halfWidth > 0) {
        outline(svg, square(frame, hanging, 0, 0, halfLength, halfWidth), "5 4");
      }
      for (Emitter emitter : hanging.fixture().emitters()) {
        double half = Math.max(emitter.aperture() / 2, LEAST_EMITTER / 2 / frame.scale());
        outline(svg, square(frame, hanging, emitter.x(), emitter.y(), half, half), "none");
      }
    }
  }

  /** Draws readings as dots, with their values where those find room. */
  static void readings(Svg svg, Frame frame, List<Point> readings, Placement placement) {
    double size = 11;
    double nearest = nearest(frame, readings);
    boolean valued =
        readings.stream()
            .allMatch(point -> Look.width(words(point), size) + 4 <= nearest && nearest >= 26);
    for (Point point : readings) {
      double x = frame.x(point.across());
      double y = frame.y(point.second());
      dot(svg, x, y);
      placement.take(x, y, 6);
      if (valued) {
        double below = y + 19 > frame.bottom() ? y - 11 : y + 11;
        double half = Look.width(words(point), size) / 2 + 2;
        double middle = Math.max(frame.left() + half, Math.min(frame.right() - half, x));
        if (placement.takeIfFree(middle, below + 0.5, 2 * half, size - 1, 0)) {
          svg.haloed(
              words(point),
              2.5,
              "x",
              middle,
              "y",
              below + 4,
              "font-size",
              size,
              "text-anchor",
              "middle");
        }
      }
    }
  }

  /** A reading's dot. */
  static void dot(Svg svg, double x, double y) {
    svg.empty(
        "circle",
        "cx",
        x,
        "cy",
        y,
        "r",
        3.0,
        "fill",
        Look.PAPER,
        "stroke",
        Look.INK,
        "stroke-width",
        1.4);
  }

  /** The sign of a fixture in the key. */
  static void fixtureSign(Svg svg, double x, double y) {
    svg.empty(
        "path",
        "d",
        box(x, y, 8.5, 5.5).straight(),
        "fill",
        "none",
        "stroke",
        Look.INK,
        "stroke-width",
        1.3,
        "stroke-dasharray",
        "3 2");
    svg.empty(
        "path",
        "d",
        box(x, y, 2.2, 2.2).straight(),
        "fill",
        "none",
        "stroke",
        Look.INK,
        "stroke-width",
        1.3);
  }

  /** The sign of hatching in the key. */
  static void hatchSign(Svg svg, double x, double y) {
    svg.empty("rect", "x", x - 9, "y", y - 6, "width", 18, "height", 12, "fill", "#5f7d80");
    svg.empty(
        "path",
        "d",
        "M"
            + p(x - 9, y + 3)
            + "L"
            + p(x, y - 6)
            + "M"
            + p(x - 6, y + 6)
            + "L"
            + p(x + 6, y - 6)
            + "M"
            + p(x, y + 6)
            + "L"
            + p(x + 9, y - 3),
        "stroke",
        Look.PAPER,
        "stroke-width",
        1.4);
  }

  /**
   * A reading in the plane of a picture.
   *
   * @param across along x [m]
   * @param second along y or depth [m]
   * @param ppfd there
   */
  record Point(double across, double second, double ppfd) {
    static Point fromAbove(Spot spot) {
      return new Point(spot.place().x(), spot.place().y(), spot.ppfd());
    }

    static Point fromTheFront(Spot spot) {
      return new Point(spot.place().x(), spot.place().depth(), spot.ppfd());
    }
  }

  private static String words(Point point) {
    return Ticks.text(Math.rint(point.ppfd()));
  }

  private static double nearest(Frame frame, List<Point> readings) {
    double nearest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < readings.size(); i++) {
      for (int j = 0; j < i; j++) {
        nearest =
            Math.min(
                nearest,
                frame.scale()
                    * Math.hypot(
                        readings.get(i).across() - readings.get(j).across(),
                        readings.get(i).second() - readings.get(j).second()));
      }
    }
    return nearest;
  }

  /** A rectangle about an offset from a fixture's centre, turned with the fixture. */
  private static Line square(
      Frame frame, Hanging hanging, double x, double y, double halfX, double halfY) {
    Line corners = box(x, y, halfX, halfY);
    double cos = Math.cos(hanging.yaw());
    double sin = Math.sin(hanging.yaw());
    double[] sheetX = new double[5];
    double[] sheetY = new double[5];
    for (int i = 0; i < 5; i++) {
      sheetX[i] = frame.x(hanging.x() + corners.x()[i] * cos - corners.y()[i] * sin);
      sheetY[i] = frame.y(hanging.y() + corners.x()[i] * sin + corners.y()[i] * cos);
    }
    return new Line(sheetX, sheetY);
  }

  private static void outline(Svg svg, Line line, String dashes) {
    String path = line.straight();
    svg.empty(
        "path",
        "d",
        path,
        "fill",
        "none",
        "stroke",
        Look.INK,
        "stroke-width",
        3.2,
        "stroke-opacity",
        0.75);
    svg.empty(
        "path",
        "d",
        path,
        "fill",
        "none",
        "stroke",
        Look.PAPER,
        "stroke-width",
        1.5,
        "stroke-dasharray",
        dashes);
  }

  private static Line box(double x, double y, double halfX, double halfY) {
    return new Line(
        new double[] {x - halfX, x + halfX, x + halfX, x - halfX, x - halfX},
        new double[] {y - halfY, y - halfY, y + halfY, y + halfY, y - halfY});
  }

  private static String p(double x, double y) {
    return Svg.number(x) + " " + Svg.number(y);
  }
}
