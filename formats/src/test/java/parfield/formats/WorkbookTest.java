package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.survey.Reading;
import parfield.tank.Place;

class WorkbookTest {
  @TempDir private Path folder;

  private static byte[] workbook(Consumer<Workbook> fill) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    Workbook workbook = new Workbook(out, "Test", "1.0");
    fill.accept(workbook);
    try {
      workbook.finish();
      workbook.close();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  private static void row(Worksheet sheet, int row, Object... cells) {
    for (int i = 0; i < cells.length; i++) {
      if (cells[i] instanceof Number number) {
        sheet.value(row, i, number);
      } else if (cells[i] != null) {
        sheet.value(row, i, (String) cells[i]);
      }
    }
  }

  /** A workbook with one list. */
  static byte[] sound() {
    return workbook(
        book -> {
          Worksheet sheet = book.newWorksheet("low");
          row(sheet, 0, "x (cm)", "y (cm)", "depth (cm)", "PAR");
          row(sheet, 1, 7.5, 10, 15, 120);
          row(sheet, 2, 12.5, 10, 15, 130);
        });
  }

  private TestBench bench(byte[] bytes) {
    return TestBench.in(folder).replacing("low.csv", "low.xlsx").with("low.xlsx", bytes);
  }

  private List<Reading> readings(byte[] bytes) {
    return bench(bytes).read().surveys().get("low").readings();
  }

  private static Reading reading(int line, double x, double y, double depth, double value) {
    return new Reading(line, new Place(x * 0.01, y * 0.01, depth * 0.01), value);
  }

  @Test
  void readsAList() {
    byte[] bytes =
        workbook(
            book -> {
              Worksheet sheet = book.newWorksheet("low");
              row(sheet, 0, "# taken in the morning");
              row(sheet, 2, "x (cm)", "y (cm)", "depth (cm)", "PAR", "note");
              row(sheet, 3, 7.5, 10, 15, 120, "by the pump");
              row(sheet, 4, "12,5", 10, 15, "130");
            });

    assertThat(readings(bytes))
        .containsExactly(reading(4, 7.5, 10, 15, 120), reading(5, 12.5, 10, 15, 130));
  }

  @Test
  void readsAGridOnEachSheet() {
    byte[] bytes =
        workbook(
            book -> {
              Worksheet shallow = book.newWorksheet("shallow");
              row(shallow, 0, "depth", 15, "cm");
              row(shallow, 1, "y\\x (cm)", 10, 20);
              row(shallow, 2, 10, 1, 2);
              row(shallow, 4, "depth 20 cm");
              row(shallow, 5, "cm", 10, 20);
              row(shallow, 6, 10, null, 4);
              Worksheet deep = book.newWorksheet("deep");
              row(deep, 0, "depth 30 cm");
              row(deep, 1, "cm", 10, 20);
              row(deep, 2, 10, 5, 6);
              Worksheet hidden = book.newWorksheet("hidden");
              hidden.setVisibilityState(org.dhatim.fastexcel.VisibilityState.HIDDEN);
              row(hidden, 0, "scratch");
            });

    Setup setup = bench(bytes).read();
    assertThat(setup.surveys().get("low").readings())
        .containsExactly(
            reading(3, 10, 10, 15, 1),
            reading(3, 20, 10, 15, 2),
            reading(7, 20, 10, 20, 4),
            reading(3, 10, 10, 30, 5),
            reading(3, 20, 10, 30, 6));
    assertThat(setup.assumptions())
        .contains(
            "low.xlsx: the hidden sheet hidden is not read",
            "low.xlsx [shallow]: empty cells of its grids, taken as places not measured: 1");
  }

  @Test
  void namesTheSheetAndRowOfAFault() {
    byte[] bytes =
        workbook(
            book -> {
              Worksheet first = book.newWorksheet("first");
              row(first, 0, "x_cm", "y_cm", "depth_cm", "ppfd");
              row(first, 1, 10, 10, 15, -3);
              row(first, 2, 10, 10, 15, "dark");
              first.value(3, 0, java.time.LocalDate.of(2026, 5, 1));
              first.style(3, 0).format("yyyy-mm-dd").set();
              row(first, 3, null, 10, 15, 5);
              first.formula(4, 0, "1+1");
              row(first, 4, null, 10, 15, 5);
              first.value(5, 0, true);
              row(first, 5, null, 10, 15, 5);
              Worksheet second = book.newWorksheet("second");
              row(second, 0, "remarks");
            });

    assertThat(bench(bytes).faults())
        .containsExactly(
            "low.xlsx [first]:2: ppfd: got -3, allowed 0 to 100000 µmol/m²/s; no light is negative:"
                + " correct the reading, or leave it out",
            "low.xlsx [first]:3: ppfd: got dark, allowed a number; write a number",
            "low.xlsx [first]:4: x: got a date, stored as 46143.0, allowed a number; write a"
                + " number",
            "low.xlsx [first]:5: x: got a formula without a stored value, allowed a number; write a"
                + " number",
            "low.xlsx [first]:6: x: got a truth value, allowed a number; write a number",
            "low.xlsx [second]:1: head of the table: got remarks, allowed column names x, y, depth,"
                + " ppfd, or a grid: an empty cell, then x positions; write the first line as"
                + " x_cm,y_cm,depth_cm,ppfd");
  }

  @Test
  void refusesAnEmptyWorkbook() {
    assertThat(bench(workbook(book -> book.newWorksheet("low"))).faults())
        .containsExactly(
            "low.xlsx: number of readings: got 0, allowed 1 or more; take readings; a fit needs a"
                + " grid of them");
  }

  @Test
  void refusesAnOlderWorkbookAndAnArchiveOfSomethingElse() {
    byte[] old = {(byte) 0xD0, (byte) 0xCF, 0x11, (byte) 0xE0, 0, 0};
    assertThat(bench(old).faults())
        .containsExactly(
            "low.xlsx: kind of file: got an older binary workbook, allowed XLSX or CSV; save it"
                + " so");
    assertThat(bench(archive("a.txt", 10)).faults())
        .singleElement()
        .asString()
        .startsWith("low.xlsx: this is no XLSX workbook")
        .endsWith("; open it and save it as XLSX or CSV");
    byte[] cut = java.util.Arrays.copyOf(workbook(book -> book.newWorksheet("low")), 300);
    assertThat(bench(cut).faults())
        .singleElement()
        .asString()
        .startsWith("low.xlsx: this is no XLSX workbook");
  }

  @Test
  void refusesAnArchiveThatUnpacksToTooMuch() {
    assertThat(bench(archive("xl/sharedStrings.xml", 17 << 20)).faults())
        .containsExactly(
            "low.xlsx: unpacked size of xl/sharedStrings.xml: got more, allowed 16 MiB; split the"
                + " workbook");
    assertThat(bench(archive("xl/worksheets/sheet1.xml", 65 << 20)).faults())
        .containsExactly(
            "low.xlsx: unpacked size of xl/worksheets/sheet1.xml: got more, allowed 64 MiB; split"
                + " the workbook");
  }

  @Test
  void refusesWhatWouldCostItsReaderTooMuch() {
    assertThat(bench(sheet("<row r='1'><c r='ZZZZZZ1'><v>1</v></c></row>")).faults())
        .containsExactly(
            "low.xlsx: this is no XLSX workbook: got a cell beyond the last column in"
                + " xl/worksheets/sheet1.xml; open it and save it as XLSX or CSV");
    String digits = "9".repeat(3000) + "<!-- -->" + "9".repeat(3000);
    assertThat(bench(sheet("<row r='1'><c r='A1'><v>" + digits + "</v></c></row>")).faults())
        .containsExactly(
            "low.xlsx: this is no XLSX workbook: got a text of more than 4000 characters in"
                + " xl/worksheets/sheet1.…; open it and save it as XLSX or CSV");
    StringBuilder wide = new StringBuilder();
    for (int row = 1; row <= 1500; row++) {
      wide.append("<row r='").append(row).append("'><c r='XFD").append(row).append("'/></row>");
    }
    assertThat(bench(sheet(wide.toString())).faults())
        .contains("low.xlsx: number of cells: got more, allowed 20000000; split the workbook");
    assertThat(bench(sheet("<row r='2147483647'><c r='A1'><v>1</v></c></row>")).faults())
        .containsExactly(
            "low.xlsx: this is no XLSX workbook: got row 2147483647 after row 0; open it and save"
                + " it as XLSX or CSV");
  }

  /** A sound workbook but for the rows of its one sheet. */
  private static byte[] sheet(String rows) {
    byte[] sound = workbook(book -> row(book.newWorksheet("low"), 0, "x_cm"));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipFile from = ZipFile.builder().setByteArray(sound).get();
        ZipOutputStream to = new ZipOutputStream(out, StandardCharsets.UTF_8)) {
      for (ZipArchiveEntry entry : java.util.Collections.list(from.getEntries())) {
        to.putNextEntry(new ZipEntry(entry.getName()));
        byte[] bytes = from.getInputStream(entry).readAllBytes();
        if (entry.getName().startsWith("xl/worksheets/")) {
          String xml = new String(bytes, StandardCharsets.UTF_8);
          bytes =
              xml.replaceAll("<sheetData>.*</sheetData>", "<sheetData>" + rows + "</sheetData>")
                  .getBytes(StandardCharsets.UTF_8);
        }
        to.write(bytes);
        to.closeEntry();
      }
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  private static byte[] archive(String name, int bytes) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8)) {
      zip.putNextEntry(new ZipEntry(name));
      byte[] block = "<a>".repeat(1 << 14).getBytes(StandardCharsets.UTF_8);
      for (int left = bytes; left > 0; left -= block.length) {
        zip.write(block, 0, Math.min(left, block.length));
      }
      zip.closeEntry();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    return out.toByteArray();
  }
}
