package parfield.formats;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.snakeyaml.engine.v2.nodes.Tag;

/**
 * One value of a YAML document with its place and its path from the root.
 *
 * <p>Each reader notes a fault where the value is not of the wanted kind, and answers with nothing
 * or NaN, so that reading goes on to the next fault.
 */
final class Entry {
  private static final int LONGEST_NAME = 100;

  /** What all entries of a document share. */
  static final class Document {
    private final String file;
    private final Notes notes;
    private int visits;

    Document(String file, Notes notes) {
      this.file = file;
      this.notes = notes;
    }
  }

  private final Node node;
  private final String path;
  private final Document document;

  Entry(Node node, String path, Document document) {
    this.node = node;
    this.path = path;
    this.document = document;
  }

  Node node() {
    return node;
  }

  String path() {
    return path;
  }

  String file() {
    return document.file;
  }

  Notes notes() {
    return document.notes;
  }

  int line() {
    return node.getStartMark().map(Mark::getLine).orElse(-1) + 1;
  }

  int column() {
    return node.getStartMark().map(Mark::getColumn).orElse(-1) + 1;
  }

  /** Notes a fault at this place. */
  void fault(String value, String limit, String cure) {
    fault(path.isEmpty() ? "the document" : path, value, limit, cure);
  }

  void fault(String what, String value, String limit, String cure) {
    notes().fault(new Fault(file(), line(), column(), what, value, limit, cure));
  }

  /** Notes a name that does not exist, with the nearest that does. */
  void unknown(String what, String name, Collection<String> known, String otherwise) {
    // Beyond the faults that are told, finding the nearest name would be work for nothing.
    boolean told = !notes().full(file());
    fault(
        what,
        Notes.shown(name),
        known.isEmpty() ? "none, for none is stated" : Notes.shown(known),
        told ? Nearest.cure(name, known, otherwise) : otherwise);
  }

  boolean isMap() {
    return node instanceof MappingNode;
  }

  boolean isList() {
    return node instanceof SequenceNode;
  }

  /** Whether this is a text: something that was not meant as a number. */
  boolean isText() {
    return node instanceof ScalarNode scalar
        && !isNothing()
        && scalar.getValue().chars().anyMatch(c -> Character.isLetter(c) && c != 'e' && c != 'E');
  }

  boolean isNothing() {
    return node instanceof ScalarNode scalar
        && scalar.getScalarStyle() == ScalarStyle.PLAIN
        && List.of("", "~", "null", "Null", "NULL").contains(scalar.getValue());
  }

  /** The value in words, for a message. */
  String shown() {
    if (isMap()) {
      return "a map";
    }
    if (isList()) {
      return "a list";
    }
    if (isNothing()) {
      return "nothing";
    }
    ScalarNode scalar = (ScalarNode) node;
    String text = Notes.shown(scalar.getValue());
    return scalar.getScalarStyle() == ScalarStyle.PLAIN ? text : "the text \"" + text + "\"";
  }

  private Optional<String> plain() {
    return node instanceof ScalarNode scalar && scalar.getScalarStyle() == ScalarStyle.PLAIN
        ? Optional.of(scalar.getValue())
        : Optional.empty();
  }

  /** The number here, or NaN with a fault. */
  double number(Limit limit, String cure) {
    String text = plain().orElse("");
    double value = NumberText.parse(text);
    if (Double.isNaN(value)) {
      fault(shown(), "a number, " + limit.text(), numberCure(text));
      return Double.NaN;
    }
    if (!limit.contains(value)) {
      fault(shown(), limit.text(), cure);
      return Double.NaN;
    }
    return value;
  }

  private String numberCure(String text) {
    if (node instanceof ScalarNode scalar
        && scalar.getScalarStyle() != ScalarStyle.PLAIN
        && NumberText.isNumber(scalar.getValue())) {
      return "leave the quotes off";
    }
    if (!Double.isNaN(NumberText.parse(text, ','))) {
      return "write decimals with a point: " + Notes.shown(text.replace(',', '.'));
    }
    String digits = text.replaceAll("[^0-9.eE+-].*$", "").strip();
    if (text.endsWith("%") && NumberText.isNumber(digits)) {
      return "write a share, as in " + NumberText.shown(NumberText.parse(digits) / 100);
    }
    if (NumberText.isNumber(digits)) {
      return "write the number alone: " + digits;
    }
    return "write a number";
  }

