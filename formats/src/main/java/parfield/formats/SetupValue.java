package parfield.formats;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * One value of a setup's text, as {@link SetupText} reads and writes it. Immutable.
 *
 * <p>What is written reads back as the same value: a text that looks like a number is put in
 * quotes, a number never is.
 */
public sealed interface SetupValue {
  /** Nothing stands there. */
  record Nothing() implements SetupValue {}

  /**
   * A number, or true or false, in its own digits and letters.
   *
   * @param text as it is written
   */
  record Figure(String text) implements SetupValue {
    public Figure {
      if (!isFigure(text)) {
        throw new IllegalArgumentException(
            "a figure is a decimal number, true or false; got " + Notes.shown(text));
      }
    }
  }

  /**
   * A text.
   *
   * @param text without quotes
   */
  record Text(String text) implements SetupValue {
    public Text {
      Objects.requireNonNull(text, "text");
    }
  }

  /**
   * A map.
   *
   * @param entries in the order in which they are written
   */
  record Fields(Map<String, SetupValue> entries) implements SetupValue {
    public Fields {
      entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
    }
  }

  /**
   * A list.
   *
   * @param elements in order
   */
  record Items(List<SetupValue> elements) implements SetupValue {
    public Items {
      elements = List.copyOf(elements);
    }
  }

  /** A number or a truth value where the text is one, else a text. */
  static SetupValue of(String text) {
    return isFigure(text) ? new Figure(text) : new Text(text);
  }

  /** The text of a number, a truth value or a text; empty for all else. */
  default String plain() {
    if (this instanceof Figure figure) {
      return figure.text();
    }
    return this instanceof Text text ? text.text() : "";
  }

  private static boolean isFigure(String text) {
    String small = text.toLowerCase(Locale.ROOT);
    return NumberText.isNumber(text) || small.equals("true") || small.equals("false");
  }

  /** What a node holds; keys that are no texts are left out, of equal keys the first counts. */
  static SetupValue read(Node node) {
    if (node instanceof MappingNode map) {
      Map<String, SetupValue> entries = new LinkedHashMap<>();
      for (NodeTuple tuple : map.getValue()) {
        if (tuple.getKeyNode() instanceof ScalarNode key) {
          entries.putIfAbsent(key.getValue(), read(tuple.getValueNode()));
        }
      }
      return new Fields(entries);
    }
    if (node instanceof SequenceNode list) {
      return new Items(list.getValue().stream().map(SetupValue::read).toList());
    }
    ScalarNode scalar = (ScalarNode) node;
    if (scalar.getScalarStyle() == ScalarStyle.PLAIN) {
      return isNull(scalar.getValue()) ? new Nothing() : of(scalar.getValue());
    }
    return new Text(scalar.getValue());
  }

  private static boolean isNull(String text) {
    return List.of("", "~", "null", "Null", "NULL").contains(text);
  }

  /** The value in one line, as it may stand anywhere in a document. */
  default String inline() {
    if (this instanceof Fields fields) {
      return fields.entries().entrySet().stream()
          .map(entry -> key(entry.getKey()) + ": " + entry.getValue().inline())
          .collect(Collectors.joining(", ", "{", "}"));
    }
    if (this instanceof Items items) {
      return items.elements().stream()
          .map(SetupValue::inline)
          .collect(Collectors.joining(", ", "[", "]"));
    }
    if (this instanceof Figure figure) {
      return figure.text();
    }
    return this instanceof Text text ? quoted(text.text()) : "~";
  }

  /** A key as it is written: a number needs no quotes there. */
  static String key(String name) {
    return NumberText.isNumber(name) ? name : quoted(name);
  }

  private static String quoted(String text) {
    if (text.matches("\\p{L}(?:[\\p{L}\\p{N} _./()%+-]*[\\p{L}\\p{N}_/()%+-])?")
        && !isFigure(text)
        && !isNull(text)) {
      return text;
    }
    if (text.codePoints().allMatch(point -> (point >= ' ' && point < 0x7f) || point > 0xa0)
        && Fault.printable(text).equals(text)) {
      return "'" + text.replace("'", "''") + "'";
    }
    StringBuilder escaped = new StringBuilder("\"");
    text.codePoints()
        .forEach(
            point -> {
              if (point == '"' || point == '\\') {
                escaped.append('\\').appendCodePoint(point);
              } else if (point >= ' ' && point < 0x7f) {
                escaped.appendCodePoint(point);
              } else {
                escaped.append(String.format(Locale.ROOT, "\\U%08x", point));
              }
            });
    return escaped.append('"').toString();
  }
}
