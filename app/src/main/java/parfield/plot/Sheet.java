package parfield.plot;

import java.util.List;

/** The paper of one picture: title and summary on top, then whatever is drawn below. */
final class Sheet {
  private final Caption caption;
  private final Svg body = new Svg();
  private double bottom = Look.MARGIN;

  Sheet(Caption caption) {
    this.caption = caption;
    double room = Look.WIDTH - 2 * Look.MARGIN;
    for (String line : Look.wrapped(caption.title(), Look.TITLE, room / Look.STRONG)) {
      bottom += Look.TITLE * 1.2;
      body.element(
          "text",
          line,
          "x",
          Look.MARGIN,
          "y",
          bottom - 5,
          "font-size",
          Look.TITLE,
          "font-weight",
          "600");
    }
    for (String line : Look.wrapped(caption.summary(), Look.BODY, room)) {
      bottom += Look.BODY * 1.4;
      body.element(
          "text",
          line,
          "x",
          Look.MARGIN,
          "y",
          bottom - 3,
          "font-size",
          Look.BODY,
          "fill",
          Look.QUIET);
    }
    bottom += 14;
  }

  /** Where drawing goes. */
  Svg body() {
    return body;
  }

  /** How far down the sheet is filled. */
  double bottom() {
    return bottom;
  }

  /** Tells that the sheet is now filled so far down. */
  void fillTo(double newBottom) {
    bottom = Math.max(bottom, newBottom);
  }

  /** A row of signs, each with its words, broken where the sheet ends. */
  void key(List<Sign> signs, double left) {
    double x = left;
    double y = bottom + 18;
    for (Sign sign : signs) {
      double width = 26 + Look.width(sign.words(), Look.SMALL) + 12;
      if (x > left && x + width - 12 > Look.WIDTH - Look.MARGIN) {
        x = left;
        y += 20;
      }
      sign.drawing().draw(body, x + 9, y - 4);
      body.element("text", sign.words(), "x", x + 24, "y", y, "font-size", Look.SMALL);
      x += width;
    }
    if (!signs.isEmpty()) {
      fillTo(y + 4);
    }
  }

  /** The finished document. */
  String finished() {
    long width = Math.round(Look.WIDTH);
    long height = Math.round(bottom + Look.MARGIN * 0.8);
    String spoken =
        caption.summary().isBlank() ? caption.title() : caption.title() + ". " + caption.summary();
    Svg svg = new Svg();
    svg.open(
        "svg",
        "xmlns",
        "http://www.w3.org/2000/svg",
        "xmlns:xlink",
        "http://www.w3.org/1999/xlink",
        "width",
        width,
        "height",
        height,
        "viewBox",
        "0 0 " + width + " " + height,
        "role",
        "img",
        "aria-label",
        spoken);
    svg.element("title", caption.title());
    svg.element("desc", caption.summary());
    svg.empty("rect", "width", width, "height", height, "fill", Look.PAPER);
    svg.open(
        "g",
        "font-family",
        Look.FONTS,
        "style",
        "font-variant-numeric:tabular-nums",
        "fill",
        Look.INK);
    return svg.append(body).close("g").close("svg").toString();
  }

  /**
   * A sign of the key.
   *
   * @param words what it stands for
   * @param drawing draws it about a centre, at most 18 wide and 14 high
   */
  record Sign(String words, Drawing drawing) {}

  /** Draws something about a centre. */
  @FunctionalInterface
  interface Drawing {
    void draw(Svg svg, double x, double y);
  }
}
