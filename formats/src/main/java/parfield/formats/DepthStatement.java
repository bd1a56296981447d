package parfield.formats;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A sentence that says how deep a table's readings were taken, as in {@code depth 15 cm}, {@code
 * Depth: 6 in}, {@code depth = 15}.
 *
 * @param line where it stands
 * @param number the depth as written
 * @param unit as written but in lower case; empty if none is stated
 */
record DepthStatement(int line, String number, String unit) {
  private static final Pattern SENTENCE =
      Pattern.compile("depth\\s*[:=]?\\s*([-+]?[0-9][0-9.,]*)\\s*([a-z\"]*)\\.?");

  static Optional<DepthStatement> of(int line, String text) {
    if (text.length() > 100) {
      return Optional.empty();
    }
    Matcher matcher = SENTENCE.matcher(text.strip().toLowerCase(Locale.ROOT));
    return matcher.matches()
        ? Optional.of(new DepthStatement(line, matcher.group(1), matcher.group(2)))
        : Optional.empty();
  }
}
