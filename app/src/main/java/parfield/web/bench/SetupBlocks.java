package parfield.web.bench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.CollectionNode;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import parfield.answer.Refusal;

/**
 * Changes of a setup's text that touch one of its top-level keys and leave every other line as it
 * is, comments and ends of lines too.
 *
 * <p>Whatever a change gives is read again before it is handed out: all other keys must say what
 * they said. Where the text is written in a way that cannot be changed like this, it is refused.
 */
public final class SetupBlocks {
  private static final LoadSettings SETTINGS =
      LoadSettings.builder().setMaxAliasesForCollections(50).build();

  private final String text;
  private final MappingNode root;
  private final String newline;

  private SetupBlocks(String text, MappingNode root) {
    this.text = text;
    this.root = root;
    this.newline = text.contains("\r\n") ? "\r\n" : "\n";
  }

  private static SetupBlocks of(String text) {
    Optional<Node> root;
    if (YamlText.tooDeep(text)) {
      throw Refusal.of("the setup is nested too deep", "mend its text on the page Set up");
    }
    try {
      root = new Compose(SETTINGS).composeString(text);
    } catch (YamlEngineException e) {
      throw Refusal.of("the setup cannot be read as it is", "mend its text on the page Set up");
    }
    if (root.isEmpty() || !(root.get() instanceof MappingNode map)) {
      throw Refusal.of("the setup holds no keys", "mend its text on the page Set up");
    }
    if (map.getFlowStyle() == FlowStyle.FLOW) {
      throw Refusal.of(
          "the setup is written in one pair of braces: nothing can be changed in it from here",
          "change its text on the page Set up, or write its keys in lines of their own there");
    }
    return new SetupBlocks(text, map);
  }

  /**
   * The text with another value of a top-level key; added at the end if it is not there. Comments
   * that stand in lines of their own are kept.
   *
   * @param text of the setup
   * @param key as the format spells it
   * @param lines of the new value, indented, without the key itself; none deletes the key
   * @throws Refusal if the text is written in a way that cannot be changed like this
   */
  public static String replace(String text, String key, List<String> lines) {
    SetupBlocks blocks = of(text);
    Optional<NodeTuple> block = blocks.block(key);
    if (block.isEmpty()) {
      return lines.isEmpty() ? text : checked(text, blocks.atEnd(key, lines), key, "");
    }
    Node name = block.get().getKeyNode();
    Node value = block.get().getValueNode();
    int from = blocks.lineOf(blocks.start(name));
    int to = blocks.afterLineOf(Math.max(blocks.end(name), blocks.end(value)));
    if (lines.isEmpty()) {
      return checked(text, text.substring(0, from) + text.substring(to), key, "");
    }
    int below = blocks.afterLineOf(blocks.end(name));
    boolean own = nothing(value) || (block(value) && blocks.start(value) >= below);
    String head =
        own ? text.substring(from, below).stripTrailing() : blocks.column(name) + key + ":";
    List<String> all = new ArrayList<>(List.of(head));
    text.substring(below, to)
        .lines()
        .filter(line -> line.stripLeading().startsWith("#"))
        .forEach(all::add);
    lines.forEach(line -> all.add(blocks.column(name) + line));
    return checked(
        text, text.substring(0, from) + blocks.joined(all) + text.substring(to), key, "");
  }

  /**
   * The text with one more entry under a top-level key, after those that are there.
   *
   * @param text of the setup
   * @param key as the format spells it
   * @param name of the entry
   * @param lines of the entry, the first without indentation
   * @param inLine the same entry on one line, for a map in braces
   * @throws Refusal if the text is written in a way that cannot be changed like this
   */
  public static String append(
      String text, String key, String name, List<String> lines, String inLine) {
    return added(text, key, name, lines, inLine, false);
  }

  /** As {@link #append}, before the entries that are there. */
  public static String prepend(
      String text, String key, String name, List<String> lines, String inLine) {
    return added(text, key, name, lines, inLine, true);
  }

  private static String added(
      String text, String key, String name, List<String> lines, String inLine, boolean first) {
    SetupBlocks blocks = of(text);
    Optional<NodeTuple> block = blocks.block(key);
    String changed =
        block.isEmpty()
            ? blocks.atEnd(key, lines.stream().map(line -> "  " + line).toList())
            : blocks.added(block.get(), lines, inLine, first);
    return checked(text, changed, key, name);
  }

  private String added(NodeTuple block, List<String> lines, String inLine, boolean first) {
    Node value = block.getValueNode();
    if (value instanceof MappingNode map && !map.getValue().isEmpty()) {
      Node head = map.getValue().get(0).getKeyNode();
      if (map.getFlowStyle() == FlowStyle.FLOW) {
        if (first) {
          return text.substring(0, start(head)) + inLine + ", " + text.substring(start(head));
        }
        int last = 0;
        for (NodeTuple tuple : map.getValue()) {
          last = Math.max(last, Math.max(end(tuple.getKeyNode()), end(tuple.getValueNode())));
        }
        return text.substring(0, last) + ", " + inLine + text.substring(last);
      }
      int at = first ? lineOf(start(head)) : afterLineOf(end(map));
      return put(at, lines, column(head));
    }
    if (!(value instanceof MappingNode) && !nothing(value)) {
      throw refusal(((ScalarNode) block.getKeyNode()).getValue());
    }
    // Nothing stands under the key yet: braces with nothing in them, a word for nothing, no value.
    int from = start(value);
    int to = end(value);
    String indent = column(block.getKeyNode()) + "  ";
    if (from == to) {
      return put(afterLineOf(end(block.getKeyNode())), lines, indent);
    }
    String emptied = text.substring(0, from).stripTrailing() + text.substring(to);
    SetupBlocks without = new SetupBlocks(emptied, root);
    return without.put(without.afterLineOf(from - 1), lines, indent);
  }

