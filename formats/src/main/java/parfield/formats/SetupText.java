package parfield.formats;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.CollectionNode;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * The text of a setup, changed one value at a time. Immutable: each change gives another text.
 *
 * <p>Only the value that is asked for is rewritten. Every other character stays: comments, order,
 * quotes, blank lines, line ends, keys that the format does not know. What is taken away or
 * replaced takes the comments inside it along.
 *
 * <p>Each change is read again before it is given out, and compared with what was asked for; where
 * the two differ, or where an anchor repeats what would be changed, the change is refused with an
 * {@link InvalidFile} and the text stays as it is.
 */
public final class SetupText {
  /** A value that is no longer than this is written in one line. */
  private static final int LONGEST_LINE = 72;

  private final String file;
  private final String text;
  private final int[] points;
  private final Node root;

  private SetupText(String file, String text) {
    this.file = file;
    this.text = text;
    this.points = text.codePoints().toArray();
    this.root = Yaml.parse(file, text, new Notes()).node();
  }

  /**
   * Reads a text, whatever it says.
   *
   * @param file what the setup is called in messages
   * @param text the YAML document
   * @throws InvalidFile if it is no YAML, or empty
   */
  public static SetupText of(String file, String text) {
    return new SetupText(file, text);
  }

  /** The text. */
  public String text() {
    return text;
  }

  /** What stands at a path; empty if the path leads nowhere. */
  public Optional<SetupValue> value(SetupPath path) {
    Node node = root;
    for (SetupPath.Step step : path.steps()) {
      Optional<Node> below = child(node, step);
      if (below.isEmpty()) {
        return Optional.empty();
      }
      node = below.get();
    }
    return Optional.of(SetupValue.read(node));
  }

  /** Names of the entries of a map, in order; none if there is no map. */
  public List<String> names(SetupPath path) {
    return value(path).filter(SetupValue.Fields.class::isInstance).stream()
        .flatMap(map -> ((SetupValue.Fields) map).entries().keySet().stream())
        .toList();
  }

  /** Number of elements of a list; 0 if there is no list. */
  public int size(SetupPath path) {
    return value(path)
        .map(found -> found instanceof SetupValue.Items items ? items.elements().size() : 0)
        .orElse(0);
  }

  /**
   * This text with another value at a path; maps on the way to it are made, and an index at the end
   * of a list adds to it.
   *
   * @throws InvalidFile if it cannot be written there
   */
  public SetupText with(SetupPath path, SetupValue value) {
    if (path.steps().isEmpty()) {
      throw new IllegalArgumentException("a value stands below the root, not in its place");
    }
    List<Place> places = places(path);
    Place deepest = places.get(places.size() - 1);
    int reached = places.size() - 1;
    if (reached == path.steps().size()) {
      return checked(replace(path, deepest, value), change(whole(), path, 0, value));
    }
    SetupValue added = value;
    for (int i = path.steps().size() - 1; i > reached; i--) {
      added = wrapped(path, path.steps().get(i), added);
    }
    SetupPath.Step step = path.steps().get(reached);
    List<Splice> splices;
    if (SetupValue.read(deepest.node) instanceof SetupValue.Nothing) {
      splices = replace(path, deepest, wrapped(path, step, added));
    } else if (deepest.node instanceof MappingNode map && !(step instanceof SetupPath.At)) {
      splices = List.of(insert(path, deepest, map, SetupPath.written(step), added));
    } else if (deepest.node instanceof SequenceNode list
        && step instanceof SetupPath.At at
        && at.index() == list.getValue().size()) {
      splices = List.of(append(path, list, added));
    } else {
      throw refusal(path, "another value stands where this belongs");
    }
    return checked(splices, change(whole(), path, 0, value));
  }

  /**
   * This text without what stands at a path; the same text if nothing does. A map or a list that is
   * left empty reads as nothing.
   *
   * @throws InvalidFile if it cannot be taken away
   */
  public SetupText without(SetupPath path) {
    List<Place> places = places(path);
    if (places.size() <= path.steps().size() || path.steps().isEmpty()) {
      return this;
    }
    Place gone = places.get(places.size() - 1);
    Place holder = places.get(places.size() - 2);
    refuseAnchors(path, gone.node);
    boolean flow = ((CollectionNode<?>) holder.node).getFlowStyle() == FlowStyle.FLOW;
    List<Splice> splices =
        flow ? removeFromFlow(path, holder, gone) : removeFromBlock(path, holder, gone);
    return checked(splices, remove(whole(), path, 0, flow));
  }

