package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * The rows of a table of spectra: lines about the measurement, perhaps a row of names and one of
 * units, then rows of a wavelength and one or more values. For one thread and one file or sheet.
 */
final class SpectrumTable implements TextTable.Rows {
  static final int MOST_ROWS = 20_000;
  static final int MOST_COLUMNS = 120;

  private static final List<String> WAVELENGTHS =
      List.of("wavelength", "wavelengths", "wave length", "lambda", "λ", "wl", "nm");

  /** Units that a wavelength may be said to have; only the first four are taken. */
  private static final List<String> LENGTHS =
      List.of("", "nm", "nanometre", "nanometer", "um", "µm", "μm", "m", "å", "a", "cm", "mm");

  private static final int TAKEN_LENGTHS = 4;

  /** Columns that hold no light of their own. */
  private static final Set<String> OTHERS =
      Set.of(
          "pixel",
          "index",
          "no",
          "dark",
          "dark counts",
          "background",
          "sigma",
          "error",
          "uncertainty",
          "time",
          "line",
          "note");

  private final String file;
  private final Notes notes;
  private final Decimals decimals;
  private final boolean commaSeparated;
  private final List<Row> before = new ArrayList<>();
  private final List<Row> samples = new ArrayList<>();

  /** Whether a row named a column of wavelengths: what follows are samples. */
  private boolean headed;

  /** A row as it stands in the file. */
  private record Row(int line, List<String> cells) {
    String cell(int column) {
      return column < cells.size() ? cells.get(column) : "";
    }
  }

  /**
   * Starts a table.
   *
   * @param commaSeparated whether commas separate its cells
   */
  SpectrumTable(String file, Notes notes, Decimals decimals, boolean commaSeparated) {
    this.file = file;
    this.notes = notes;
    this.decimals = decimals;
    this.commaSeparated = commaSeparated;
  }

  @Override
  public void comment(int line, String text) {
    if (samples.isEmpty()) {
      keep(before, new Row(line, List.of(text)));
    }
  }

  @Override
  public void blank(int line) {}

  @Override
  public void row(int line, List<String> cells) {
    List<String> filled = cells.stream().filter(cell -> !cell.isEmpty()).toList();
    long numbers = filled.stream().filter(this::isNumber).count();
    boolean begun = headed || !samples.isEmpty();
    if (!begun && numbers < 2) {
      headed = filled.size() >= 2 && wavelengthColumn(cells) >= 0;
      keep(before, new Row(line, cells));
    } else if (headed && samples.isEmpty() && isUnits(cells)) {
      keep(before, new Row(line, cells));
    } else if (begun && filled.size() == 1 && numbers == 0) {
      notes.assume(file + ": the line " + Notes.shown(filled.get(0)) + " is not read");
    } else {
      keep(samples, new Row(line, cells));
    }
  }

  private void keep(List<Row> rows, Row row) {
    if (rows.size() >= MOST_ROWS || row.cells().size() > MOST_COLUMNS) {
      throw notes.fatal(
          new Fault(
              file,
              row.line(),
              0,
              rows.size() >= MOST_ROWS ? "number of rows" : "number of columns",
              "more",
              String.valueOf(rows.size() >= MOST_ROWS ? MOST_ROWS : MOST_COLUMNS),
              "split the file, or keep the columns that you need"));
    }
    rows.add(row);
  }

  private boolean isNumber(String cell) {
    return NumberText.isNumber(cell)
        || (!commaSeparated && !Double.isNaN(NumberText.parse(cell, ',')));
  }

  private void fault(int line, String what, String value, String limit, String cure) {
    notes.fault(new Fault(file, line, 0, what, value, limit, cure));
  }

  boolean isEmpty() {
    return before.isEmpty() && samples.isEmpty();
  }

  /**
   * Ends the table.
   *
   * @param asked what its numbers count, told beside the file
   * @return its spectra, none where a fault was noted
   */
  List<MeasuredSpectrum> close(Optional<SpectralUnit> asked) {
    int faults = notes.count();
    if (samples.isEmpty()) {
      fault(
          0,
          "number of samples",
          "0",
          "2 or more",
          "write a row for each wavelength: the wavelength in nm, then its value");
      return List.of();
    }
    Names names = names();
    List<SampleColumn> columns = columns(names, asked);
    if (columns.isEmpty() || notes.count() > faults) {
      decimals.close(file, notes);
      return List.of();
    }
    if (columns.size() == 1) {
      columns = List.of(columns.get(0).unnamed());
    }
    for (Row row : samples) {
      double wavelength = number(row, "wavelength", names.wavelength());
      if (Double.isNaN(wavelength)) {
        continue;
      }
      for (SampleColumn column : columns) {
        String what = columns.size() == 1 ? "value" : "value of " + Notes.shown(column.name());
        double value = number(row, what, column.column());
        if (!Double.isNaN(value)) {
          column.add(row.line(), wavelength, value);
        }
      }
    }
    decimals.close(file, notes);
    if (notes.count() > faults) {
      return List.of();
    }
    List<MeasuredSpectrum> spectra = new ArrayList<>();
    columns.forEach(column -> column.close(OptionalDouble.empty()).ifPresent(spectra::add));
    return notes.count() > faults ? List.of() : spectra;
  }

  private double number(Row row, String what, int column) {
    String cell = row.cell(column);
    double value = decimals.parse(row.line(), cell);
    if (Double.isNaN(value)) {
      fault(
          row.line(),
          what,
          cell.isEmpty() ? "nothing" : Notes.shown(cell),
          "a number",
          decimals.cure(cell));
    }
    return value;
  }

