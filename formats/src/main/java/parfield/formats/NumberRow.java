package parfield.formats;

import java.util.Locale;

/**
 * The numbers of a text one after the other, between blanks, commas and line breaks. For one
 * thread.
 *
 * <p>A number that is none, or not allowed, is noted, and the next is read; where the text ends too
 * soon the read ends.
 */
final class NumberRow {
  /** An end-of-file mark of old systems. */
  private static final char END_MARK = '\u001A';

  private final String file;
  private final String[] lines;
  private final Notes notes;
  private int at;
  private int column;
  private int line;

  /** The numbers from line {@code from} on, 0-based. */
  NumberRow(String file, String[] lines, int from, Notes notes) {
    this.file = file;
    this.lines = lines;
    this.notes = notes;
    this.at = from;
    this.line = from + 1;
  }

  /** Line of the number read last, 1-based. */
  int line() {
    return line;
  }

  private static boolean separates(char c) {
    return c == ' ' || c == ',' || c == '\t' || c == '\f' || c == END_MARK || c == '\u00A0';
  }

  /** Goes to the next word; returns whether there is one. */
  private boolean seek() {
    while (at < lines.length) {
      String text = lines[at];
      while (column < text.length() && separates(text.charAt(column))) {
        column++;
      }
      if (column < text.length()) {
        return true;
      }
      at++;
      column = 0;
    }
    return false;
  }

  private String word(String what) {
    if (!seek()) {
      throw ends(what, "nothing more");
    }
    String text = lines[at];
    int from = column;
    while (column < text.length() && !separates(text.charAt(column))) {
      column++;
    }
    line = at + 1;
    return text.substring(from, column);
  }

  private InvalidFile ends(String what, String value) {
    return notes.fatal(
        new Fault(
            file,
            Math.max(line, 1),
            0,
            what,
            value,
            "a number here, or on a line after",
            "the file ends too soon: copy all of it, or correct its counts"));
  }

  /** The next number; NaN, noted, if it is none or not allowed. */
  double number(String what, Limit limit) {
    String word = word(what);
    double value = NumberText.parse(word);
    if (!limit.contains(value)) {
      if (!notes.full(file)) {
        notes.fault(
            new Fault(
                file,
                line,
                0,
                what,
                Notes.shown(word),
                "a number, " + limit.text(),
                Double.isNaN(value) ? "write a number with a decimal point" : "correct the value"));
      } else {
        throw notes.fatal();
      }
      return Double.NaN;
    }
    return value;
  }

  /** The next number, which must be whole: what follows hangs on it. */
  int whole(String what, int from, int to) {
    String word = word(what);
    double value = NumberText.parse(word);
    if (!(value >= from && value <= to) || value != Math.rint(value)) {
      throw notes.fatal(
          new Fault(
              file,
              line,
              0,
              what,
              Notes.shown(word),
              String.format(Locale.ROOT, "a whole number, %d to %d", from, to),
              "correct it: the numbers after it are counted by it"));
    }
    return (int) value;
  }

  /** Checks, before room is made for them, that so many numbers can follow at all. */
  void promise(long count, String what) {
    long room = 0;
    for (int i = at; i < lines.length; i++) {
      room += (lines[i].length() - (i == at ? column : 0) + 1) / 2;
    }
    if (count > room) {
      throw notes.fatal(
          new Fault(
              file,
              line,
              0,
              "number of " + what,
              String.valueOf(count),
              "as many as follow, here less than " + (room + 1),
              "copy all of the file, or correct its counts"));
    }
    if (count > PhotometricFile.MOST_VALUES) {
      throw notes.fatal(
          new Fault(
              file,
              line,
              0,
              "number of " + what,
              String.valueOf(count),
              "at most " + PhotometricFile.MOST_VALUES,
              "export larger steps"));
    }
  }

  double[] several(String what, int count, Limit limit) {
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      values[i] = number(what, limit);
    }
    return values;
  }

  /** Angles, each above the one before. */
  double[] ascending(String what, int count, double from, double to) {
    double[] angles = new double[count];
    Limit limit = Limit.between(from, to, "degrees");
    for (int i = 0; i < count; i++) {
      // -0 and 0 are one angle.
      angles[i] = number(what, limit) + 0.0;
      if (i > 0 && angles[i] <= angles[i - 1]) {
        notes.fault(
            new Fault(
                file,
                line,
                0,
                what,
                NumberText.shown(angles[i]) + " after " + NumberText.shown(angles[i - 1]),
                "angles that ascend",
                "sort them with their intensities; a decimal comma makes two numbers of one"));
        throw notes.fatal();
      }
    }
    return angles;
  }

  /** Notes a fault if numbers are left. */
  void end() {
    if (!seek()) {
      return;
    }
    line = at + 1;
    notes.fault(
        new Fault(
            file,
            line,
            0,
            "end of the numbers",
            "more of them",
            "as many as its counts tell",
            "correct the counts, and write decimals with a point: a comma makes two numbers of"
                + " one"));
  }
}