  private String put(int at, List<String> lines, String indent) {
    String before = text.substring(0, at);
    return before
        + (before.isEmpty() || before.endsWith("\n") ? "" : newline)
        + joined(lines.stream().map(line -> indent + line).toList())
        + text.substring(at);
  }

  private String atEnd(String key, List<String> lines) {
    List<String> all = new ArrayList<>(List.of(key + ":"));
    all.addAll(lines);
    return put(text.length(), all, column(root));
  }

  private String joined(List<String> lines) {
    return lines.stream().map(line -> line + newline).collect(Collectors.joining());
  }

  private Optional<NodeTuple> block(String key) {
    return root.getValue().stream()
        .filter(
            tuple ->
                tuple.getKeyNode() instanceof ScalarNode scalar
                    && canonical(scalar.getValue()).equals(key))
        .findFirst();
  }

  /** A key of the setup as the format compares it. */
  static String canonical(String key) {
    return key.strip().toLowerCase(Locale.ROOT).replace('_', ' ').replace('-', ' ');
  }

  private static boolean block(Node node) {
    return node instanceof CollectionNode<?> collection
        && collection.getFlowStyle() == FlowStyle.BLOCK;
  }

  private static boolean nothing(Node node) {
    return node instanceof ScalarNode scalar
        && Set.of("", "~", "null", "Null", "NULL").contains(scalar.getValue());
  }

  /** The blanks before a node that stands first on its line. */
  private String column(Node node) {
    return " ".repeat(node.getStartMark().map(Mark::getColumn).orElse(0));
  }

  private int start(Node node) {
    return index(node.getStartMark());
  }

  /** A mark counts code points. */
  private int index(Optional<Mark> mark) {
    return text.offsetByCodePoints(0, mark.orElseThrow().getIndex());
  }

  /** Where what a node writes ends; a block's own mark stands behind the comments after it. */
  private int end(Node node) {
    return end(node, Collections.newSetFromMap(new IdentityHashMap<>()));
  }

  private int end(Node node, Set<Node> seen) {
    if (!block(node) || !seen.add(node)) {
      return block(node) ? 0 : index(node.getEndMark());
    }
    int end = 0;
    if (node instanceof MappingNode map) {
      for (NodeTuple tuple : map.getValue()) {
        end = Math.max(end, end(tuple.getKeyNode(), seen));
        end = Math.max(end, end(tuple.getValueNode(), seen));
      }
    } else if (node instanceof SequenceNode list) {
      for (Node element : list.getValue()) {
        end = Math.max(end, end(element, seen));
      }
    }
    return end;
  }

  private int lineOf(int index) {
    return text.lastIndexOf('\n', index - 1) + 1;
  }

  /** The start of the line after the one that ends at an index. */
  private int afterLineOf(int end) {
    if (end > 0 && text.charAt(end - 1) == '\n') {
      return end;
    }
    int line = text.indexOf('\n', end);
    return line < 0 ? text.length() : line + 1;
  }

  /** The changed text, if all but the one key says what it said, and an entry was only added. */
  private static String checked(String before, String after, String key, String added) {
    Map<String, Object> old = tree(before);
    Map<String, Object> now;
    try {
      now = tree(after);
    } catch (YamlEngineException e) {
      throw refusal(key);
    }
    Object oldValue = old.remove(key);
    Object newValue = now.remove(key);
    if (!old.equals(now)) {
      throw refusal(key);
    }
    if (!added.isEmpty()) {
      Map<?, ?> had = oldValue instanceof Map<?, ?> map ? map : Map.of();
      Set<Object> names = new HashSet<>(had.keySet());
      if (!(newValue instanceof Map<?, ?> has) || !names.add(added)) {
        throw refusal(key);
      }
      boolean kept =
          had.entrySet().stream()
              .allMatch(entry -> Objects.equals(entry.getValue(), has.get(entry.getKey())));
      if (!kept || !has.keySet().equals(names)) {
        throw refusal(key);
      }
    }
    return after;
  }

  private static Map<String, Object> tree(String text) {
    Map<String, Object> tree = new LinkedHashMap<>();
    if (new Load(SETTINGS).loadFromString(text) instanceof Map<?, ?> map) {
      map.forEach((key, value) -> tree.put(canonical(String.valueOf(key)), value));
    }
    return tree;
  }

  private static Refusal refusal(String key) {
    return Refusal.of(
        "the setup writes " + key + " in a way that cannot be changed from here; nothing was saved",
        "change the text of the setup on the page Set up, or write the entries of "
            + key
            + " in lines of their own there");
  }
}