  /**
   * This text with another name for what stands at a path.
   *
   * @throws InvalidFile if nothing stands there, or the new name is taken
   */
  public SetupText renamed(SetupPath path, String name) {
    List<Place> places = places(path);
    Place place = places.get(places.size() - 1);
    if (places.size() <= path.steps().size() || place.key == null) {
      throw refusal(path, "nothing of that name stands there");
    }
    if (SetupPath.matches(path.last(), name)) {
      return this;
    }
    if (names(path.parent()).contains(name)) {
      throw new InvalidFile(
          List.of(
              new Fault(
                  file,
                  line(place.key),
                  0,
                  path.text(),
                  Notes.shown(name),
                  "a name that is not taken yet",
                  "choose another name")));
    }
    refuseAnchor(path, place.key);
    Splice splice = new Splice(start(place.key), endMark(place.key), List.of(SetupValue.key(name)));
    return checked(List.of(splice), rename(whole(), path, 0, name));
  }

  // Finding.

  /**
   * A node on the way.
   *
   * @param node the value
   * @param key what names it in its map; null in a list and at the root
   * @param index among the entries of what holds it
   * @param inFlow whether what holds it is written with brackets
   */
  private record Place(Node node, ScalarNode key, int index, boolean inFlow) {}

  /** The places along a path, root first, as far as it leads. */
  private List<Place> places(SetupPath path) {
    List<Place> places = new ArrayList<>();
    places.add(new Place(root, null, 0, false));
    for (SetupPath.Step step : path.steps()) {
      Place last = places.get(places.size() - 1);
      refuseAnchor(path, last.node);
      boolean flow =
          last.inFlow
              || (last.node instanceof CollectionNode<?> collection
                  && collection.getFlowStyle() == FlowStyle.FLOW);
      int index = index(last.node, step);
      if (index < 0) {
        return places;
      }
      if (last.node instanceof MappingNode map) {
        NodeTuple tuple = map.getValue().get(index);
        places.add(new Place(tuple.getValueNode(), (ScalarNode) tuple.getKeyNode(), index, flow));
      } else {
        places.add(new Place(((SequenceNode) last.node).getValue().get(index), null, index, flow));
      }
    }
    return places;
  }

  private static Optional<Node> child(Node node, SetupPath.Step step) {
    int index = index(node, step);
    if (index < 0) {
      return Optional.empty();
    }
    return Optional.of(
        node instanceof MappingNode map
            ? map.getValue().get(index).getValueNode()
            : ((SequenceNode) node).getValue().get(index));
  }

  private static int index(Node node, SetupPath.Step step) {
    if (node instanceof MappingNode map) {
      for (int i = 0; i < map.getValue().size(); i++) {
        if (map.getValue().get(i).getKeyNode() instanceof ScalarNode key
            && SetupPath.matches(step, key.getValue())) {
          return i;
        }
      }
    } else if (node instanceof SequenceNode list
        && step instanceof SetupPath.At at
        && at.index() < list.getValue().size()) {
      return at.index();
    }
    return -1;
  }

  private SetupValue wrapped(SetupPath path, SetupPath.Step step, SetupValue value) {
    if (step instanceof SetupPath.At at) {
      if (at.index() != 0) {
        throw refusal(path, "a list begins with its first element");
      }
      return new SetupValue.Items(List.of(value));
    }
    return new SetupValue.Fields(Map.of(SetupPath.written(step), value));
  }

  // Changing.

  /** Code points {@code from} to before {@code to}, replaced. */
  private record Splice(int from, int to, List<String> text) {}

  private List<Splice> replace(SetupPath path, Place place, SetupValue value) {
    refuseAnchors(path, place.node);
    int start = start(place.node);
    if (isEmpty(place.node)) {
      return List.of(fill(path, place, start, value));
    }
    if (isBlock(place.node)) {
      int end = end(path, place.node);
      boolean ownLines = blank(lineStart(start), start);
      if (!ownLines || place.key == null) {
        return List.of(new Splice(start, end, List.of(value.inline())));
      }
      int colon = colon(path, place.key);
      int from = lineStart(start);
      int to = afterBreak(lineEnd(end));
      List<Splice> both = new ArrayList<>();
      if (from <= colon) {
        throw refusal(path, "its text is laid out in an unusual way");
      }
      both.add(new Splice(colon + 1, colon + 1, List.of(" " + value.inline())));
      both.add(new Splice(from, to, List.of()));
      return both;
    }
    return List.of(new Splice(start, end(path, place.node), List.of(value.inline())));
  }

