package parfield.plot;

import java.util.List;
import parfield.aquascape.Aquascape;
import parfield.tank.Tank;

/**
 * The faces at which a plane cuts the rocks of a scene.
 *
 * @param outlines closed lines in shares of the plane's spans; none where no rock is cut
 * @param part the places inside
 */
record CutRocks(List<Line> outlines, Regions.Part part) {
  /** Distance between the places that are looked at [px]. */
  private static final double SPACING = 1;

  /** Distance between the discs that keep labels off rocks [px]. */
  private static final double KEEP_OFF = 10;

  private static final String STONE = "#8d8780";

  CutRocks {
    outlines = List.copyOf(outlines);
  }

  /** The cut faces on a frame: a level plane runs upward on the sheet, an upright one does not. */
  static CutRocks of(Frame frame, Scene scene) {
    Tank tank = scene.tank();
    Aquascape rocks = tank.aquascape();
    if (rocks.isEmpty() || (frame.upward() && scene.depth().isEmpty())) {
      return new CutRocks(List.of(), (u, v) -> false);
    }
    Regions.Part part =
        frame.upward()
            ? (u, v) ->
                rocks.inside(u * tank.length(), v * tank.width(), scene.depth().getAsDouble())
            : (u, v) -> rocks.inside(u * tank.length(), tank.width() / 2, v * tank.depth());
    int columns = Math.max(2, (int) Math.round(frame.width() / SPACING) + 1);
    int rows = Math.max(2, (int) Math.round(frame.height() / SPACING) + 1);
    Lattice cut = Lattice.of(columns, rows, (u, v) -> part.contains(u, v) ? 1 : -1);
    return new CutRocks(Contours.around(cut, 0), part);
  }

  /** Fills the faces. */
  void draw(Svg svg, Frame frame) {
    StringBuilder path = new StringBuilder();
    outlines.forEach(line -> path.append(frame.onSheet(line).straight()));
    if (!path.isEmpty()) {
      svg.empty(
          "path",
          "d",
          path,
          "fill",
          STONE,
          "fill-rule",
          "evenodd",
          "stroke",
          Look.INK,
          "stroke-width",
          1.6);
    }
  }

  /** Takes the room of the faces, so that no label stands on them. */
  void keepOff(Frame frame, Placement placement) {
    if (outlines.isEmpty()) {
      return;
    }
    for (double y = frame.top(); y <= frame.bottom(); y += KEEP_OFF) {
      for (double x = frame.left(); x <= frame.right(); x += KEEP_OFF) {
        double down = (y - frame.top()) / frame.height();
        double v = frame.upward() ? 1 - down : down;
        if (part.contains((x - frame.left()) / frame.width(), v)) {
          placement.take(x, y, KEEP_OFF / 2);
        }
      }
    }
  }

  /** The sign of a rock in the key. */
  static void sign(Svg svg, double x, double y) {
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
        STONE,
        "stroke",
        Look.INK,
        "stroke-width",
        1.3);
  }
}
