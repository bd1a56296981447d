package parfield;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The folder {@code ../shared/reference} beside the repository: published figures that some tests
 * check against. It is optional: without it those tests are skipped and say so.
 */
public final class ReferenceFolder {
  private ReferenceFolder() {}

  /**
   * The rows of one of its CSV files, by column name, remarks (#) left out; skips the test where
   * the folder is absent.
   *
   * @param name of the file
   */
  public static List<Map<String, String>> rows(String name) {
    List<String> lines = lines(name);
    List<String> header = cells(lines.get(0));
    List<Map<String, String>> rows = new ArrayList<>();
    for (String line : lines.subList(1, lines.size())) {
      List<String> cells = cells(line);
      Map<String, String> row = new LinkedHashMap<>();
      for (int i = 0; i < header.size(); i++) {
        row.put(header.get(i), cells.get(i));
      }
      rows.add(row);
    }
    return rows;
  }

  private static List<String> lines(String name) {
    // Maven runs in the module's folder, an editor perhaps in the repository's.
    for (String up : new String[] {"../..", ".."}) {
      Path file = Path.of(up, "shared", "reference", name);
      if (Files.isRegularFile(file)) {
        try {
          return Files.readAllLines(file).stream()
              .filter(line -> !line.isBlank() && !line.startsWith("#"))
              .toList();
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        }
      }
    }
    assumeTrue(false, "skipped: no file ../shared/reference/" + name + " beside the repository");
    return List.of();
  }

  /** Cells between commas; a quoted cell may hold commas. */
  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        cells.add(cell.toString());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString());
    return cells;
  }
}
