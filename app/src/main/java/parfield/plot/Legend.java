package parfield.plot;

import java.util.List;
import java.util.stream.IntStream;
import parfield.survey.Band;

/** The colour bar: which colour is which PPFD, and where the bands lie on it. */
final class Legend {
  private static final double HEIGHT = 12;

  private Legend() {}

  /** Draws the bar of a map below what the sheet already holds. */
  static void draw(Sheet sheet, Frame frame, HeatMapSpec spec) {
    Svg svg = sheet.body();
    Scale scale = spec.scale();
    double left = frame.left();
    double width = Look.WIDTH - Look.MARGIN - 12 - left;
    double y = sheet.bottom() + 22;
    svg.element(
        "text", spec.quantity(), "x", left, "y", y, "font-size", Look.SMALL, "fill", Look.QUIET);
    y += 8;
    svg.image(Viridis.SIZE, 1, IntStream.range(0, Viridis.SIZE).toArray(), left, y, width, HEIGHT);
    svg.empty(
        "rect", "x", left, "y", y, "width", width, "height", HEIGHT, "fill", "none", "stroke",
        Look.INK);
    beyond(svg, spec, left, y, width);
    y += HEIGHT;
    for (double tick :
        Ticks.within(
            scale.low(), scale.high(), Ticks.step(scale.high() - scale.low(), Scale.PARTS + 2))) {
      double x = left + scale.share(tick) * width;
      svg.empty("path", "d", mark(x, y, y + 5), "stroke", Look.INK);
      svg.element(
          "text",
          Ticks.text(tick),
          "x",
          x,
          "y",
          y + 18,
          "font-size",
          Look.SMALL,
          "text-anchor",
          "middle");
    }
    y += 20;
    for (Band band : spec.bands()) {
      if (band.to() >= scale.low() && band.from() <= scale.high()) {
        y += 16;
        extent(svg, band, scale, left, y, width);
      }
    }
    sheet.fillTo(y + 2);
  }

  /** Arrowheads where values run off the scale. */
  private static void beyond(Svg svg, HeatMapSpec spec, double left, double y, double width) {
    if (spec.ppfd().min() < spec.scale().low()) {
      arrow(svg, left, -9, y, Viridis.rgb(0));
    }
    if (spec.ppfd().max() > spec.scale().high()) {
      arrow(svg, left + width, 9, y, Viridis.rgb(1));
    }
  }

  private static void arrow(Svg svg, double x, double reach, double y, int rgb) {
    svg.empty(
        "path",
        "d",
        new Line(new double[] {x, x + reach, x, x}, new double[] {y, y + HEIGHT / 2, y + HEIGHT, y})
            .straight(),
        "fill",
        String.format(java.util.Locale.ROOT, "#%06x", rgb),
        "stroke",
        Look.INK);
  }

  private static void extent(Svg svg, Band band, Scale scale, double left, double y, double width) {
    double from = left + scale.share(band.from()) * width;
    double to = left + scale.share(band.to()) * width;
    svg.empty(
        "path",
        "d",
        mark(from, y - 9, y + 1)
            + mark(to, y - 9, y + 1)
            + "M"
            + Svg.number(from)
            + " "
            + Svg.number(y - 4)
            + "H"
            + Svg.number(to),
        "fill",
        "none",
        "stroke",
        Look.INK,
        "stroke-width",
        2.5);
    String words = band.name() + " " + Ticks.text(band.from()) + "–" + Ticks.text(band.to());
    boolean fitsAfter = to + 6 + Look.width(words, Look.SMALL) <= left + width;
    svg.element(
        "text",
        words,
        "x",
        fitsAfter ? to + 6 : from - 6,
        "y",
        y,
        "font-size",
        Look.SMALL,
        "text-anchor",
        fitsAfter ? "start" : "end");
  }

  private static String mark(double x, double from, double to) {
    return new Line(new double[] {x, x}, new double[] {from, to}).straight();
  }

  /** The signs for what a scene draws over its plane. */
  static List<Sheet.Sign> signs(Scene scene, Frame frame) {
    List<Sheet.Sign> signs = new java.util.ArrayList<>();
    if (!scene.readings().isEmpty()) {
      signs.add(new Sheet.Sign("reading", Overlay::dot));
    }
    if (!scene.fixtures().isEmpty()) {
      signs.add(new Sheet.Sign("fixture, emitters", Overlay::fixtureSign));
    }
    if (!CutRocks.of(frame, scene).outlines().isEmpty()) {
      signs.add(new Sheet.Sign("rock", CutRocks::sign));
    }
    if (scene.measured().isPresent()) {
      signs.add(new Sheet.Sign("outside what was measured", Overlay::hatchSign));
    }
    return signs;
  }
}
