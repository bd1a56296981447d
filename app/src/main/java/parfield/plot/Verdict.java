package parfield.plot;

/**
 * How a place stands to what is wanted there, and how that looks: single lines are too little,
 * crossed ones too much; slanted lines are of PPFD, level and upright ones of the dose.
 */
enum Verdict {
  /** The whole interval lies under the band. */
  BELOW("#c3d3df"),
  /** The whole interval lies in the band, ends included. */
  IN("#fbf7d8"),
  /** The whole interval lies over the band. */
  ABOVE("#edc9a8"),
  /** The whole interval of the dose lies under its range. */
  DOSE_BELOW("#d6e3d9"),
  /** The whole interval of the dose lies over its range. */
  DOSE_ABOVE("#ecd3dc"),
  /** The interval reaches over an end of what is wanted. */
  OPEN("#f1f2f2");

  final String tint;

  Verdict(String tint) {
    this.tint = tint;
  }

  /** Hatches a part of a plane; what is in the band stays clear. */
  void hatch(Svg svg, Frame frame, Regions.Part part) {
    switch (this) {
      case BELOW -> Regions.hatch(svg, frame, part, Regions.FALLING, 9, "#34566e", 1.1, 1);
      case ABOVE -> {
        Regions.hatch(svg, frame, part, Regions.RISING, 7, "#8a4a17", 1.1, 1);
        Regions.hatch(svg, frame, part, Regions.FALLING, 7, "#8a4a17", 1.1, 1);
      }
      case DOSE_BELOW -> Regions.hatch(svg, frame, part, Regions.LEVEL, 7, "#2f5d45", 1.1, 1);
      case DOSE_ABOVE -> {
        Regions.hatch(svg, frame, part, Regions.LEVEL, 8, "#84354f", 1.1, 1);
        Regions.hatch(svg, frame, part, Regions.UPRIGHT, 8, "#84354f", 1.1, 1);
      }
      case OPEN -> Regions.dots(svg, frame, part, 9, Look.QUIET, 1.7);
      case IN -> {}
    }
  }

  /** Draws a sample about a centre. */
  void sign(Svg svg, double x, double y) {
    Frame sample = new Frame(x - 9, y - 7, 18, 14, 1, false);
    svg.empty(
        "rect",
        "x",
        sample.left(),
        "y",
        sample.top(),
        "width",
        sample.width(),
        "height",
        sample.height(),
        "fill",
        tint);
    hatch(svg, sample, (u, v) -> true);
    svg.empty(
        "rect",
        "x",
        sample.left(),
        "y",
        sample.top(),
        "width",
        sample.width(),
        "height",
        sample.height(),
        "fill",
        "none",
        "stroke",
        Look.INK);
  }
}
