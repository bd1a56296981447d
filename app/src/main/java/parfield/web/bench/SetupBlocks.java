package parfield.web.bench;

import java.util.ArrayList;
import java.util.List;
import parfield.answer.Refusal;

/**
 * Changes of a setup's text that touch one of its top-level keys and leave every other line as it
 * is, comments too.
 */
public final class SetupBlocks {
  private SetupBlocks() {}

  /**
   * The text with another value of a top-level key; added at the end if it is not there.
   *
   * @param text of the setup
   * @param key at the start of a line
   * @param lines of the new value, indented, without the key itself; none deletes the key
   */
  public static String replace(String text, String key, List<String> lines) {
    List<String> all = new ArrayList<>(text.lines().toList());
    int[] block = block(all, key);
    if (block[0] < all.size()) {
      all.subList(block[0], block[1]).clear();
    }
    if (!lines.isEmpty()) {
      List<String> added = new ArrayList<>(List.of(key + ":"));
      added.addAll(lines);
      all.addAll(block[0], added);
    }
    return String.join("\n", all) + "\n";
  }

  /**
   * The text with one more entry under a top-level key.
   *
   * @param text of the setup
   * @param key at the start of a line, with its entries in lines of their own
   * @param lines of the entry, the first without indentation
   * @throws Refusal if the key is written in one line
   */
  public static String append(String text, String key, List<String> lines) {
    List<String> all = new ArrayList<>(text.lines().toList());
    int[] block = block(all, key);
    if (block[0] == all.size()) {
      all.add(key + ":");
      block = new int[] {all.size() - 1, all.size()};
    }
    String head = all.get(block[0]).substring(key.length() + 1).strip();
    if (!head.isEmpty() && !head.startsWith("#")) {
      throw Refusal.of(
          "the setup writes " + key + " in one line: nothing can be added to it from here",
          "write its entries in lines of their own in the text of the setup");
    }
    String indent = "  ";
    int last = block[0];
    for (int i = block[0] + 1; i < block[1]; i++) {
      String line = all.get(i);
      if (!line.isBlank()) {
        if (!line.strip().startsWith("#") && last == block[0]) {
          indent = line.substring(0, line.length() - line.stripLeading().length());
        }
        last = i;
      }
    }
    List<String> added = new ArrayList<>();
    for (String line : lines) {
      added.add(indent + line);
    }
    all.addAll(last + 1, added);
    return String.join("\n", all) + "\n";
  }

  /** First line of a key's block, and the line after its last; both past the end if not there. */
  private static int[] block(List<String> all, String key) {
    for (int from = 0; from < all.size(); from++) {
      if (all.get(from).startsWith(key + ":")) {
        int to = from + 1;
        while (to < all.size() && belongs(all.get(to))) {
          to++;
        }
        while (to > from + 1 && (all.get(to - 1).isBlank() || all.get(to - 1).startsWith("#"))) {
          to--;
        }
        return new int[] {from, to};
      }
    }
    return new int[] {all.size(), all.size()};
  }

  /** Whether a line goes on with the block before it: indented, a list item, blank, a comment. */
  private static boolean belongs(String line) {
    return line.isBlank()
        || line.startsWith(" ")
        || line.startsWith("#")
        || line.startsWith("- ")
        || line.startsWith("}")
        || line.startsWith("]");
  }
}
