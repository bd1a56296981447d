package parfield.formats;

/**
 * Looks through the XML of a sheet for what no spreadsheet program writes and what would cost its
 * reader time or memory: a cell beyond the last column, and texts longer than any number or name.
 * For one sheet; takes its bytes in turn.
 */
final class SheetScan {
  /** Letters of the last column, XFD. */
  private static final int MOST_LETTERS = 3;

  /** Longest text of a cell, and longest tag [bytes]. */
  static final int LONGEST = 4000;

  private enum Part {
    TEXT,
    /** Right after the sign that opens a tag. */
    OPENED,
    /** The name of a tag. */
    NAME,
    TAG,
    /** The value of an attribute. */
    VALUE,
    /** A comment, a character section or an instruction: the text goes on after it. */
    ASIDE
  }

  private Part part = Part.TEXT;
  private int textLength;
  private int tagLength;
  private final StringBuilder name = new StringBuilder();
  private int quote;
  private int letters;
  private String fault = "";

  /** Takes the next bytes; returns what is wrong so far, empty if nothing is. */
  String take(byte[] bytes, int length) {
    for (int i = 0; i < length && fault.isEmpty(); i++) {
      take(bytes[i]);
    }
    return fault;
  }

  private void take(int c) {
    if (c == 0) {
      fault = "text that is not UTF-8";
    } else if (part == Part.TEXT && c == '<') {
      part = Part.OPENED;
    } else if (part == Part.ASIDE && c == '>') {
      part = Part.TEXT;
    } else if (part == Part.TEXT || part == Part.ASIDE) {
      textLength++;
    } else {
      inTag(c);
    }
    if (textLength > LONGEST || tagLength > LONGEST) {
      fault = "a text of more than " + LONGEST + " characters";
    }
  }

  private void inTag(int c) {
    tagLength++;
    if (part == Part.OPENED && (c == '!' || c == '?')) {
      part = Part.ASIDE;
    } else if (part == Part.OPENED) {
      part = Part.NAME;
      name.setLength(0);
      name.append((char) c);
      textLength = 0;
      tagLength = 0;
    } else if (part == Part.VALUE) {
      inValue(c);
    } else if (c == '>') {
      part = Part.TEXT;
    } else if (c == '"' || c == '\'') {
      part = Part.VALUE;
      quote = c;
      letters = 0;
    } else if (part == Part.NAME && c > ' ') {
      name.append((char) c);
    } else {
      part = Part.TAG;
    }
  }

  /** A value within the tag of a cell: its reference, as in r="C12", or a short word. */
  private void inValue(int c) {
    if (c == quote) {
      part = Part.TAG;
    } else if (Character.isLetter(c)) {
      letters++;
    } else if (letters > MOST_LETTERS || c == '&') {
      String tag = name.toString();
      if (tag.equals("c") || tag.endsWith(":c")) {
        fault = "a cell beyond the last column";
      }
    }
  }
}
