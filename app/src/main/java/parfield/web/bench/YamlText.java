package parfield.web.bench;

import java.util.Locale;
import java.util.Set;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/** Texts as YAML writes them. */
public final class YamlText {
  /** Words that YAML of one version or another reads as something else than a text. */
  private static final Set<String> WORDS =
      Set.of("true", "false", "yes", "no", "on", "off", "null", "y", "n");

  /** No setup is nested so deep; what reads a document calls itself at every level. */
  private static final int DEEPEST = 50;

  private YamlText() {}

  /** Whether a text is nested so deep that nothing should try to read it. */
  static boolean tooDeep(String text) {
    int depth = 0;
    try {
      for (Event event : new Parse(LoadSettings.builder().build()).parseString(text)) {
        switch (event.getEventId()) {
          case MappingStart, SequenceStart -> depth++;
          case MappingEnd, SequenceEnd -> depth--;
          default -> {}
        }
        if (depth > DEEPEST) {
          return true;
        }
      }
    } catch (YamlEngineException e) {
      return false; // No YAML: whoever reads it says so.
    }
    return false;
  }

  /**
   * A text as a scalar of one line: plain where every reader of YAML takes it for the very same
   * text, in a list within brackets too; else in double quotes.
   */
  public static String quoted(String text) {
    if (text.matches("[A-Za-z][A-Za-z0-9_-]*( [A-Za-z0-9_-]+)*")
        && !WORDS.contains(text.toLowerCase(Locale.ROOT))) {
      return text;
    }
    StringBuilder quoted = new StringBuilder("\"");
    text.codePoints()
        .forEach(
            c -> {
              if (c == '"' || c == '\\') {
                quoted.append('\\').appendCodePoint(c);
              } else if (printable(c)) {
                quoted.appendCodePoint(c);
              } else {
                quoted.append(String.format(Locale.ROOT, "\\U%08x", c));
              }
            });
    return quoted.append('"').toString();
  }

  /** Whether a character may stand in a document as it is, without breaking its line. */
  private static boolean printable(int c) {
    return (c >= ' ' && c < 0x7f)
        || (c > 0x9f && c < 0xd800 && c != 0x2028 && c != 0x2029)
        || (c > 0xdfff && c < 0xfffe && c != 0xfeff)
        || c > 0xffff;
  }
}
