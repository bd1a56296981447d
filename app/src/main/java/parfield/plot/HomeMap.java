package parfield.plot;

import java.util.ArrayList;
import java.util.List;
import parfield.tank.Tank;

/**
 * Where a plane is home for a group of corals, where it is too little or too much for it, by PPFD
 * or by dose, and where the intervals leave that open. All are told apart by hatching and by words;
 * their tints only help.
 */
public final class HomeMap {
  private static final double MOST_HEIGHT = 460;
  private static final double SPACING = 3;

  private HomeMap() {}

  /**
   * Draws a level plane, seen from above.
   *
   * @param spec what to show; rows of its rasters run from front to back
   * @return one SVG document
   */
  public static String plan(HomeMapSpec spec) {
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
    List<Sheet.Sign> signs = plane(sheet, frame, spec);
    sheet.fillTo(
        frame.drawAxes(
            sheet.body(), spec.scene().length(), "from the left pane", "from the front pane"));
    signs.addAll(Legend.signs(spec.scene(), frame));
    sheet.key(signs, frame.left());
    return sheet.finished();
  }

  /**
   * Draws the upright plane through the middle of the tank, seen from the front.
   *
   * @param spec what to show; rows of its rasters run from the water line down
   * @return one SVG document
   */
  public static String section(HomeMapSpec spec) {
    Sheet sheet = new Sheet(spec.caption());
    Frame frame = Section.frame(sheet, spec.scene());
    List<Sheet.Sign> signs = plane(sheet, frame, spec);
    sheet.fillTo(
        frame.drawAxes(sheet.body(), spec.scene().length(), "from the left pane", "depth"));
    Section.overWater(sheet.body(), frame, spec.scene());
    signs.addAll(Legend.signs(spec.scene().withFixtures(List.of()), frame));
    sheet.key(signs, frame.left());
    return sheet.finished();
  }

  private static List<Sheet.Sign> plane(Sheet sheet, Frame frame, HomeMapSpec spec) {
    Verdicts verdicts =
        new HomeVerdicts(
            frame.lattice(spec.peakLow(), SPACING),
            frame.lattice(spec.peakHigh(), SPACING),
            frame.lattice(spec.doseLow(), SPACING),
            frame.lattice(spec.doseHigh(), SPACING),
            spec.group());
    CutRocks rocks = BandMap.plane(sheet.body(), frame, spec.scene(), verdicts);
    return new ArrayList<>(BandMap.signs(verdicts, rocks));
  }
}
