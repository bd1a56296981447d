package parfield.optics;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Absorption of pure water, 380 to 750 nm.
 *
 * <p>Pope and Fry 1997 (Appl. Opt. 36:8710) up to 725 nm, Kou et al. 1993 above; the table and its
 * standing are in the resource {@code pure_water_absorption.csv}. Below 420 nm published tables
 * differ by a factor of two to four; this is Pope and Fry's.
 */
public final class PureWater {
  private static final double[][] TABLE = load();

  private PureWater() {}

  /**
   * Absorption coefficient a_w [m⁻¹], linear between the table's rows.
   *
   * @param wavelengthNm wavelength [nm]; outside the table its end value is returned
   */
  public static double absorption(double wavelengthNm) {
    double[] wavelengths = TABLE[0];
    double[] values = TABLE[1];
    int last = wavelengths.length - 1;
    if (wavelengthNm <= wavelengths[0]) {
      return values[0];
    }
    if (wavelengthNm >= wavelengths[last]) {
      return values[last];
    }
    int found = Arrays.binarySearch(wavelengths, wavelengthNm);
    if (found >= 0) {
      return values[found];
    }
    int above = -found - 1;
    double share =
        (wavelengthNm - wavelengths[above - 1]) / (wavelengths[above] - wavelengths[above - 1]);
    return values[above - 1] * (1 - share) + values[above] * share;
  }

  private static double[][] load() {
    List<double[]> rows = new ArrayList<>();
    try (InputStream in = PureWater.class.getResourceAsStream("pure_water_absorption.csv");
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      for (String line = reader.readLine(); line != null; line = reader.readLine()) {
        if (!line.startsWith("#") && !line.isBlank() && Character.isDigit(line.charAt(0))) {
          String[] cells = line.split(",");
          rows.add(new double[] {Double.parseDouble(cells[0]), Double.parseDouble(cells[1])});
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("the pure-water table in this program cannot be read", e);
    }
    double[][] table = new double[2][rows.size()];
    for (int i = 0; i < rows.size(); i++) {
      table[0][i] = rows.get(i)[0];
      table[1][i] = rows.get(i)[1];
    }
    return table;
  }
}
