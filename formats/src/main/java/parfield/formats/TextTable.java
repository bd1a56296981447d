package parfield.formats;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;

/**
 * Rows of cells in text, separated by commas, semicolons or tabs.
 *
 * <p>The separator is the first of tab, semicolon, comma that the first row with more than one cell
 * holds, comments left out.
 */
final class TextTable {
  /** Longest cell or comment [characters]: no number and no name needs more. */
  private static final int LONGEST_CELL = 1 << 14;

  /** Takes the rows of a table in turn. */
  interface Rows {
    /**
     * A row that holds something.
     *
     * @param line of its file, 1-based
     * @param cells its cells, blanks around them stripped
     */
    void row(int line, List<String> cells);

    /** A line that begins with {@code #}, without that sign. */
    void comment(int line, String text);

    /** A line with nothing in it. */
    void blank(int line);
  }

  private TextTable() {}

  /** The separator of a text. */
  static char separator(String text) {
    int from = 0;
    while (from < text.length()) {
      int end = text.indexOf('\n', from);
      String line = text.substring(from, end < 0 ? text.length() : end).strip();
      boolean tab = text.substring(from, end < 0 ? text.length() : end).indexOf('\t') >= 0;
      if (!line.startsWith("#") && !line.isEmpty()) {
        if (tab) {
          return '\t';
        }
        if (line.indexOf(';') >= 0) {
          return ';';
        }
        if (line.indexOf(',') >= 0) {
          return ',';
        }
      }
      from = end < 0 ? text.length() : end + 1;
    }
    return ',';
  }

  /**
   * Hands every row on.
   *
   * @param file name of the file, for faults
   * @param text what it holds
   * @param notes where faults go
   * @param rows takes the rows
   */
  static void read(String file, String text, Notes notes, Rows rows) {
    read(file, text, separator(text), notes, rows);
  }

  /** Hands every row on, its cells separated as told. */
  static void read(String file, String text, char separator, Notes notes, Rows rows) {
    int line = 0;
    try (CsvReader<CsvRecord> reader =
        CsvReader.builder()
            .fieldSeparator(separator)
            .commentStrategy(CommentStrategy.READ)
            .skipEmptyLines(false)
            .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
            .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
            .allowUnclosedQuote(false)
            .maxBufferSize(LONGEST_CELL)
            .ofCsvRecord(text)) {
      for (CsvRecord record : reader) {
        line = (int) record.getStartingLineNumber();
        if (record.isComment()) {
          rows.comment(line, record.getField(0));
        } else {
          row(rows, line, record.getFields());
        }
      }
    } catch (CsvParseException e) {
      Throwable cause = e.getCause() == null ? e : e.getCause();
      notes.fault(
          new Fault(
              file,
              line + 1,
              0,
              "this is no table of separated values",
              Notes.shown(String.valueOf(cause.getMessage())),
              "",
              "check the quotes"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Hands one row on, as a row, a comment or a blank line. */
  static void row(Rows rows, int line, List<String> cells) {
    List<String> stripped = cells.stream().map(String::strip).toList();
    String first = stripped.isEmpty() ? "" : stripped.get(0);
    if (first.startsWith("#")) {
      rows.comment(line, String.join(" ", stripped).substring(1));
    } else if (stripped.stream().allMatch(String::isEmpty)) {
      rows.blank(line);
    } else {
      rows.row(line, stripped);
    }
  }
}
