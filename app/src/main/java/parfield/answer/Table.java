package parfield.answer;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Rows under a header: as lines of text with columns aligned by spaces, or as its cells for a page.
 * For one thread.
 */
public final class Table {
  private static final String GAP = "  ";

  private final List<List<String>> rows = new ArrayList<>();
  private final int columns;
  private final String sides;

  /**
   * Starts a table.
   *
   * @param sides for each column {@code l} to stand to the left, as words do, or {@code r} to stand
   *     to the right, as numbers do
   * @param header a name with its unit for each column
   */
  Table(String sides, List<String> header) {
    this.sides = sides;
    this.columns = sides.length();
    row(header);
  }

  /** Starts a table. */
  Table(String sides, String... header) {
    this(sides, List.of(header));
  }

  /** Adds a row: one cell for each column. */
  Table row(List<String> cells) {
    if (cells.size() != columns) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a row of this table has %d cells; got %d", columns, cells.size()));
    }
    rows.add(List.copyOf(cells));
    return this;
  }

  /** Adds a row: one cell for each column. */
  Table row(String... cells) {
    return row(List.of(cells));
  }

  /** The table of a stored {@link #json}. */
  public static Table of(JsonNode json) {
    List<List<String>> rows = new ArrayList<>();
    for (JsonNode row : json.path("rows")) {
      List<String> cells = new ArrayList<>();
      row.forEach(cell -> cells.add(cell.asText()));
      rows.add(cells);
    }
    Table table = new Table(json.path("sides").asText(), rows.get(0));
    rows.subList(1, rows.size()).forEach(table::row);
    return table;
  }

  /** The table to be stored: {@code sides}, and {@code rows} of cells, the header first. */
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("sides", sides);
    ArrayNode all = json.putArray("rows");
    rows.forEach(row -> row.forEach(all.addArray()::add));
    return json;
  }

  /** What the columns are. */
  public List<String> header() {
    return rows.get(0);
  }

  /** The rows below the header, one cell for each column. */
  public List<List<String>> body() {
    return List.copyOf(rows.subList(1, rows.size()));
  }

  /** Whether a column holds numbers, which stand to the right. */
  public boolean isNumber(int column) {
    return sides.charAt(column) == 'r';
  }

  /** The lines of the table, each with a line feed and nothing after its last letter. */
  String text() {
    int[] widths = new int[columns];
    for (List<String> row : rows) {
      for (int c = 0; c < columns; c++) {
        widths[c] = Math.max(widths[c], width(row.get(c)));
      }
    }
    StringBuilder text = new StringBuilder();
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder();
      for (int c = 0; c < columns; c++) {
        String pad = " ".repeat(widths[c] - width(row.get(c)));
        line.append(c == 0 ? "" : GAP);
        line.append(sides.charAt(c) == 'l' ? row.get(c) + pad : pad + row.get(c));
      }
      text.append(line.toString().stripTrailing()).append('\n');
    }
    return text.toString();
  }

  private static int width(String cell) {
    return cell.codePointCount(0, cell.length());
  }
}
