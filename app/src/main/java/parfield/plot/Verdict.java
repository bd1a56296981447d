package parfield.plot;

import java.util.List;
import parfield.survey.Band;

/** How a place stands to a band, and how that looks. */
enum Verdict {
  /** The whole interval lies under the band. */
  BELOW("#c3d3df"),
  /** The whole interval lies in the band, ends included. */
  IN("#fbf7d8"),
  /** The whole interval lies over the band. */
  ABOVE("#edc9a8"),
  /** The interval reaches over an end of the band. */
  OPEN("#f1f2f2");

  final String tint;

  Verdict(String tint) {
    this.tint = tint;
  }

  /** What this says of a band, the fullest wording first, each shorter than the one before. */
  List<String> wordings(Band band) {
    String from = Ticks.text(band.from());
    String to = Ticks.text(band.to());
    return switch (this) {
      case BELOW -> List.of("below " + from, "below");
      case IN -> List.of("in " + band.name() + " " + from + "–" + to, "in " + band.name(), "in");
      case ABOVE -> List.of("above " + to, "above");
      case OPEN -> List.of("too close to call", "too close");
    };
  }

  /** Hatches a part of a plane; what is in the band stays clear. */
  void hatch(Svg svg, Frame frame, Regions.Part part) {
    switch (this) {
      case BELOW -> Regions.hatch(svg, frame, part, Regions.FALLING, 9, "#34566e", 1.1, 1);
      case ABOVE -> {
        Regions.hatch(svg, frame, part, Regions.RISING, 7, "#8a4a17", 1.1, 1);
        Regions.hatch(svg, frame, part, Regions.FALLING, 7, "#8a4a17", 1.1, 1);
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