  /** Writes a value where nothing stands yet, after a colon or a dash. */
  private Splice fill(SetupPath path, Place place, int mark, SetupValue value) {
    if (place.key == null) {
      return new Splice(mark, mark, List.of(" " + value.inline()));
    }
    int keyEnd = endMark(place.key);
    int colon = keyEnd;
    while (colon < points.length && isBlank(points[colon])) {
      colon++;
    }
    if (colon >= points.length || points[colon] != ':') {
      return new Splice(keyEnd, keyEnd, List.of(": " + value.inline()));
    }
    if (place.inFlow || value.inline().length() <= LONGEST_LINE) {
      return new Splice(colon + 1, colon + 1, List.of(" " + value.inline()));
    }
    int indent = place.key.getStartMark().orElseThrow().getColumn();
    int at = lineEnd(colon);
    if (!restIsComment(colon + 1)) {
      throw refusal(path, "its text is laid out in an unusual way");
    }
    return new Splice(at, at, List.of(block(value, indent)));
  }

  private Splice insert(
      SetupPath path, Place place, MappingNode map, String key, SetupValue value) {
    List<NodeTuple> entries = map.getValue();
    String written = SetupValue.key(key);
    if (map.getFlowStyle() == FlowStyle.FLOW) {
      if (entries.isEmpty()) {
        int at = start(map) + 1;
        return new Splice(at, at, List.of(written + ": " + value.inline()));
      }
      int at = entryEnd(path, entries.get(entries.size() - 1));
      return new Splice(at, at, List.of(", " + written + ": " + value.inline()));
    }
    int indent = entries.get(0).getKeyNode().getStartMark().orElseThrow().getColumn();
    int last = entryEnd(path, entries.get(entries.size() - 1));
    String body = place.inFlow ? " " + value.inline() : block(value, indent);
    return line(path, last, " ".repeat(indent) + written + ":" + body);
  }

  private Splice append(SetupPath path, SequenceNode list, SetupValue value) {
    List<Node> elements = list.getValue();
    if (list.getFlowStyle() == FlowStyle.FLOW) {
      if (elements.isEmpty()) {
        int at = start(list) + 1;
        return new Splice(at, at, List.of(value.inline()));
      }
      int at = end(path, elements.get(elements.size() - 1));
      return new Splice(at, at, List.of(", " + value.inline()));
    }
    int indent = list.getStartMark().orElseThrow().getColumn();
    int last = end(path, elements.get(elements.size() - 1));
    return line(path, last, " ".repeat(indent) + "-" + item(value, indent));
  }

  /** A line of its own after the one in which something ends. */
  private Splice line(SetupPath path, int after, String added) {
    if (!restIsComment(after)) {
      throw refusal(path, "its text is laid out in an unusual way");
    }
    int at = lineEnd(after);
    return new Splice(at, at, List.of("\n" + added));
  }

  private List<Splice> removeFromFlow(SetupPath path, Place holder, Place gone) {
    int from = gone.key == null ? start(gone.node) : start(gone.key);
    int to =
        gone.key == null
            ? end(path, gone.node)
            : entryEnd(path, ((MappingNode) holder.node).getValue().get(gone.index));
    int comma = comma(to);
    if (comma >= 0) {
      int after = comma + 1;
      while (after < points.length && isBlank(points[after])) {
        after++;
      }
      return blankOrComment(to, comma) && points(to, comma).isBlank()
          ? List.of(new Splice(from, after, List.of()))
          : List.of(new Splice(from, to, List.of()), new Splice(comma, comma + 1, List.of()));
    }
    if (gone.index == 0) {
      return List.of(new Splice(from, to, List.of()));
    }
    int before = comma(previousEnd(path, holder, gone.index));
    if (before < 0 || before >= from) {
      throw refusal(path, "its text is laid out in an unusual way");
    }
    return points(before + 1, from).isBlank() && lineStart(from) <= before
        ? List.of(new Splice(before, to, List.of()))
        : List.of(new Splice(before, before + 1, List.of()), new Splice(from, to, List.of()));
  }

