package parfield.formats;

/**
 * Reads the numbers of one table: with a decimal point, or with a decimal comma where commas do not
 * separate cells, but never a comma whose meaning must be guessed.
 */
final class Decimals {
  private final boolean commaSeparated;
  private final boolean pointsTell;
  private int commaLine;
  private String comma = "";
  private String clearComma = "";
  private int pointLine;
  private String point = "";

  private Decimals(boolean commaSeparated, boolean pointsTell) {
    this.commaSeparated = commaSeparated;
    this.pointsTell = pointsTell;
  }

  /** For text whose cells are separated by {@code separator}. */
  static Decimals inText(char separator) {
    return new Decimals(separator == ',', true);
  }

  /** For a sheet: it stores its numbers with a point, whatever a person typed or sees. */
  static Decimals inSheet() {
    return new Decimals(false, false);
  }

  /** The number, or NaN if it is none that can be read without guessing. */
  double parse(int line, String text) {
    int at = text.indexOf(',');
    if (at < 0) {
      if (pointsTell && pointLine == 0 && text.indexOf('.') >= 0) {
        pointLine = line;
        point = text;
      }
      return NumberText.parse(text);
    }
    if (commaSeparated) {
      return Double.NaN;
    }
    double value = NumberText.parse(text, ',');
    if (!Double.isNaN(value)) {
      if (commaLine == 0) {
        commaLine = line;
        comma = text;
      }
      if (clearComma.isEmpty() && !looksGrouped(text)) {
        clearComma = text;
      }
    }
    return value;
  }

  /** What to do about a text that is no number. */
  String cure(String text) {
    if (text.indexOf(',') >= 0 && commaSeparated) {
      return "a comma may mean thousands or decimals: write 1234 or 1.234, or separate the cells"
          + " with semicolons or tabs";
    }
    return text.isEmpty() ? "fill it in, or delete the line" : "write a number";
  }

  /** Whether a comma could be one between thousands, as in 1,234. */
  private static boolean looksGrouped(String text) {
    int at = text.indexOf(',');
    String digits = text.startsWith("-") || text.startsWith("+") ? text.substring(1) : text;
    int before = digits.indexOf(',');
    return text.length() - at - 1 == 3
        && before >= 1
        && before <= 3
        && digits.charAt(0) != '0'
        && digits.chars().allMatch(c -> c == ',' || (c >= '0' && c <= '9'));
  }

  /** Ends the table: notes what commas were taken for, or that they cannot be told. */
  void close(String file, Notes notes) {
    if (commaLine == 0) {
      return;
    }
    if (pointLine > 0) {
      notes.fault(
          new Fault(
              file,
              Math.max(commaLine, pointLine),
              0,
              "decimal separator",
              Notes.shown(commaLine > pointLine ? comma : point)
                  + " after "
                  + Notes.shown(commaLine > pointLine ? point : comma),
              "points or commas, the same in the whole file",
              "write all decimals with a point"));
    } else if (clearComma.isEmpty()) {
      notes.fault(
          new Fault(
              file,
              commaLine,
              0,
              "decimal separator",
              Notes.shown(comma),
              "a comma that can only be a decimal one",
              "it may mean thousands: write 1234 or 1.234"));
    } else {
      notes.assume(file + ": commas within numbers are taken as decimal commas");
    }
  }
}
