package parfield.answer;

import java.util.List;

/** Lines of text that several answers share. */
final class Lines {
  private Lines() {}

  /** One entry of a list, with its line feed. */
  static String item(String sentence) {
    return "  - " + sentence + "\n";
  }

  /** A heading and its entries after an empty line; nothing where there are none. */
  static String section(String heading, List<String> sentences) {
    if (sentences.isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder("\n").append(heading).append('\n');
    sentences.forEach(sentence -> text.append(item(sentence)));
    return text.toString();
  }
}
