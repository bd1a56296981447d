package parfield.formats;

import java.util.Locale;

/**
 * One thing wrong with a file: where, what, the value found, the limit and the cure. Its texts are
 * kept printable and in one line.
 *
 * @param file name of the file
 * @param line 1-based; 0 where the fault is the whole file's
 * @param column 1-based; 0 where the fault is the whole line's
 * @param what the thing that is wrong, in the file's own words
 * @param value what was found; empty where there is nothing to show
 * @param limit what is allowed; empty where nothing would be
 * @param cure what to do
 */
public record Fault(
    String file, int line, int column, String what, String value, String limit, String cure) {
  public Fault {
    file = printable(file);
    what = printable(what);
    value = printable(value);
    limit = printable(limit);
    cure = printable(cure);
    if (line < 0 || column < 0) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a fault's line and column must be 0 or more; got %d and %d",
              line,
              column));
    }
  }

  /** A text in one line: control characters are written out, so that none reaches a screen. */
  static String printable(String text) {
    if (text.codePoints().noneMatch(Fault::hidden)) {
      return text;
    }
    StringBuilder shown = new StringBuilder();
    text.codePoints()
        .forEach(
            point -> {
              if (hidden(point)) {
                shown.append(String.format(Locale.ROOT, "\\u%04x", point));
              } else {
                shown.appendCodePoint(point);
              }
            });
    return shown.toString();
  }

  private static boolean hidden(int point) {
    return switch (Character.getType(point)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE,
          Character.UNASSIGNED ->
          true;
      default -> false;
    };
  }

  /**
   * The fault in one line, as in {@code setup.yaml:12:7: tank.bottom.reflectance: got 1.4, allowed
   * 0 to below 1; write the share of light that the bottom reflects}.
   */
  public String message() {
    StringBuilder text = new StringBuilder(file);
    if (line > 0) {
      text.append(':').append(line);
      if (column > 0) {
        text.append(':').append(column);
      }
    }
    text.append(": ").append(what);
    String separator = ": ";
    if (!value.isEmpty()) {
      text.append(separator).append("got ").append(value);
      separator = ", ";
    }
    if (!limit.isEmpty()) {
      text.append(separator).append("allowed ").append(limit);
    }
    if (!cure.isEmpty()) {
      text.append(value.isEmpty() && limit.isEmpty() ? ": " : "; ").append(cure);
    }
    return text.toString();
  }
}
