package parfield.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import parfield.survey.Band;

/** Isolines of a plane and their labels: thin ones at round levels, thick ones at band ends. */
final class Isolines {
  /** Distance between the nodes that isolines are found on [px]. */
  private static final double SPACING = 5;

  /** Least length of a line that gets a label [px]. */
  private static final double SHORTEST = 60;

  /** How far apart the starting points are that are tried for a label [px]. */
  private static final double STRIDE = 5;

  private Isolines() {}

  /** Draws the lines, then as many labels as find room, band ends first. */
  static void draw(Svg svg, Frame frame, HeatMapSpec spec, Placement placement) {
    Lattice field = frame.lattice(spec.ppfd(), SPACING);
    Map<Double, String> ends = bandEnds(spec.bands());
    for (double level : spec.levels()) {
      if (!ends.containsKey(level)) {
        drawLevel(svg, frame, Contours.of(field, level), 2.4, 0.35, 1.1);
      }
    }
    ends.keySet().forEach(end -> drawLevel(svg, frame, Contours.of(field, end), 4.6, 0.9, 2.6));
    ends.forEach(
        (end, words) -> label(svg, frame, Contours.of(field, end), words, true, placement));
    for (double level : spec.levels()) {
      if (!ends.containsKey(level)) {
        label(svg, frame, Contours.of(field, level), Ticks.text(level), false, placement);
      }
    }
  }

  /** The words along each end of a band, by PPFD; bands that meet share a line. */
  private static Map<Double, String> bandEnds(List<Band> bands) {
    Map<Double, String> ends = new TreeMap<>();
    for (Band band : bands) {
      ends.merge(
          band.from(),
          band.name() + " from " + Ticks.text(band.from()),
          (first, second) -> first + " · " + second);
      ends.merge(
          band.to(),
          band.name() + " to " + Ticks.text(band.to()),
          (first, second) -> first + " · " + second);
    }
    return ends;
  }

  private static void drawLevel(
      Svg svg, Frame frame, List<Line> lines, double under, double opacity, double over) {
    StringBuilder path = new StringBuilder();
    lines.forEach(line -> path.append(frame.onSheet(line).rounded()));
    if (path.isEmpty()) {
      return;
    }
    svg.empty(
        "path",
        "d",
        path,
        "fill",
        "none",
        "stroke",
        Look.INK,
        "stroke-width",
        under,
        "stroke-opacity",
        opacity,
        "stroke-linejoin",
        "round");
    svg.empty("path", "d", path, "fill", "none", "stroke", Look.PAPER, "stroke-width", over);
  }

  private static void label(
      Svg svg, Frame frame, List<Line> lines, String words, boolean strong, Placement placement) {
    double size = Look.SMALL;
    double width = Look.width(words, size) * (strong ? Look.STRONG : 1) + 6;
    for (Line line : lines) {
      Line drawn = frame.onSheet(line);
      spot(frame, drawn, width, size + 3, strong, placement)
          .ifPresent(
              spot -> {
                placement.takeIfFree(spot.x(), spot.y(), width, size + 3, spot.angle());
                write(svg, spot, words, width, size, strong);
              });
    }
  }

  /** Writes words along a line, on a slip of paper that parts the line. */
  private static void write(
      Svg svg, Spot spot, String words, double width, double size, boolean strong) {
    svg.open(
        "g",
        "transform",
        "translate("
            + Svg.number(spot.x())
            + " "
            + Svg.number(spot.y())
            + ") rotate("
            + Svg.number(Math.toDegrees(spot.angle()))
            + ")");
    svg.empty(
        "rect",
        "x",
        -width / 2,
        "y",
        -size * 0.6,
        "width",
        width,
        "height",
        size * 1.2,
        "rx",
        3,
        "fill",
        Look.PAPER,
        "fill-opacity",
        0.88);
    svg.element(
        "text",
        words,
        "y",
        size * 0.36,
        "font-size",
        size,
        "font-weight",
        strong ? "600" : "400",
        "text-anchor",
        "middle");
    svg.close("g");
  }

  /** The straightest and most level free stretch of a line that holds a label. */
  private static Optional<Spot> spot(
      Frame frame, Line line, double width, double height, boolean strong, Placement placement) {
    double[] distances = line.distances();
    double length = distances[distances.length - 1];
    if (length < Math.max(width, strong ? 0 : SHORTEST)) {
      return Optional.empty();
    }
    List<Spot> spots = new ArrayList<>();
    for (double start = 0; start + width <= length; start += STRIDE) {
      double[] from = at(line, distances, start);
      double[] middle = at(line, distances, start + width / 2);
      double[] to = at(line, distances, start + width);
      double angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
      if (Math.abs(angle) > Math.PI / 2) {
        angle -= Math.signum(angle) * Math.PI;
      }
      double chord = Math.hypot(to[0] - from[0], to[1] - from[1]);
      double bend = 1 - chord / width;
      double tilt = Math.abs(angle) / (Math.PI / 2);
      spots.add(new Spot(middle[0], middle[1], angle, 6 * bend + 0.4 * tilt));
    }
    return spots.stream()
        .filter(spot -> spot.cost() < (strong ? 2.5 : 1.4))
        .filter(spot -> inside(frame, spot, width, height))
        .filter(spot -> placement.free(spot.x(), spot.y(), width, height, spot.angle()))
        .min(java.util.Comparator.comparingDouble(Spot::cost));
  }

  private static boolean inside(Frame frame, Spot spot, double width, double height) {
    double across =
        (width * Math.abs(Math.cos(spot.angle())) + height * Math.abs(Math.sin(spot.angle()))) / 2;
    double up =
        (width * Math.abs(Math.sin(spot.angle())) + height * Math.abs(Math.cos(spot.angle()))) / 2;
    return spot.x() - across >= frame.left() + 1
        && spot.x() + across <= frame.right() - 1
        && spot.y() - up >= frame.top() + 1
        && spot.y() + up <= frame.bottom() - 1;
  }

  private static double[] at(Line line, double[] distances, double distance) {
    int i = java.util.Arrays.binarySearch(distances, distance);
    if (i < 0) {
      i = Math.min(-i - 2, line.size() - 2);
    }
    i = Math.min(i, line.size() - 2);
    double t = (distance - distances[i]) / (distances[i + 1] - distances[i]);
    return new double[] {
      line.x()[i] + t * (line.x()[i + 1] - line.x()[i]),
      line.y()[i] + t * (line.y()[i + 1] - line.y()[i])
    };
  }

  /** A place for a label: its centre, the angle of its baseline [rad], and how ill it suits. */
  private record Spot(double x, double y, double angle, double cost) {}
}
