package parfield.formats;

/** A file's bytes or text cannot be had; whoever asked for the file says where it was named. */
final class Unreadable extends Exception {
  private static final long serialVersionUID = 1L;

  private final int line;
  private final String value;
  private final String limit;
  private final String cure;

  Unreadable(int line, String value, String limit, String cure) {
    super(value + "; " + limit + "; " + cure);
    this.line = line;
    this.value = value;
    this.limit = limit;
    this.cure = cure;
  }

  Unreadable(String value, String limit, String cure) {
    this(0, value, limit, cure);
  }

  /** Whether a line of a text is what cannot be read, not the file as a whole. */
  boolean inText() {
    return line > 0;
  }

  /** The fault of a file that a person named directly. */
  Fault of(String file) {
    return new Fault(file, line, 0, "the file cannot be read", value, limit, cure);
  }

  /** The fault of a file that another file names. */
  Fault namedAt(String file, int namedLine, int column, String what, String name) {
    return new Fault(file, namedLine, column, what, Notes.shown(name) + ", " + value, limit, cure);
  }
}
