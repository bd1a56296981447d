package parfield.plot;

import java.util.ArrayList;
import java.util.List;
import parfield.tank.Rectangle;
import parfield.tank.Tank;

/**
 * Where a level plane lies below, in or above a band, and where the interval leaves that open. The
 * four are told apart by hatching and by words; their tints only help.
 */
public final class BandMap {
  private static final double MOST_HEIGHT = 460;
  private static final double SPACING = 3;
  private static final double LABEL_HEIGHT = 16;

  /** How closely places for a label are tried [px]. */
  private static final double STRIDE = 6;

  private BandMap() {}

  /**
   * Draws the map.
   *
   * @param spec what to show; rows of its rasters run from front to back
   * @return one SVG document
   */
  public static String svg(BandMapSpec spec) {
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
    Verdicts verdicts =
        new BandVerdicts(
            frame.lattice(spec.low(), SPACING), frame.lattice(spec.high(), SPACING), spec.band());
    Svg svg = sheet.body();
    CutRocks rocks = plane(svg, frame, spec.scene(), verdicts);
    sheet.fillTo(
        frame.drawAxes(svg, spec.scene().length(), "from the left pane", "from the front pane"));
    List<Sheet.Sign> signs = new ArrayList<>(signs(verdicts, rocks));
    signs.addAll(Legend.signs(spec.scene().withoutMeasured(), frame));
    if (spec.scene().measured().isPresent()) {
      signs.add(new Sheet.Sign("measured within", BandMap::outlineSign));
    }
    sheet.key(signs, frame.left());
    return sheet.finished();
  }

  /** Draws everything inside a plane's outline, level or upright, and tells the rocks it cuts. */
  static CutRocks plane(Svg svg, Frame frame, Scene scene, Verdicts verdicts) {
    frame.openClipped(svg);
    regions(svg, frame, verdicts);
    CutRocks rocks = CutRocks.of(frame, scene);
    rocks.draw(svg, frame);
    scene.measured().ifPresent(part -> outlineMeasured(svg, frame, part));
    if (frame.upward()) {
      Overlay.fixtures(svg, frame, scene.fixtures());
    }
    Placement placement = new Placement();
    rocks.keepOff(frame, placement);
    Svg readings = new Svg();
    Overlay.readings(
        readings,
        frame,
        scene.readings().stream().map(Overlay.Point::fromAbove).toList(),
        placement);
    for (Verdict verdict : verdicts.all()) {
      words(svg, frame, verdicts, verdict, placement);
    }
    svg.append(readings).close("svg");
    return rocks;
  }

  private static void regions(Svg svg, Frame frame, Verdicts verdicts) {
    svg.empty(
        "rect",
        "x",
        frame.left(),
        "y",
        frame.top(),
        "width",
        frame.width(),
        "height",
        frame.height(),
        "fill",
        Verdict.OPEN.tint);
    for (Verdict verdict : verdicts.all().subList(0, verdicts.all().size() - 1)) {
      StringBuilder path = new StringBuilder();
      Contours.around(verdicts.margin(verdict), 0)
          .forEach(line -> path.append(frame.onSheet(line).straight()));
      if (!path.isEmpty()) {
        svg.empty(
            "path",
            "d",
            path,
            "fill",
            verdict.tint,
            "fill-rule",
            "evenodd",
            "stroke",
            Look.INK,
            "stroke-width",
            1.4);
      }
    }
    for (Verdict verdict : verdicts.all()) {
      verdict.hatch(svg, frame, (u, v) -> verdicts.at(u, v) == verdict);
    }
  }

  /** Outlines what was measured; hatching is taken by the verdicts. */
  private static void outlineMeasured(Svg svg, Frame frame, Rectangle part) {
    outline(
        svg,
        frame.x(part.fromX()),
        frame.y(part.toY()),
        (part.toX() - part.fromX()) * frame.scale(),
        (part.toY() - part.fromY()) * frame.scale());
  }

