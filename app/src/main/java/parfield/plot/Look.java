package parfield.plot;

import java.util.ArrayList;
import java.util.List;

/** Paper, ink and type of every picture. Sizes are in the picture's own pixels. */
final class Look {
  /** Width of a picture: type stays legible when it is shown at 390 pixels. */
  static final double WIDTH = 600;

  static final double MARGIN = 20;
  static final double BODY = 13;
  static final double SMALL = 12;
  static final double TITLE = 18;

  static final String PAPER = "#fcfcfa";
  static final String INK = "#1d2529";

  /** For what is secondary; 5.5 to 1 on paper. */
  static final String QUIET = "#56646b";

  static final String RULE = "#d5dadc";
  static final String WATER = "#2b6f8f";

  static final String FONTS =
      "system-ui, 'Segoe UI', 'Helvetica Neue', Arial, 'DejaVu Sans', sans-serif";

  private Look() {}

  /** How much wider semibold type is. */
  static final double STRONG = 1.12;

  /** An upper estimate of the width of a text, whichever sans-serif face sets it. */
  static double width(String text, double size) {
    return size * text.codePoints().mapToDouble(Look::advance).sum();
  }

  /** Breaks a text into as few lines as fit, about as long as each other; words stay whole. */
  static List<String> wrapped(String text, double size, double width) {
    List<String> lines = filled(text, size, width);
    double narrower = width - size;
    while (lines.size() > 1 && narrower > width / 2) {
      List<String> balanced = filled(text, size, narrower);
      if (balanced.size() > lines.size()) {
        break;
      }
      lines = balanced;
      narrower -= size;
    }
    return lines;
  }

  private static List<String> filled(String text, double size, double width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : joined(text).strip().split("\\s+")) {
      if (!line.isEmpty() && width(line + " " + word, size) > width) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.isEmpty() ? "" : " ").append(word);
    }
    if (!line.isEmpty()) {
      lines.add(line.toString());
    }
    return lines;
  }

  /** Keeps a number and its unit on one line, by spaces that do not break. */
  private static String joined(String text) {
    return text.replaceAll("(?<=\\d) (?=(\\p{L}{1,4}\\b|%))", "\u00a0")
        .replaceAll(" (?=(m⁻²|s⁻¹))", "\u00a0");
  }

  private static double advance(int c) {
    if (c >= '0' && c <= '9') {
      return 0.636;
    }
    if ("iljIft.,:;|' \u00a0()[]⁻¹²".indexOf(c) >= 0) {
      return 0.36;
    }
    if ("mwMWµ%@".indexOf(c) >= 0) {
      return 0.95;
    }
    return Character.isUpperCase(c) ? 0.7 : 0.61;
  }
}