  /** The truth value here, or empty with a fault. */
  Optional<Boolean> truth() {
    String text = plain().orElse("").toLowerCase(Locale.ROOT);
    if (text.equals("true") || text.equals("false")) {
      return Optional.of(text.equals("true"));
    }
    fault(shown(), "true or false", "write true or false");
    return Optional.empty();
  }

  /** The text here, not empty and not long, or empty with a fault. */
  Optional<String> text(String cure) {
    if (!(node instanceof ScalarNode scalar) || isNothing() || scalar.getValue().isBlank()) {
      fault(shown(), "a text", cure);
      return Optional.empty();
    }
    if (scalar.getValue().length() > LONGEST_NAME) {
      fault(
          shown(), String.format(Locale.ROOT, "a text of at most %d letters", LONGEST_NAME), cure);
      return Optional.empty();
    }
    return Optional.of(scalar.getValue());
  }

  /** One of a few words, or empty with a fault. */
  Optional<String> word(List<String> words) {
    String text = node instanceof ScalarNode scalar ? scalar.getValue() : "";
    if (words.contains(text)) {
      return Optional.of(text);
    }
    fault(shown(), Notes.shown(words), Nearest.cure(text, words, "write one of these"));
    return Optional.empty();
  }

  /** The elements of a list, or none with a fault. */
  List<Entry> list(String cure) {
    if (!(node instanceof SequenceNode sequence)) {
      fault(shown(), "a list", cure);
      return List.of();
    }
    List<Entry> entries = new ArrayList<>();
    for (Node element : sequence.getValue()) {
      entries.add(child(element, path + "[" + (entries.size() + 1) + "]"));
    }
    return entries;
  }

  /** The entries of a map by their names, or none with a fault. */
  Map<String, Entry> named(String cure) {
    Map<String, Entry> entries = new LinkedHashMap<>();
    for (Keyed keyed : keyed(cure, UnaryOperator.identity())) {
      keyed.key().text(cure).ifPresent(name -> entries.put(name, keyed.value()));
    }
    return entries;
  }

  /** The map here with keys that the format knows, or empty with a fault. */
  Optional<Section> section(String... keys) {
    if (!isMap()) {
      fault(shown(), "a map of " + String.join(", ", keys), "write {" + keys[0] + ": …}");
      return Optional.empty();
    }
    return Optional.of(
        new Section(this, keyed("write key: value", Section::canonical), List.of(keys)));
  }

  /**
   * A key and its value.
   *
   * @param name the key as written
   * @param key where it stands
   * @param value what it holds
   */
  record Keyed(String name, Entry key, Entry value) {}

  /**
   * Keys and values of a map, each key once; a fault where there is no map or a key comes twice.
   */
  List<Keyed> keyed(String cure, UnaryOperator<String> canonical) {
    if (!(node instanceof MappingNode mapping)) {
      fault(shown(), "a map", cure);
      return List.of();
    }
    Map<String, Entry> seen = new LinkedHashMap<>();
    List<Keyed> entries = new ArrayList<>();
    for (NodeTuple tuple : mapping.getValue()) {
      if (!(tuple.getKeyNode() instanceof ScalarNode scalar)) {
        child(tuple.getKeyNode(), path).fault("a key", "a map or a list", "a name", cure);
        continue;
      }
      String name = scalar.getValue();
      String below = (path.isEmpty() ? "" : path + ".") + Notes.shown(name);
      Entry key = child(scalar, below);
      Entry first = seen.putIfAbsent(canonical.apply(name), key);
      if (first != null) {
        key.fault(
            String.format(Locale.ROOT, "a second time after line %d", first.line()),
            "once",
            "delete one of the two");
      } else {
        entries.add(new Keyed(name, key, child(tuple.getValueNode(), below)));
      }
    }
    return entries;
  }

  private Entry child(Node child, String childPath) {
    document.visits++;
    if (document.visits > Yaml.MOST_NODES) {
      throw notes()
          .fatal(
              new Fault(
                  file(),
                  line(),
                  column(),
                  "number of entries, aliases written out",
                  "more",
                  String.format(Locale.ROOT, "%d", Yaml.MOST_NODES),
                  "use fewer aliases"));
    }
    Entry entry = new Entry(child, childPath, document);
    if (!child.getTag().getValue().startsWith(Tag.PREFIX)) {
      entry.fault("the tag " + Notes.shown(child.getTag().getValue()), "no tags", "delete it");
    }
    return entry;
  }
}
