package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parfield.lamp.TabulatedIntensity;

/**
 * An intensity distribution as separated values: azimuths C [degrees] in the first row after the
 * word gamma, then polar angles γ [degrees] with their intensities [µmol s⁻¹ sr⁻¹].
 */
final class IntensityFile implements TextTable.Rows {
  /** Most bytes of a table. */
  static final int MOST_BYTES = 4 << 20;

  private static final Limit INTENSITY = Limit.between(0, 1e6, "µmol/s/sr");

  private final String file;
  private final Notes notes;
  private final Decimals decimals;
  private double[] azimuths = {};
  private boolean headed;
  private final List<Double> gammas = new ArrayList<>();
  private final List<double[]> rows = new ArrayList<>();

  private IntensityFile(String file, Notes notes, char separator) {
    this.file = file;
    this.notes = notes;
    this.decimals = Decimals.inText(separator);
  }

  /**
   * Reads a table.
   *
   * @param file its name, for faults
   * @param bytes what it holds
   * @param notes where faults and assumptions go
   * @return the distribution, empty if a fault was noted
   */
  static Optional<TabulatedIntensity> read(String file, byte[] bytes, Notes notes) {
    try {
      String text = Source.text(bytes);
      IntensityFile reader = new IntensityFile(file, notes, TextTable.separator(text));
      int faults = notes.count();
      TextTable.read(file, text, notes, reader);
      reader.decimals.close(file, notes);
      return notes.count() == faults ? reader.distribution() : Optional.empty();
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
    } else if (azimuths.length > 0) {
      sample(line, cells);
    }
  }

  private void head(int line, List<String> cells) {
    if (!Column.of(cells.get(0), List.of("gamma")).name().equals("gamma") || cells.size() < 2) {
      fault(
          line,
          "head of the intensity table",
          Notes.shown(cells),
          "gamma, then azimuths in degrees",
          "write the first line as gamma_deg,0 or gamma_deg,0,45,90");
      return;
    }
    double[] read = new double[cells.size() - 1];
    int faults = notes.count();
    for (int i = 0; i < read.length; i++) {
      read[i] = number(line, "azimuth", cells.get(i + 1), Limit.between(0, 360, "degrees"));
    }
    azimuths = notes.count() == faults ? read : new double[0];
  }

  private void sample(int line, List<String> cells) {
    if (cells.size() != azimuths.length + 1) {
      fault(
          line,
          "row",
          String.format(Locale.ROOT, "%d values", cells.size()),
          String.format(Locale.ROOT, "%d, as in the head", azimuths.length + 1),
          "give one intensity for each azimuth");
      return;
    }
    gammas.add(number(line, "gamma", cells.get(0), Limit.between(0, 180, "degrees")));
    double[] row = new double[azimuths.length];
    for (int i = 0; i < row.length; i++) {
      row[i] = number(line, "intensity", cells.get(i + 1), INTENSITY);
    }
    rows.add(row);
  }

  private double number(int line, String what, String cell, Limit limit) {
    double value = decimals.parse(line, cell);
    if (Double.isNaN(value) || !limit.contains(value)) {
      fault(
          line,
          what,
          cell.isEmpty() ? "nothing" : Notes.shown(cell),
          "a number, " + limit.text(),
          Double.isNaN(value) ? decimals.cure(cell) : "correct the value");
      return Double.NaN;
    }
    return value;
  }

  private Optional<TabulatedIntensity> distribution() {
    double[] polar = gammas.stream().mapToDouble(Math::toRadians).toArray();
    double[] around = new double[azimuths.length];
    for (int i = 0; i < around.length; i++) {
      around[i] = Math.toRadians(azimuths[i]);
    }
    try {
      return Optional.of(new TabulatedIntensity(polar, around, rows.toArray(double[][]::new)));
    } catch (IllegalArgumentException e) {
      fault(0, "intensity table", "", "", e.getMessage());
      return Optional.empty();
    }
  }
}
