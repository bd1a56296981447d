package parfield.plot;

import java.util.List;
import parfield.tank.Tank;

/** PPFD on a level plane of the tank, seen from above: front at the bottom, left at the left. */
public final class HeatMap {
  private static final double MOST_HEIGHT = 460;

  /** Pixels of the sheet for one pixel of the embedded image. */
  private static final double PIXEL = 2;

  private HeatMap() {}

  /**
   * Draws a plane of PPFD: colours, isolines with labels, readings, fixtures, colour bar.
   *
   * @param spec what to show; rows of its raster run from front to back
   * @return one SVG document
   */
  public static String svg(HeatMapSpec spec) {
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
    List<Overlay.Point> readings =
        spec.scene().readings().stream().map(Overlay.Point::fromAbove).toList();
    frame.openClipped(sheet.body());
    plane(sheet.body(), frame, spec, readings);
    sheet.body().close("svg");
    sheet.fillTo(
        frame.drawAxes(
            sheet.body(), spec.scene().length(), "from the left pane", "from the front pane"));
    Legend.draw(sheet, frame, spec);
    sheet.key(Legend.signs(spec.scene(), frame), frame.left());
    return sheet.finished();
  }

  /** Draws everything inside the plane's outline; fixtures only where it is seen from above. */
  static void plane(Svg svg, Frame frame, HeatMapSpec spec, List<Overlay.Point> readings) {
    colours(svg, frame, spec);
    Placement placement = new Placement();
    CutRocks rocks = CutRocks.of(frame, spec.scene());
    rocks.keepOff(frame, placement);
    spec.scene().measured().ifPresent(part -> Overlay.hatchOutside(svg, frame, part));
    if (frame.upward()) {
      Overlay.fixtures(svg, frame, spec.scene().fixtures());
    }
    Svg points = new Svg();
    Overlay.readings(points, frame, readings, placement);
    Isolines.draw(svg, frame, spec, placement);
    rocks.draw(svg, frame);
    svg.append(points);
  }

  private static void colours(Svg svg, Frame frame, HeatMapSpec spec) {
    Lattice field = frame.lattice(spec.ppfd(), PIXEL);
    int columns = field.x().length;
    int rows = field.y().length;
    int[] indices = new int[columns * rows];
    for (int row = 0; row < rows; row++) {
      int from = frame.upward() ? rows - 1 - row : row;
      for (int column = 0; column < columns; column++) {
        indices[row * columns + column] =
            Viridis.index(spec.scale().share(field.value(column, from)));
      }
    }
    svg.image(columns, rows, indices, frame.left(), frame.top(), frame.width(), frame.height());
  }
}
