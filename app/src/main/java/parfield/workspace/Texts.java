package parfield.workspace;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Objects;

/** What texts a workspace takes, and how they are searched. */
final class Texts {
  private Texts() {}

  /**
   * Refuses what no database of the two can hold.
   *
   * @param what the text is, for the message
   * @throws IllegalArgumentException if it is too long, or holds a null character or half of a
   *     surrogate pair
   */
  static String check(String what, String text, int longest) {
    Objects.requireNonNull(text, what);
    if (text.length() > longest) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "%s may hold %d characters; got %d: shorten it",
              what,
              longest,
              text.length()));
    }
    if (text.codePoints()
        .anyMatch(
            point ->
                point == 0
                    || (point >= Character.MIN_SURROGATE && point <= Character.MAX_SURROGATE))) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "%s holds a character that is none: delete it, or save as UTF-8", what));
    }
    return text;
  }

  /** A text that names something: not blank. */
  static String name(String what, String text) {
    check(what, text, 200);
    if (text.isBlank()) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "%s must not be empty: give it a name", what));
    }
    return text.strip();
  }

  /** A text as it is searched: capitals, accents and widths do not count. */
  static String folded(String text) {
    return Normalizer.normalize(text, Normalizer.Form.NFKD)
        .replaceAll("\\p{M}+", "")
        .toLowerCase(Locale.ROOT);
  }

  /** The pattern of LIKE, with an exclamation mark as its escape, that finds a text anywhere. */
  static String pattern(String search) {
    return "%" + folded(search.strip()).replaceAll("([%_!])", "!$1") + "%";
  }
}
