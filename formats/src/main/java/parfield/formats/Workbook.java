package parfield.formats;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.dhatim.fastexcel.reader.SheetVisibility;

/**
 * Rows of cells in an XLSX workbook; every visible sheet is a table of its own.
 *
 * <p>A formula counts with the value that was last computed and stored. Limits on the unpacked size
 * and on the number of cells keep a small file from becoming a big one.
 */
final class Workbook {
  private static final int MEBI = 1 << 20;
  private static final int MOST_UNPACKED = 64 * MEBI;
  private static final int MOST_UNPACKED_TEXTS = 16 * MEBI;
  private static final int MOST_SHEETS = 20;
  private static final int MOST_CELLS = 20_000_000;

  /** The last row that a spreadsheet program knows. */
  private static final int LAST_ROW = 1 << 20;

  /** Numbers of the built-in formats that show a date or a time (ECMA-376 part 1, 18.8.30). */
  private static final int[][] DATE_FORMATS = {{14, 22}, {45, 47}};

  /** Makes the reader of one sheet. */
  interface Tables {
    /**
     * The reader of a sheet.
     *
     * @param name of the file and sheet, for faults
     */
    TextTable.Rows sheet(String name);
  }

  private Workbook() {}

  /** Returns whether bytes are a packed document, as an XLSX workbook is. */
  static boolean isPacked(byte[] bytes) {
    return bytes.length >= 4
        && bytes[0] == 'P'
        && bytes[1] == 'K'
        && bytes[2] == 3
        && bytes[3] == 4;
  }

  /** Returns whether bytes are a workbook of the older binary kind. */
  static boolean isOld(byte[] bytes) {
    return bytes.length >= 4
        && bytes[0] == (byte) 0xD0
        && bytes[1] == (byte) 0xCF
        && bytes[2] == 0x11
        && bytes[3] == (byte) 0xE0;
  }

  /**
   * Hands on the rows of every visible sheet.
   *
   * @param file name of the file, for faults
   * @param bytes the file
   * @param notes where faults go
   * @param tables makes a reader for each sheet
   */
  static void read(String file, byte[] bytes, Notes notes, Tables tables) {
    try {
      check(bytes);
      try (ReadableWorkbook book =
          new ReadableWorkbook(new ByteArrayInputStream(bytes), new ReadingOptions(true, true))) {
        List<Sheet> sheets = book.getSheets().toList();
        if (sheets.size() > MOST_SHEETS) {
          throw new TooBig("number of sheets", String.valueOf(MOST_SHEETS));
        }
        long cells = 0;
        for (Sheet sheet : sheets) {
          if (sheet.getVisibility() != SheetVisibility.VISIBLE) {
            notes.assume(
                file + ": the hidden sheet " + Notes.shown(sheet.getName()) + " is not read");
            continue;
          }
          String name =
              sheets.size() == 1 ? file : file + " [" + Notes.shown(sheet.getName()) + "]";
          cells = rows(sheet, tables.sheet(name), cells);
        }
      }
    } catch (InvalidFile e) {
      throw e;
    } catch (TooBig e) {
      notes.fault(new Fault(file, 0, 0, e.what, "more", e.limit, "split the workbook"));
    } catch (IOException | RuntimeException e) {
      // The library throws of its own, of its parser and of its decoder: the file is broken.
      notes.fault(
          new Fault(
              file,
              0,
              0,
              "this is no XLSX workbook",
              e.getMessage() == null ? "broken content" : Notes.shown(e.getMessage()),
              "",
              "open it and save it as XLSX or CSV"));
    }
  }

  private static final class TooBig extends IOException {
    private static final long serialVersionUID = 1L;
    private final String what;
    private final String limit;

    TooBig(String what, String limit) {
      super(what);
      this.what = what;
      this.limit = limit;
    }
  }

  private static void check(byte[] bytes) throws IOException {
    byte[] buffer = new byte[1 << 16];
    long total = 0;
    try (ZipFile zip = ZipFile.builder().setByteArray(bytes).get()) {
      for (ZipArchiveEntry entry : Collections.list(zip.getEntries())) {
        boolean cells = entry.getName().startsWith("xl/worksheets/");
        SheetScan scan = new SheetScan();
        long part = 0;
        try (InputStream in = zip.getInputStream(entry)) {
          for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
            total += n;
            part += n;
            if (total > MOST_UNPACKED || (!cells && part > MOST_UNPACKED_TEXTS)) {
              int most = cells ? MOST_UNPACKED : MOST_UNPACKED_TEXTS;
              throw new TooBig(
                  "unpacked size of " + Notes.shown(entry.getName()),
                  String.format(Locale.ROOT, "%d MiB", most / MEBI));
            }
            String found = cells ? scan.take(buffer, n) : "";
            if (!found.isEmpty()) {
              throw new IOException(found + " in " + entry.getName());
            }
          }
        }
      }
    }
  }

  /** Hands on the rows of a sheet; returns the number of cells and rows of all sheets so far. */
  private static long rows(Sheet sheet, TextTable.Rows rows, long before) throws IOException {
    long cells = before;
    int last = 0;
    try (Stream<Row> stream = sheet.openStream()) {
      for (Iterator<Row> iterator = stream.iterator(); iterator.hasNext(); ) {
        Row row = iterator.next();
        cells += 1L + row.getCellCount();
        if (row.getRowNum() <= last || row.getRowNum() > LAST_ROW) {
          throw new IOException("row " + row.getRowNum() + " after row " + last);
        }
        if (cells > MOST_CELLS) {
          throw new TooBig("number of cells", String.valueOf(MOST_CELLS));
        }
        if (row.getRowNum() > last + 1) {
          rows.blank(last + 1);
        }
        last = row.getRowNum();
        List<String> texts = new ArrayList<>(row.getCellCount());
        for (int i = 0; i < row.getCellCount(); i++) {
          texts.add(text(row.getCell(i)));
        }
        TextTable.row(rows, last, texts);
      }
    }
    return cells;
  }

  private static String text(Cell cell) {
    if (cell == null || cell.getType() == CellType.EMPTY) {
      return "";
    }
    String raw = cell.getRawValue() == null ? "" : cell.getRawValue();
    return switch (cell.getType()) {
      case NUMBER -> isDate(cell) ? "a date, stored as " + raw : raw;
      case FORMULA -> raw.isEmpty() ? "a formula without a stored value" : raw;
      case ERROR -> "the error " + raw;
      case BOOLEAN -> "a truth value";
      default -> cell.getText();
    };
  }

  private static boolean isDate(Cell cell) {
    Integer id = cell.getDataFormatId();
    if (id == null) {
      return false;
    }
    for (int[] range : DATE_FORMATS) {
      if (id >= range[0] && id <= range[1]) {
        return true;
      }
    }
    String format = cell.getDataFormatString();
    return id >= 164
        && format != null
        && format
            .toLowerCase(Locale.ROOT)
            .replaceAll("\"[^\"]*\"|\\[[^\\]]*\\]|\\\\.", "")
            .matches(".*[dmyhs].*");
  }
}
