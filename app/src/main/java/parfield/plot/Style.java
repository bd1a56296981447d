package parfield.plot;

/** How one curve of a chart looks: no two share a dash or a marker. Text contrast over 4.5 to 1. */
enum Style {
  SOLID("#1f4e79", "none", "M-4 0A4 4 0 1 1 4 0A4 4 0 1 1 -4 0Z"),
  DASHED("#9a4a12", "8 4", "M-3.7 -3.7H3.7V3.7H-3.7Z"),
  DOTTED("#1f6b4a", "2 3.5", "M0 -4.8L4.6 3.6H-4.6Z"),
  DASH_DOT("#5d3a86", "9 3 2 3", "M0 -5L5 0L0 5L-5 0Z"),
  LONG("#8a2340", "14 5", "M0 4.8L4.6 -3.6H-4.6Z"),
  SHORT("#4b5358", "4 3", "M-4.2 -1.4H-1.4V-4.2H1.4V-1.4H4.2V1.4H1.4V4.2H-1.4V1.4H-4.2Z");

  final String colour;
  final String dashes;

  /** Outline of the marker about the origin. */
  final String marker;

  Style(String colour, String dashes, String marker) {
    this.colour = colour;
    this.dashes = dashes;
    this.marker = marker;
  }
}