  private static void outlineSign(Svg svg, double x, double y) {
    outline(svg, x - 9, y - 6, 18, 12);
  }

  private static void outline(Svg svg, double left, double top, double width, double height) {
    svg.empty(
        "rect",
        "x",
        left,
        "y",
        top,
        "width",
        width,
        "height",
        height,
        "fill",
        "none",
        "stroke",
        Look.INK,
        "stroke-width",
        1.3,
        "stroke-dasharray",
        "2 3");
  }

  /** Writes a verdict where its region has most room, in the longest words that fit. */
  private static void words(
      Svg svg, Frame frame, Verdicts verdicts, Verdict verdict, Placement placement) {
    for (String words : verdicts.wordings(verdict)) {
      double width = Look.width(words, Look.BODY) * Look.STRONG + 6;
      for (boolean upright : new boolean[] {false, true}) {
        double halfX = (upright ? LABEL_HEIGHT : width) / 2;
        double halfY = (upright ? width : LABEL_HEIGHT) / 2;
        double angle = upright ? -Math.PI / 2 : 0;
        double best = 0;
        double bestX = 0;
        double bestY = 0;
        for (double y = frame.top() + halfY; y <= frame.bottom() - halfY; y += STRIDE) {
          for (double x = frame.left() + halfX; x <= frame.right() - halfX; x += STRIDE) {
            double room = room(frame, verdicts, verdict, x, y, halfX, halfY);
            if (room > best && placement.free(x, y, width, LABEL_HEIGHT, angle)) {
              best = room;
              bestX = x;
              bestY = y;
            }
          }
        }
        if (best > 0 && placement.takeIfFree(bestX, bestY, width, LABEL_HEIGHT, angle)) {
          svg.haloed(
              words,
              5,
              "transform",
              "translate("
                  + Svg.number(bestX)
                  + " "
                  + Svg.number(bestY)
                  + ") rotate("
                  + Svg.number(Math.toDegrees(angle))
                  + ")",
              "y",
              4.5,
              "font-size",
              Look.BODY,
              "font-weight",
              "600",
              "text-anchor",
              "middle");
          return;
        }
      }
    }
  }

  /** How many steps a label's box can grow before it leaves its region; 0 if it does not fit. */
  private static int room(
      Frame frame,
      Verdicts verdicts,
      Verdict verdict,
      double x,
      double y,
      double halfX,
      double halfY) {
    for (int grown = 0; grown < 10; grown++) {
      double reachX = halfX + grown * STRIDE;
      double reachY = halfY + grown * STRIDE;
      for (double t = -1; t <= 1.01; t += 0.125) {
        if (!holds(frame, verdicts, verdict, x + t * reachX, y - reachY)
            || !holds(frame, verdicts, verdict, x + t * reachX, y + reachY)
            || !holds(frame, verdicts, verdict, x - reachX, y + t * reachY)
            || !holds(frame, verdicts, verdict, x + reachX, y + t * reachY)) {
          return grown;
        }
      }
    }
    return 10;
  }

  private static boolean holds(
      Frame frame, Verdicts verdicts, Verdict verdict, double x, double y) {
    double u = (x - frame.left()) / frame.width();
    double down = (y - frame.top()) / frame.height();
    double v = frame.upward() ? 1 - down : down;
    return u >= 0 && u <= 1 && v >= 0 && v <= 1 && verdicts.at(u, v) == verdict;
  }

  /** The signs of the verdicts. */
  static List<Sheet.Sign> signs(Verdicts verdicts, CutRocks rocks) {
    List<Sheet.Sign> signs = new ArrayList<>();
    for (Verdict verdict : verdicts.all()) {
      double share = verdicts.share(verdict, rocks.part());
      verdicts
          .inKey(verdict, share)
          .ifPresent(words -> signs.add(new Sheet.Sign(words, verdict::sign)));
    }
    return signs;
  }
}