  private int previousEnd(SetupPath path, Place holder, int index) {
    return holder.node instanceof MappingNode map
        ? entryEnd(path, map.getValue().get(index - 1))
        : end(path, ((SequenceNode) holder.node).getValue().get(index - 1));
  }

  private List<Splice> removeFromBlock(SetupPath path, Place holder, Place gone) {
    int from;
    int next = -1;
    int end;
    if (holder.node instanceof MappingNode map) {
      from = start(gone.key);
      end = entryEnd(path, map.getValue().get(gone.index));
      if (gone.index + 1 < map.getValue().size()) {
        next = start(map.getValue().get(gone.index + 1).getKeyNode());
      }
    } else {
      from = dash(path, (SequenceNode) holder.node, gone.node);
      end = end(path, gone.node);
    }
    if (!restIsComment(end)) {
      throw refusal(path, "its text is laid out in an unusual way");
    }
    if (blank(lineStart(from), from)) {
      int to = afterBreak(lineEnd(end));
      if (to == lineEnd(end) && lineStart(from) > 0) {
        // The last line without an end: the break before it goes.
        return List.of(new Splice(beforeBreak(lineStart(from)), to, List.of()));
      }
      return List.of(new Splice(lineStart(from), to, List.of()));
    }
    // The first key of a list's element stands beside its dash.
    if (next >= 0 && points(afterBreak(lineEnd(end)), next).isBlank()) {
      return List.of(new Splice(from, next, List.of()));
    }
    return List.of(new Splice(from, lineEnd(end), List.of()));
  }

  /** The dash of a list's element: at the list's column, in the element's line or above it. */
  private int dash(SetupPath path, SequenceNode list, Node element) {
    int column = list.getStartMark().orElseThrow().getColumn();
    int line = lineStart(start(element));
    while (line >= 0) {
      int at = line + column;
      if (at < points.length && points[at] == '-' && at <= start(element)) {
        return at;
      }
      line = line == 0 ? -1 : lineStart(line - 1);
    }
    throw refusal(path, "its text is laid out in an unusual way");
  }

  // Writing.

  /** A value after its key's colon: in the same line, or in lines further in. */
  private static String block(SetupValue value, int indent) {
    String inline = value.inline();
    boolean simple = !(value instanceof SetupValue.Fields || value instanceof SetupValue.Items);
    if (simple || inline.length() + indent <= LONGEST_LINE) {
      return " " + inline;
    }
    String in = "\n" + " ".repeat(indent + 2);
    StringBuilder lines = new StringBuilder();
    if (value instanceof SetupValue.Fields fields) {
      fields
          .entries()
          .forEach(
              (key, below) ->
                  lines
                      .append(in)
                      .append(SetupValue.key(key))
                      .append(':')
                      .append(block(below, indent + 2)));
    } else {
      ((SetupValue.Items) value)
          .elements()
          .forEach(element -> lines.append(in).append('-').append(item(element, indent + 2)));
    }
    return lines.toString();
  }

  /** A value after a dash at a column. */
  private static String item(SetupValue value, int column) {
    if (!(value instanceof SetupValue.Fields fields)
        || value.inline().length() + column <= LONGEST_LINE) {
      return " " + value.inline();
    }
    StringBuilder lines = new StringBuilder();
    fields
        .entries()
        .forEach(
            (key, below) ->
                lines
                    .append(lines.isEmpty() ? " " : "\n" + " ".repeat(column + 2))
                    .append(SetupValue.key(key))
                    .append(':')
                    .append(block(below, column + 2)));
    return lines.toString();
  }

  /** The text with splices, if it reads as it should. */
  private SetupText checked(List<Splice> splices, SetupValue expected) {
    String lineBreak = text.contains("\r\n") ? "\r\n" : "\n";
    StringBuilder edited = new StringBuilder();
    int at = 0;
    for (Splice splice : splices) {
      edited.append(points(at, splice.from));
      splice.text.forEach(added -> edited.append(added.replace("\n", lineBreak)));
      at = splice.to;
    }
    edited.append(points(at, points.length));
    SetupText next;
    try {
      next = new SetupText(file, edited.toString());
    } catch (InvalidFile e) {
      throw refusal(SetupPath.root(), "its text is laid out in an unusual way");
    }
    if (!next.whole().equals(expected)) {
      throw refusal(SetupPath.root(), "its text is laid out in an unusual way");
    }
    return next;
  }