  /** The names of the columns. */
  private record Names(int line, int wavelength, List<String> heads, List<String> units) {
    String unit(int column) {
      return column < units.size() ? units.get(column) : "";
    }
  }

  private Names names() {
    int width = samples.stream().mapToInt(row -> row.cells().size()).max().orElseThrow();
    int head = before.size() - 1;
    List<String> units = List.of();
    if (head >= 1 && isUnits(before.get(head).cells())) {
      units = before.get(head).cells();
      head--;
    }
    if (head < 0 || before.get(head).cells().size() < 2) {
      return new Names(0, 0, List.of(), units);
    }
    Row row = before.remove(head);
    int wavelength = wavelengthColumn(row.cells());
    if (wavelength < 0) {
      wavelength = 0;
      notes.assume(file + ": the first column is taken as wavelengths in nm");
    } else {
      checkWavelengthUnit(row.line(), row.cell(wavelength));
    }
    if (row.cells().size() < width) {
      Row longer =
          samples.stream()
              .filter(sample -> sample.cells().size() > row.cells().size())
              .filter(sample -> !sample.cell(row.cells().size()).isEmpty())
              .findFirst()
              .orElse(null);
      if (longer != null) {
        fault(
            longer.line(),
            "cells of a row",
            String.valueOf(longer.cells().size()),
            String.valueOf(row.cells().size()),
            "give every column a name; separate cells with semicolons where commas are decimal");
      }
    }
    return new Names(row.line(), wavelength, row.cells(), units);
  }

  private void checkWavelengthUnit(int line, String head) {
    String unit = Column.of(head, WAVELENGTHS).unit();
    if (LENGTHS.indexOf(unit) >= TAKEN_LENGTHS) {
      fault(
          line,
          "unit of wavelength",
          Notes.shown(unit),
          "nm",
          switch (unit) {
            case "um", "µm", "μm" -> "multiply the wavelengths by 1000";
            case "m" -> "multiply the wavelengths by 1e9";
            case "å", "a" -> "divide the wavelengths by 10";
            default -> "convert to nm";
          });
    }
  }

  /** Units alone, in every cell that is not empty. */
  private static boolean isUnits(List<String> cells) {
    List<String> filled = cells.stream().filter(cell -> !cell.isEmpty()).toList();
    return filled.size() >= 2
        && filled.stream().anyMatch(SpectrumTable::isNanometre)
        && filled.stream().allMatch(cell -> isNanometre(cell) || SpectralUnit.of(cell).isPresent());
  }

  private static boolean isNanometre(String cell) {
    return cell.replaceAll("[()\\[\\]\\s]", "").equalsIgnoreCase("nm");
  }

  private static int wavelengthColumn(List<String> cells) {
    for (int i = 0; i < cells.size(); i++) {
      Column column = Column.of(cells.get(i), WAVELENGTHS);
      if (WAVELENGTHS.contains(column.name()) && LENGTHS.contains(column.unit())) {
        return i;
      }
    }
    return -1;
  }

  private List<SampleColumn> columns(Names names, Optional<SpectralUnit> asked) {
    Optional<SpectralUnit> common = common();
    int width =
        names.heads().isEmpty()
            ? samples.stream().mapToInt(row -> row.cells().size()).max().orElseThrow()
            : names.heads().size();
    List<SampleColumn> columns = new ArrayList<>();
    List<String> unknown = new ArrayList<>();
    for (int i = 0; i < width; i++) {
      String head = i < names.heads().size() ? names.heads().get(i) : "";
      if (i == names.wavelength() || isEmpty(i)) {
        continue;
      }
      SpectralUnit.Head read = SpectralUnit.head(head);
      if (isOther(head, i)) {
        notes.assume(file + ": the column " + Notes.shown(head) + " is not used");
        continue;
      }
      Optional<SpectralUnit> stated =
          SpectralUnit.of(names.unit(i)).or(read::unit).or(() -> common);
      Optional<SpectralUnit> unit = asked.or(() -> stated);
      if (unit.isEmpty()) {
        unknown.add(head.isEmpty() ? "column " + (i + 1) : head);
        continue;
      }
      if (asked.isPresent() && stated.isPresent() && !asked.equals(stated)) {
        notes.assume(file + ": the unit that was asked for is taken, not the one it states");
      }
      columns.add(
          new SampleColumn(file, notes, i, read.name(), unit.get(), columns.isEmpty(), false));
    }
    if (!unknown.isEmpty()) {
      fault(
          names.line(),
          "what the values count",
          "nothing stated for " + Notes.shown(unknown),
          "energy, photons or counts",
          "write it into the head, as in wavelength_nm,relative_photon_flux, or give --unit: "
              + SpectralUnit.EXAMPLES);
      return List.of();
    }
    if (columns.isEmpty()) {
      fault(
          names.line(),
          "columns",
          names.heads().isEmpty() ? "1" : Notes.shown(names.heads()),
          "a wavelength and at least one value",
          "write the first line as wavelength_nm,relative_photon_flux");
    }
    return columns;
  }

  private boolean isEmpty(int column) {
    return samples.stream().allMatch(row -> row.cell(column).isEmpty());
  }

  private boolean isOther(String head, int column) {
    return OTHERS.contains(Column.of(head, OTHERS).name())
        || (SpectralUnit.head(head).unit().isEmpty()
            && samples.stream().noneMatch(row -> isNumber(row.cell(column))));
  }

  /** The unit that the lines before the names state for all columns. */
  private Optional<SpectralUnit> common() {
    for (Row row : before) {
      for (String cell : row.cells()) {
        Optional<SpectralUnit> unit = SpectralUnit.within(cell);
        if (unit.isPresent()) {
          return unit;
        }
      }
    }
    return Optional.empty();
  }
}
