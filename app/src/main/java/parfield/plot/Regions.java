package parfield.plot;

import java.util.Locale;

/** Hatching of parts of a plane, line by line: no pattern that another renderer might not know. */
final class Regions {
  /** Lines that rise to the right. */
  static final double RISING = -Math.PI / 4;

  /** Lines that fall to the right. */
  static final double FALLING = Math.PI / 4;

  /** Lines along the sheet. */
  static final double LEVEL = 0;

  /** Lines up the sheet. */
  static final double UPRIGHT = Math.PI / 2;

  /** Distance between the points at which a line asks whether it is inside [px]. */
  private static final double STRIDE = 1.5;

  private Regions() {}

  /** Whether a point of the plane, both coordinates as shares of its span, belongs to a part. */
  @FunctionalInterface
  interface Part {
    boolean contains(double u, double v);
  }

  /** Hatches a part of the plane with parallel lines at an angle on the sheet [rad]. */
  static void hatch(
      Svg svg,
      Frame frame,
      Part part,
      double angle,
      double gap,
      String colour,
      double thickness,
      double opacity) {
    double middleX = (frame.left() + frame.right()) / 2;
    double middleY = (frame.top() + frame.bottom()) / 2;
    double reach = Math.hypot(frame.width(), frame.height()) / 2;
    int lines = (int) (reach / gap);
    StringBuilder path = new StringBuilder();
    for (int i = -lines; i <= lines; i++) {
      double footX = middleX - i * gap * Math.sin(angle);
      double footY = middleY + i * gap * Math.cos(angle);
      boolean drawing = false;
      double lastX = 0;
      double lastY = 0;
      for (double along = -reach; along <= reach + STRIDE; along += STRIDE) {
        double x = footX + along * Math.cos(angle);
        double y = footY + along * Math.sin(angle);
        boolean inside = along <= reach && contains(frame, part, x, y);
        if (inside && !drawing) {
          path.append('M').append(Svg.number(x)).append(' ').append(Svg.number(y));
        } else if (!inside && drawing) {
          path.append('L').append(Svg.number(lastX)).append(' ').append(Svg.number(lastY));
        }
        drawing = inside;
        lastX = x;
        lastY = y;
      }
    }
    draw(svg, path, colour, thickness, opacity);
  }

  /** Fills a part of the plane with dots on a staggered grid. */
  static void dots(Svg svg, Frame frame, Part part, double gap, String colour, double thickness) {
    StringBuilder path = new StringBuilder();
    int row = 0;
    for (double y = frame.top() + gap / 2; y < frame.bottom(); y += gap * 0.75) {
      for (double x = frame.left() + (row % 2 == 0 ? 0.25 : 0.75) * gap;
          x < frame.right();
          x += gap) {
        if (contains(frame, part, x, y)) {
          path.append(String.format(Locale.ROOT, "M%s %sh0", Svg.number(x), Svg.number(y)));
        }
      }
      row++;
    }
    draw(svg, path, colour, thickness, 1);
  }

  private static boolean contains(Frame frame, Part part, double x, double y) {
    double u = (x - frame.left()) / frame.width();
    double down = (y - frame.top()) / frame.height();
    double v = frame.upward() ? 1 - down : down;
    return u >= 0 && u <= 1 && v >= 0 && v <= 1 && part.contains(u, v);
  }

  private static void draw(
      Svg svg, StringBuilder path, String colour, double thickness, double opacity) {
    if (!path.isEmpty()) {
      svg.empty(
          "path",
          "d",
          path,
          "fill",
          "none",
          "stroke",
          colour,
          "stroke-width",
          thickness,
          "stroke-linecap",
          "round",
          "stroke-opacity",
          opacity);
    }
  }
}
