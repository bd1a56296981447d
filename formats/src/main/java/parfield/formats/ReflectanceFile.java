package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import parfield.optics.Reflectance;

/**
 * A diffuse reflectance as separated values: a row of names, then a wavelength [nm] and a
 * reflectance a row, wavelengths ascending.
 */
final class ReflectanceFile implements TextTable.Rows {
  /** Most bytes of a reflectance. */
  static final int MOST_BYTES = 4 << 20;

  private static final Limit WAVELENGTH = Limit.between(100, 4000, "nm");
  private static final Limit REFLECTANCE = Limit.below(0, 1);
  private static final List<String> WAVELENGTHS = List.of("wavelength", "lambda", "nm");
  private static final List<String> REFLECTANCES = List.of("reflectance");

  private final String file;
  private final Notes notes;
  private final Decimals decimals;
  private final List<Double> wavelengths = new ArrayList<>();
  private final List<Double> values = new ArrayList<>();
  private boolean headed;
  private OptionalInt wavelengthColumn = OptionalInt.empty();
  private OptionalInt valueColumn = OptionalInt.empty();

  private ReflectanceFile(String file, Notes notes, char separator) {
    this.file = file;
    this.notes = notes;
    decimals = Decimals.inText(separator);
  }

  /**
   * Reads a reflectance.
   *
   * @param file its name, for faults
   * @param bytes what it holds
   * @param notes where faults and assumptions go
   * @return the reflectance, empty if a fault was noted
   */
  static Optional<Reflectance> read(String file, byte[] bytes, Notes notes) {
    try {
      String text = Source.text(bytes);
      ReflectanceFile reader = new ReflectanceFile(file, notes, TextTable.separator(text));
      int faults = notes.count();
      TextTable.read(file, text, notes, reader);
      reader.decimals.close(file, notes);
      if (notes.count() == faults && reader.values.isEmpty()) {
        reader.fault(0, "number of samples", "0", "1 or more", "give wavelengths and reflectances");
      }
      return notes.count() == faults ? Optional.of(reader.reflectance()) : Optional.empty();
    } catch (Unreadable e) {
      notes.fault(e.of(file));
      return Optional.empty();
    }
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
    names.addAll(REFLECTANCES);
    List<Column> columns = cells.stream().map(cell -> Column.of(cell, names)).toList();
    wavelengthColumn = first(columns, WAVELENGTHS);
    valueColumn = first(columns, REFLECTANCES);
    if (wavelengthColumn.isEmpty() || valueColumn.isEmpty()) {
      fault(
          line,
          "head of the reflectance",
          Notes.shown(cells),
          "wavelength_nm and reflectance",
          "write the first line as wavelength_nm,reflectance");
    }
  }

  private static OptionalInt first(List<Column> columns, List<String> names) {
    return IntStream.range(0, columns.size())
        .filter(i -> names.contains(columns.get(i).name()))
        .findFirst();
  }

  private void sample(int line, List<String> cells) {
    double wavelength =
        number(line, "wavelength", cells, wavelengthColumn, WAVELENGTH, "give wavelengths in nm");
    double value =
        number(line, "reflectance", cells, valueColumn, REFLECTANCE, "write a share: 20 % as 0.20");
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
      int line, String what, List<String> cells, OptionalInt column, Limit limit, String cure) {
    String cell = column.getAsInt() < cells.size() ? cells.get(column.getAsInt()) : "";
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

  private Reflectance reflectance() {
    return Reflectance.tabulated(
        wavelengths.stream().mapToDouble(Double::doubleValue).toArray(),
        values.stream().mapToDouble(Double::doubleValue).toArray());
  }
}