  // What a change should give.

  private SetupValue whole() {
    return SetupValue.read(root);
  }

  private static SetupValue change(SetupValue in, SetupPath path, int depth, SetupValue value) {
    if (depth == path.steps().size()) {
      return value;
    }
    SetupPath.Step step = path.steps().get(depth);
    if (step instanceof SetupPath.At at) {
      List<SetupValue> elements =
          new ArrayList<>(in instanceof SetupValue.Items items ? items.elements() : List.of());
      SetupValue old =
          at.index() < elements.size() ? elements.get(at.index()) : new SetupValue.Nothing();
      SetupValue changed = change(old, path, depth + 1, value);
      if (at.index() < elements.size()) {
        elements.set(at.index(), changed);
      } else {
        elements.add(changed);
      }
      return new SetupValue.Items(elements);
    }
    Map<String, SetupValue> entries = entries(in);
    String key = key(entries, step).orElse(SetupPath.written(step));
    entries.put(
        key, change(entries.getOrDefault(key, new SetupValue.Nothing()), path, depth + 1, value));
    return new SetupValue.Fields(entries);
  }

  private static SetupValue remove(SetupValue in, SetupPath path, int depth, boolean flow) {
    SetupPath.Step step = path.steps().get(depth);
    boolean here = depth == path.steps().size() - 1;
    if (step instanceof SetupPath.At at) {
      List<SetupValue> elements = new ArrayList<>(((SetupValue.Items) in).elements());
      if (here) {
        elements.remove(at.index());
      } else {
        elements.set(at.index(), remove(elements.get(at.index()), path, depth + 1, flow));
      }
      return elements.isEmpty() && !flow
          ? new SetupValue.Nothing()
          : new SetupValue.Items(elements);
    }
    Map<String, SetupValue> entries = entries(in);
    String key = key(entries, step).orElseThrow();
    if (here) {
      entries.remove(key);
    } else {
      entries.put(key, remove(entries.get(key), path, depth + 1, flow));
    }
    return entries.isEmpty() && !flow ? new SetupValue.Nothing() : new SetupValue.Fields(entries);
  }

  private static SetupValue rename(SetupValue in, SetupPath path, int depth, String name) {
    SetupPath.Step step = path.steps().get(depth);
    if (step instanceof SetupPath.At at) {
      List<SetupValue> elements = new ArrayList<>(((SetupValue.Items) in).elements());
      elements.set(at.index(), rename(elements.get(at.index()), path, depth + 1, name));
      return new SetupValue.Items(elements);
    }
    Map<String, SetupValue> entries = new LinkedHashMap<>();
    String key = key(entries(in), step).orElseThrow();
    entries(in)
        .forEach(
            (old, value) -> {
              if (!old.equals(key)) {
                entries.put(old, value);
              } else if (depth == path.steps().size() - 1) {
                entries.put(name, value);
              } else {
                entries.put(old, rename(value, path, depth + 1, name));
              }
            });
    return new SetupValue.Fields(entries);
  }

  private static Map<String, SetupValue> entries(SetupValue value) {
    return new LinkedHashMap<>(
        value instanceof SetupValue.Fields fields ? fields.entries() : Map.of());
  }

  private static Optional<String> key(Map<String, SetupValue> entries, SetupPath.Step step) {
    return entries.keySet().stream().filter(key -> SetupPath.matches(step, key)).findFirst();
  }

  // The text and its marks, in code points.

  private static int start(Node node) {
    return node.getStartMark().map(Mark::getIndex).orElseThrow();
  }

  private static int endMark(Node node) {
    return node.getEndMark().map(Mark::getIndex).orElseThrow();
  }

  private static int line(Node node) {
    return node.getStartMark().map(Mark::getLine).orElse(-1) + 1;
  }

  private static boolean isEmpty(Node node) {
    return node instanceof ScalarNode scalar
        && scalar.getScalarStyle() == ScalarStyle.PLAIN
        && scalar.getValue().isEmpty();
  }

  private static boolean isBlock(Node node) {
    return node instanceof CollectionNode<?> collection
        && collection.getFlowStyle() == FlowStyle.BLOCK;
  }

