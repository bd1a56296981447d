package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import parfield.spectrum.PhotonSpectrum;

/**
 * A spectrum as separated values: a row of names, then a wavelength [nm] and a relative photon flux
 * a row, wavelengths ascending.
 *
 * <p>Energy instead of photons is converted: photons per energy are proportional to wavelength (E =
 * hc/λ).
 */
final class SpectrumFile implements TextTable.Rows {
  /** Most bytes of a spectrum. */
  static final int MOST_BYTES = 4 << 20;

  /** Widest step between samples within 400–700 nm [nm]: LED peaks are as narrow as this. */
  static final double WIDEST_STEP = 20;

  private static final Limit WAVELENGTH = Limit.between(100, 4000, "nm");
  private static final List<String> WAVELENGTHS = List.of("wavelength", "lambda", "nm");
  private static final List<String> PHOTONS =
      List.of("relative photon flux", "photon flux", "photons");
  private static final List<String> ENERGY =
      List.of(
          "relative energy",
          "energy",
          "relative power",
          "power",
          "radiant flux",
          "irradiance",
          "spectral irradiance");

  private final String file;
  private final Notes notes;
  private final Decimals decimals;
  private final List<Integer> lines = new ArrayList<>();
  private final List<Double> wavelengths = new ArrayList<>();
  private final List<Double> values = new ArrayList<>();
  private boolean headed;
  private OptionalInt wavelengthColumn = OptionalInt.empty();
  private OptionalInt valueColumn = OptionalInt.empty();
  private boolean energy;

  private SpectrumFile(String file, Notes notes, char separator) {
    this.file = file;
    this.notes = notes;
    this.decimals = Decimals.inText(separator);
  }

  /**
   * Reads a spectrum.
   *
   * @param file its name, for faults
   * @param bytes what it holds
   * @param notes where faults and assumptions go
   * @return the spectrum, empty if a fault was noted
   */
  static Optional<PhotonSpectrum> read(String file, byte[] bytes, Notes notes) {
    try {
      String text = Source.text(bytes);
      SpectrumFile reader = new SpectrumFile(file, notes, TextTable.separator(text));
      int faults = notes.count();
      TextTable.read(file, text, notes, reader);
      reader.decimals.close(file, notes);
      return notes.count() == faults ? reader.spectrum() : Optional.empty();
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
    names.addAll(PHOTONS);
    names.addAll(ENERGY);
    List<Column> columns = cells.stream().map(cell -> Column.of(cell, names)).toList();
    wavelengthColumn = first(columns, WAVELENGTHS);
    valueColumn = first(columns, PHOTONS);
    if (valueColumn.isEmpty()) {
      valueColumn = first(columns, ENERGY);
      energy = valueColumn.isPresent();
    }
    if (wavelengthColumn.isEmpty() || valueColumn.isEmpty()) {
      fault(
          line,
          "head of the spectrum",
          Notes.shown(cells),
          "wavelength_nm and relative_photon_flux, or relative_energy",
          "write the first line as wavelength_nm,relative_photon_flux");
      return;
    }
    Column wavelength = columns.get(wavelengthColumn.getAsInt());
    if (!wavelength.unit().isEmpty() && !wavelength.unit().equals("nm")) {
      fault(line, "unit of wavelength", Notes.shown(wavelength.unit()), "nm", "convert to nm");
    }
    for (int i = 0; i < cells.size(); i++) {
      if (i != wavelengthColumn.getAsInt() && i != valueColumn.getAsInt()) {
        notes.assume(file + ": the column " + Notes.shown(cells.get(i)) + " is not used");
      }
    }
    Column value = columns.get(valueColumn.getAsInt());
    if (value.unit().startsWith("w") || value.unit().startsWith("mw")) {
      energy = true;
    }
    if (energy) {
      notes.assume(file + ": energy is converted to photons, in proportion to wavelength");
    }
  }

  private static OptionalInt first(List<Column> columns, List<String> names) {
    return IntStream.range(0, columns.size())
        .filter(i -> names.contains(columns.get(i).name()))
        .findFirst();
  }

  private void sample(int line, List<String> cells) {
    double wavelength = number(line, "wavelength", cells, wavelengthColumn.getAsInt());
    double value = number(line, "photon flux", cells, valueColumn.getAsInt());
    if (Double.isNaN(wavelength) || Double.isNaN(value)) {
      return;
    }
    if (!WAVELENGTH.contains(wavelength)) {
      fault(
          line,
          "wavelength",
          NumberText.shown(wavelength),
          WAVELENGTH.text(),
          "give wavelengths in nm");
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
    boolean within =
        wavelength > PhotonSpectrum.PAR_FROM_NM && before > 0 && before < PhotonSpectrum.PAR_TO_NM;
    if (within && wavelength - before > WIDEST_STEP) {
      fault(
          line,
          "gap in the spectrum",
          String.format(
              Locale.ROOT,
              "no sample from %s to %s nm",
              NumberText.shown(before),
              NumberText.shown(wavelength)),
          "steps of at most " + NumberText.shown(WIDEST_STEP) + " nm within 400 to 700 nm",
          "measure or fill in the missing wavelengths");
    }
    lines.add(line);
    wavelengths.add(wavelength);
    values.add(energy ? value * wavelength : value);
  }

  private double number(int line, String what, List<String> cells, int column) {
    String cell = column < cells.size() ? cells.get(column) : "";
    double value = decimals.parse(line, cell);
    if (Double.isNaN(value)) {
      fault(
          line,
          what,
          cell.isEmpty() ? "nothing" : Notes.shown(cell),
          "a number",
          decimals.cure(cell));
    }
    return value;
  }

  private Optional<PhotonSpectrum> spectrum() {
    int n = wavelengths.size();
    if (n < 2) {
      fault(
          0,
          "number of samples",
          String.valueOf(n),
          "2 or more",
          "give the spectrum over 400 to 700 nm in steps of at most 20 nm");
      return Optional.empty();
    }
    double peak = values.stream().mapToDouble(Double::doubleValue).max().orElseThrow();
    for (int i = 0; i < n; i++) {
      // Sensor noise about zero is kept; a value well below it means something is wrong.
      if (values.get(i) < -0.05 * peak || peak <= 0) {
        fault(
            lines.get(i),
            "photon flux",
            NumberText.shown(values.get(i)),
            "0 or more, but for noise below 5 % of the peak",
            "subtract the sensor's dark signal, or correct the value");
        return Optional.empty();
      }
    }
    double from = wavelengths.get(0);
    double to = wavelengths.get(n - 1);
    if (from > PhotonSpectrum.PAR_FROM_NM || to < PhotonSpectrum.PAR_TO_NM) {
      notes.assume(
          String.format(
              Locale.ROOT,
              "%s runs from %s to %s nm: no light is taken beyond, within 400 to 700 nm",
              file,
              NumberText.shown(from),
              NumberText.shown(to)));
    }
    try {
      PhotonSpectrum spectrum =
          new PhotonSpectrum(
              wavelengths.stream().mapToDouble(Double::doubleValue).toArray(),
              values.stream().mapToDouble(Double::doubleValue).toArray());
      if (!(spectrum.parPhotons() > 0)) {
        fault(
            0,
            "spectrum",
            "",
            "",
            "a spectrum must hold photons within 400-700 nm; this one holds none there");
        return Optional.empty();
      }
      return Optional.of(spectrum);
    } catch (IllegalArgumentException e) {
      fault(0, "spectrum", "", "", e.getMessage());
      return Optional.empty();
    }
  }
}
