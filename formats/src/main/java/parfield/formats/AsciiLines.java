package parfield.formats;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * The words of a long plain text, line by line, without a copy of the whole. For one thread.
 *
 * <p>Bytes that are not ASCII may stand in names and comments; what is read as a word is.
 */
final class AsciiLines {
  private static final int MOST_WORDS = 1 << 12;

  private final byte[] bytes;
  private int at;
  private int line;
  private int words;
  private int[] from = new int[16];
  private int[] to = new int[16];

  AsciiLines(byte[] bytes) {
    this.bytes = bytes;
  }

  /**
   * Goes to the next line that holds a word; a backslash at a line's end joins the next to it.
   *
   * @return whether there was one
   */
  boolean next() {
    words = 0;
    while (at < bytes.length && words == 0) {
      line++;
      split();
    }
    return words > 0;
  }

  private void split() {
    while (at < bytes.length && bytes[at] != '\n') {
      if (blank(bytes[at])) {
        at++;
        continue;
      }
      if (bytes[at] == '#') {
        skip();
        break;
      }
      if (bytes[at] == '\\' && endsLine(at + 1)) {
        skip();
        at++;
        line++;
        continue;
      }
      int start = at;
      while (at < bytes.length && !blank(bytes[at]) && bytes[at] != '\n') {
        at++;
      }
      add(start, at);
    }
    at++;
  }

  private boolean endsLine(int from) {
    int i = from;
    while (i < bytes.length && blank(bytes[i])) {
      i++;
    }
    return i < bytes.length && bytes[i] == '\n';
  }

  private void skip() {
    while (at < bytes.length && bytes[at] != '\n') {
      at++;
    }
  }

  private void add(int start, int end) {
    if (words >= MOST_WORDS) {
      return;
    }
    if (words == from.length) {
      from = Arrays.copyOf(from, 2 * words);
      to = Arrays.copyOf(to, 2 * words);
    }
    from[words] = start;
    to[words++] = end;
  }

  private static boolean blank(byte b) {
    return b == ' ' || b == '\t' || b == '\r' || b == '\f';
  }

  /** Number of the line, 1-based. */
  int line() {
    return line;
  }

  /** Words on the line, 1 or more; of a very long line the first {@value #MOST_WORDS}. */
  int words() {
    return words;
  }

  String word(int i) {
    return new String(bytes, from[i], to[i] - from[i], StandardCharsets.US_ASCII);
  }

  /** Whether a word is this one, capitals and small letters alike. */
  boolean is(int i, String word) {
    if (to[i] - from[i] != word.length()) {
      return false;
    }
    for (int k = 0; k < word.length(); k++) {
      int letter = bytes[from[i] + k];
      int small = letter >= 'A' && letter <= 'Z' ? letter + 32 : letter;
      if (small != word.charAt(k)) {
        return false;
      }
    }
    return true;
  }
}