  /** Where the text of a value ends; comments after it are none of it. */
  private int end(SetupPath path, Node node) {
    refuseAnchor(path, node);
    if (isBlock(node)) {
      if (node instanceof MappingNode map) {
        return entryEnd(path, map.getValue().get(map.getValue().size() - 1));
      }
      List<Node> elements = ((SequenceNode) node).getValue();
      return end(path, elements.get(elements.size() - 1));
    }
    if (node instanceof ScalarNode scalar
        && (scalar.getScalarStyle() == ScalarStyle.LITERAL
            || scalar.getScalarStyle() == ScalarStyle.FOLDED)) {
      throw refusal(path, "a text in lines of its own (| or >) stands there");
    }
    return endMark(node);
  }

  private int entryEnd(SetupPath path, NodeTuple entry) {
    // A key without a colon has an empty value whose mark may lie further on.
    int key = endMark(entry.getKeyNode());
    if (!isEmpty(entry.getValueNode())) {
      return end(path, entry.getValueNode());
    }
    refuseAnchor(path, entry.getValueNode());
    int at = key;
    while (at < points.length && isBlank(points[at])) {
      at++;
    }
    return at < points.length && points[at] == ':' ? at + 1 : key;
  }

  private int colon(SetupPath path, Node key) {
    int at = endMark(key);
    while (at < points.length && isBlank(points[at])) {
      at++;
    }
    if (at >= points.length || points[at] != ':') {
      throw refusal(path, "its text is laid out in an unusual way");
    }
    return at;
  }

  /** The comma after a place, past blanks, line ends and comments; -1 if there is none. */
  private int comma(int from) {
    int at = from;
    while (at < points.length) {
      if (points[at] == ',') {
        return at;
      }
      if (points[at] == '#') {
        at = lineEnd(at);
      } else if (isBlank(points[at]) || isBreak(points[at])) {
        at++;
      } else {
        return -1;
      }
    }
    return -1;
  }

  private boolean blankOrComment(int from, int to) {
    for (int at = from; at < to; at++) {
      if (points[at] == '#') {
        return false;
      }
    }
    return true;
  }

  private boolean restIsComment(int from) {
    int at = from;
    while (at < points.length && isBlank(points[at])) {
      at++;
    }
    return at == points.length || isBreak(points[at]) || points[at] == '#';
  }

  private int lineStart(int at) {
    int start = at;
    while (start > 0 && !isBreak(points[start - 1])) {
      start--;
    }
    return start;
  }

  private int lineEnd(int at) {
    int end = at;
    while (end < points.length && !isBreak(points[end])) {
      end++;
    }
    return end;
  }

  private int afterBreak(int at) {
    if (at < points.length && points[at] == '\r') {
      return at + 1 < points.length && points[at + 1] == '\n' ? at + 2 : at + 1;
    }
    return at < points.length && points[at] == '\n' ? at + 1 : at;
  }

  private int beforeBreak(int at) {
    return at > 1 && points[at - 1] == '\n' && points[at - 2] == '\r' ? at - 2 : at - 1;
  }

  private boolean blank(int from, int to) {
    for (int at = from; at < to; at++) {
      if (!isBlank(points[at]) && points[at] != 0xfeff) {
        return false;
      }
    }
    return true;
  }

  private String points(int from, int to) {
    return to <= from ? "" : new String(points, from, to - from);
  }

  private static boolean isBlank(int point) {
    return point == ' ' || point == '\t';
  }

  private static boolean isBreak(int point) {
    return point == '\n' || point == '\r';
  }

  private void refuseAnchors(SetupPath path, Node node) {
    refuseAnchor(path, node);
    if (node instanceof MappingNode map) {
      for (NodeTuple tuple : map.getValue()) {
        refuseAnchors(path, tuple.getKeyNode());
        refuseAnchors(path, tuple.getValueNode());
      }
    } else if (node instanceof SequenceNode list) {
      list.getValue().forEach(element -> refuseAnchors(path, element));
    }
  }

  private void refuseAnchor(SetupPath path, Node node) {
    if (node.getAnchor().isPresent()) {
      throw refusal(path, "an anchor (&) repeats what stands there");
    }
  }

  private InvalidFile refusal(SetupPath path, String why) {
    return new InvalidFile(
        List.of(
            new Fault(
                file,
                0,
                0,
                (path.steps().isEmpty() ? "the setup" : path.text())
                    + " cannot be changed from a form, for "
                    + why,
                "",
                "",
                "change it in the text of the setup")));
  }
}
