package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import parfield.spectrum.SensorResponse;
import parfield.spectrum.Wavelengths;

/**
 * A sensor's spectral response as separated values: a row of names, then a wavelength [nm] and a
 * relative signal a row, wavelengths ascending.
 *
 * <p>A signal per energy is converted to one per photon: a photon holds energy in inverse
 * proportion to wavelength.
 */
final class ResponseFile implements TextTable.Rows {
  /** Most bytes of a response. */
  static final int MOST_BYTES = 1 << 20;

  private static final Limit WAVELENGTH = Limit.between(100, 4000, "nm");
  private static final Limit SIGNAL = Limit.between(0, 100_000);
  private static final List<String> WAVELENGTHS = List.of("wavelength", "lambda", "nm");
  private static final List<String> PER_PHOTON =
      List.of("response", "quantum response", "response per photon");
  private static final List<String> PER_ENERGY = List.of("response per energy", "responsivity");

  private final String file;
  private final Notes notes;
  private final Decimals decimals;
  private final List<Double> wavelengths = new ArrayList<>();
  private final List<Double> values = new ArrayList<>();
  private boolean headed;
  private OptionalInt wavelengthColumn = OptionalInt.empty();
  private OptionalInt valueColumn = OptionalInt.empty();
  private boolean perEnergy;

  private ResponseFile(String file, Notes notes, char separator) {
    this.file = file;
    this.notes = notes;
    this.decimals = Decimals.inText(separator);
  }

  /**
   * Reads a response.
   *
   * @param file its name, for faults
   * @param bytes what it holds
   * @param notes where faults and assumptions go
   * @return the response, empty if a fault was noted
   */
  static Optional<SensorResponse> read(String file, byte[] bytes, Notes notes) {
    try {
      String text = Source.text(bytes);
      ResponseFile reader = new ResponseFile(file, notes, TextTable.separator(text));
      int faults = notes.count();
      TextTable.read(file, text, notes, reader);
      reader.decimals.close(file, notes);
      return notes.count() == faults ? reader.response() : Optional.empty();
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
    names.addAll(PER_PHOTON);
    names.addAll(PER_ENERGY);
    List<Column> columns = cells.stream().map(cell -> Column.of(cell, names)).toList();
    wavelengthColumn = first(columns, WAVELENGTHS);
    valueColumn = first(columns, PER_PHOTON);
    if (valueColumn.isEmpty()) {
      valueColumn = first(columns, PER_ENERGY);
      perEnergy = valueColumn.isPresent();
    }
    if (wavelengthColumn.isEmpty() || valueColumn.isEmpty()) {
      fault(
          line,
          "head of the sensor's response",
          Notes.shown(cells),
          "wavelength_nm and response, or response_per_energy",
          "write the first line as wavelength_nm,response");
      return;
    }
    String unit = columns.get(wavelengthColumn.getAsInt()).unit();
    if (!unit.isEmpty() && !unit.equals("nm")) {
      fault(line, "unit of wavelength", Notes.shown(unit), "nm", "convert to nm");
    }
    if (perEnergy) {
      notes.assume(
          file + ": signal per energy is converted to signal per photon, by 1 over wavelength");
    }
  }

  private static OptionalInt first(List<Column> columns, List<String> names) {
    return IntStream.range(0, columns.size())
        .filter(i -> names.contains(columns.get(i).name()))
        .findFirst();
  }

  private void sample(int line, List<String> cells) {
    double wavelength =
        number(line, "wavelength", cells, wavelengthColumn.getAsInt(), WAVELENGTH, "give nm");
    double value =
        number(
            line,
            "response",
            cells,
            valueColumn.getAsInt(),
            SIGNAL,
            "no signal is negative: subtract the dark signal, or write 0");
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
    values.add(perEnergy ? value / wavelength : value);
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

  private Optional<SensorResponse> response() {
    if (wavelengths.size() < 2 || values.stream().allMatch(value -> value == 0)) {
      fault(
          0,
          "samples of the response",
          wavelengths.size() < 2 ? String.valueOf(wavelengths.size()) : "0 everywhere",
          "2 or more, one of them above 0",
          "give the signal over 400 to 700 nm");
      return Optional.empty();
    }
    return Optional.of(
        SensorResponse.table(
            file,
            Wavelengths.of(wavelengths.stream().mapToDouble(Double::doubleValue).toArray()),
            values.stream().mapToDouble(Double::doubleValue).toArray()));
  }
}
