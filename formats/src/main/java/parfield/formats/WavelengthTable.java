package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * A quantity by wavelength as separated values: a row of names, then a wavelength [nm] and a value
 * a row, wavelengths ascending.
 */
final class WavelengthTable implements TextTable.Rows {
  private static final Limit WAVELENGTH = Limit.between(100, 4000, "nm");
  private static final List<String> WAVELENGTHS = List.of("wavelength", "lambda", "nm");

  private final String file;
  private final Notes notes;
  private final Decimals decimals;
  private final Layout layout;
  private final List<Double> wavelengths = new ArrayList<>();
  private final List<Double> values = new ArrayList<>();
  private boolean headed;
  private OptionalInt wavelengthColumn = OptionalInt.empty();
  private OptionalInt valueColumn = OptionalInt.empty();
  private int quantity;

  /**
   * What such a file may hold.
   *
   * @param what it is, as a fault of its head names it
   * @param allowed the names of its columns, in words
   * @param firstLine how its first line may be written
   * @param value what a value is called
   * @param names of the column of values, one list for each quantity it may be, the first preferred
   * @param limit of a value
   * @param cure for a value outside it
   */
  record Layout(
      String what,
      String allowed,
      String firstLine,
      String value,
      List<List<String>> names,
      Limit limit,
      String cure) {}

  private WavelengthTable(String file, Notes notes, char separator, Layout layout) {
    this.file = file;
    this.notes = notes;
    this.layout = layout;
    decimals = Decimals.inText(separator);
  }

  /**
   * Reads a table.
   *
   * @param file its name, for faults
   * @param bytes what it holds
   * @param notes where faults and assumptions go
   * @param layout what it may hold
   * @return the table, perhaps without a row; empty if a fault was noted
   */
  static Optional<WavelengthTable> read(String file, byte[] bytes, Notes notes, Layout layout) {
    try {
      String text = Source.text(bytes);
      WavelengthTable table = new WavelengthTable(file, notes, TextTable.separator(text), layout);
      int faults = notes.count();
      TextTable.read(file, text, notes, table);
      table.decimals.close(file, notes);
      return notes.count() == faults ? Optional.of(table) : Optional.empty();
    } catch (Unreadable e) {
      notes.fault(e.of(file));
      return Optional.empty();
    }
  }

  /** Wavelengths of the rows [nm], ascending. */
  double[] wavelengths() {
    return wavelengths.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** Values of the rows. */
  double[] values() {
    return values.stream().mapToDouble(Double::doubleValue).toArray();
  }

  /** Which of the layout's quantities the values are. */
  int quantity() {
    return quantity;
  }

  private void fault(int line, String what, String value, String limit, String cure) {
    notes.fault(new Fault(file, line, 0, what, value, limit, cure));
  }

  @Override
  public void comment(int line, String text) {}

  @Override
  public void blank(int line) {}

  @Override
  public void row(int line, List<String> cells) {
    if (!headed) {
      headed = true;
      head(line, cells);
    } else if (wavelengthColumn.isPresent() && valueColumn.isPresent()) {
      sample(line, cells);
    }
  }

  private void head(int line, List<String> cells) {
    List<String> names = new ArrayList<>(WAVELENGTHS);
    layout.names().forEach(names::addAll);
    List<Column> columns = cells.stream().map(cell -> Column.of(cell, names)).toList();
    wavelengthColumn = first(columns, WAVELENGTHS);
    while (valueColumn.isEmpty() && quantity < layout.names().size()) {
      valueColumn = first(columns, layout.names().get(quantity));
      quantity += valueColumn.isEmpty() ? 1 : 0;
    }
    if (wavelengthColumn.isEmpty() || valueColumn.isEmpty()) {
      fault(
          line,
          "head of the " + layout.what(),
          Notes.shown(cells),
          layout.allowed(),
          "write the first line as " + layout.firstLine());
      return;
    }
    String unit = columns.get(wavelengthColumn.getAsInt()).unit();
    if (!unit.isEmpty() && !unit.equals("nm")) {
      fault(line, "unit of wavelength", Notes.shown(unit), "nm", "convert to nm");
    }
  }

  private static OptionalInt first(List<Column> columns, List<String> names) {
    return IntStream.range(0, columns.size())
        .filter(i -> names.contains(columns.get(i).name()))
        .findFirst();
  }

  private void sample(int line, List<String> cells) {
    double wavelength =
        number(
            line,
            "wavelength",
            cells,
            wavelengthColumn.getAsInt(),
            WAVELENGTH,
            "give wavelengths in nm");
    double value =
        number(line, layout.value(), cells, valueColumn.getAsInt(), layout.limit(), layout.cure());
    if (Double.isNaN(wavelength) || Double.isNaN(value)) {
      return;
    }
    double before = wavelengths.isEmpty() ? 0 : wavelengths.get(wavelengths.size() - 1);
    if (!(wavelength > before)) {
      fault(
          line,
          "wavelength",
          NumberText.shown(wavelength) + " after " + NumberText.shown(before),
          "ascending wavelengths",
          "sort the lines, each wavelength once");
      return;
    }
    wavelengths.add(wavelength);
    values.add(value);
  }

  private double number(
      int line, String what, List<String> cells, int column, Limit limit, String cure) {
    String cell = column < cells.size() ? cells.get(column) : "";
    double value = decimals.parse(line, cell);
    if (Double.isNaN(value)) {
      fault(
          line,
          what,
          cell.isEmpty() ? "nothing" : Notes.shown(cell),
          "a number",
          decimals.cure(cell));
      return Double.NaN;
    }
    if (!limit.contains(value)) {
      fault(line, what, NumberText.shown(value), limit.text(), cure);
      return Double.NaN;
    }
    return value;
  }
}
