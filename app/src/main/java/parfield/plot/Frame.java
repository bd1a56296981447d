package parfield.plot;

import parfield.units.LengthUnit;

/**
 * Where a plane of the tank stands on the sheet, to scale.
 *
 * @param left edge [px]
 * @param top edge [px]
 * @param spanX what it spans across [m]
 * @param spanY what it spans up or down [m]
 * @param scale pixels per metre
 * @param upward whether the second coordinate runs up the sheet, as y does seen from above, or down
 *     it, as depth does
 */
record Frame(double left, double top, double spanX, double spanY, double scale, boolean upward) {
  /** Room left of the plane for ticks and their title. */
  static final double GUTTER = 48;

  /** The largest scale at which a plane and {@code above} metres over it fit a height [px]. */
  static double scale(double spanX, double spanY, double above, double mostHeight) {
    double room = Look.WIDTH - 2 * Look.MARGIN - GUTTER;
    return Math.min(room / spanX, mostHeight / (spanY + above));
  }

  double width() {
    return spanX * scale;
  }

  double height() {
    return spanY * scale;
  }

  double right() {
    return left + width();
  }

  double bottom() {
    return top + height();
  }

  /** Where a length across [m] stands on the sheet. */
  double x(double metres) {
    return left + metres * scale;
  }

  /** Where a length along the second coordinate [m] stands on the sheet. */
  double y(double metres) {
    return upward ? bottom() - metres * scale : top + metres * scale;
  }

  /** A line whose coordinates are shares of the plane, on the sheet. */
  Line onSheet(Line shares) {
    double[] x = new double[shares.size()];
    double[] y = new double[shares.size()];
    for (int i = 0; i < x.length; i++) {
      x[i] = x(shares.x()[i] * spanX);
      y[i] = y(shares.y()[i] * spanY);
    }
    return new Line(x, y);
  }

  /** A lattice with a node about every {@code spacing} pixels. */
  Lattice lattice(Raster raster, double spacing) {
    return Lattice.of(
        raster,
        Math.max(2, (int) Math.round(width() / spacing) + 1),
        Math.max(2, (int) Math.round(height() / spacing) + 1));
  }

  /** Opens a part of the sheet that cuts off what stands over the plane's edges. */
  void openClipped(Svg svg) {
    svg.open(
        "svg",
        "x",
        left,
        "y",
        top,
        "width",
        width(),
        "height",
        height(),
        "viewBox",
        Svg.number(left)
            + " "
            + Svg.number(top)
            + " "
            + Svg.number(width())
            + " "
            + Svg.number(height()));
  }

  /** Draws outline, ticks and the titles of both axes; returns how far down they reach. */
  double drawAxes(Svg svg, LengthUnit unit, String acrossTitle, String secondTitle) {
    svg.empty(
        "rect",
        "x",
        left,
        "y",
        top,
        "width",
        width(),
        "height",
        height(),
        "fill",
        "none",
        "stroke",
        Look.INK,
        "stroke-width",
        1.5);
    double stepX = Ticks.lengthStep(spanX, unit, Math.max(2, (int) (width() / 52)));
    for (double tick : Ticks.within(0, unit.fromMetres(spanX), stepX)) {
      double at = x(unit.toMetres(tick));
      mark(svg, at, bottom(), at, bottom() + 5);
      svg.element(
          "text",
          Ticks.text(tick),
          "x",
          at,
          "y",
          bottom() + 18,
          "font-size",
          Look.SMALL,
          "text-anchor",
          "middle");
    }
    double stepY = Ticks.lengthStep(spanY, unit, Math.max(2, (int) (height() / 36)));
    for (double tick : Ticks.within(0, unit.fromMetres(spanY), stepY)) {
      double at = y(unit.toMetres(tick));
      mark(svg, left - 5, at, left, at);
      svg.element(
          "text",
          Ticks.text(tick),
          "x",
          left - 8,
          "y",
          at + 4,
          "font-size",
          Look.SMALL,
          "text-anchor",
          "end");
    }
    double titleY = bottom() + 36;
    svg.element(
        "text",
        acrossTitle + ", " + unit.symbol(),
        "x",
        left + width() / 2,
        "y",
        titleY,
        "font-size",
        Look.SMALL,
        "fill",
        Look.QUIET,
        "text-anchor",
        "middle");
    double titleX = left - 36;
    double middle = top + height() / 2;
    svg.element(
        "text",
        secondTitle + ", " + unit.symbol(),
        "transform",
        "translate(" + Svg.number(titleX) + " " + Svg.number(middle) + ") rotate(-90)",
        "font-size",
        Look.SMALL,
        "fill",
        Look.QUIET,
        "text-anchor",
        "middle");
    return titleY + 4;
  }

  private static void mark(Svg svg, double fromX, double fromY, double toX, double toY) {
    svg.empty(
        "path",
        "d",
        "M"
            + Svg.number(fromX)
            + " "
            + Svg.number(fromY)
            + "L"
            + Svg.number(toX)
            + " "
            + Svg.number(toY),
        "stroke",
        Look.INK,
        "fill",
        "none");
  }
}
