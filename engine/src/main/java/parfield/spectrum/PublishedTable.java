package parfield.spectrum;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** A table of this package's resources: wavelengths and columns of values. */
record PublishedTable(Wavelengths wavelengths, List<SpectralWeight> columns) {
  /**
   * Reads a table of this program.
   *
   * @param name of the resource; source and unit stand in its head
   * @param between what runs between its rows
   */
  static PublishedTable read(String name, SpectralWeight.Between between) {
    List<double[]> rows = new ArrayList<>();
    try (InputStream in = PublishedTable.class.getResourceAsStream(name);
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (!line.isBlank() && Character.isDigit(line.charAt(0))) {
          String[] cells = line.split(",");
          double[] row = new double[cells.length];
          for (int i = 0; i < row.length; i++) {
            row[i] = Double.parseDouble(cells[i]);
          }
          rows.add(row);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("the table " + name + " in this program cannot be read", e);
    }
    Wavelengths wavelengths = Wavelengths.of(column(rows, 0));
    List<SpectralWeight> columns = new ArrayList<>();
    for (int i = 1; i < rows.get(0).length; i++) {
      columns.add(new SpectralWeight(wavelengths, column(rows, i), between));
    }
    return new PublishedTable(wavelengths, List.copyOf(columns));
  }

  private static double[] column(List<double[]> rows, int i) {
    return rows.stream().mapToDouble(row -> row[i]).toArray();
  }
}
