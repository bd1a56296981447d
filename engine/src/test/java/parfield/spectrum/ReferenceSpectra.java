package parfield.spectrum;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parfield.ReferenceFolder;

/** Spectra of the reference folder; a test that asks for them is skipped where it is absent. */
final class ReferenceSpectra {
  private ReferenceSpectra() {}

  /** Power by wavelength in a column of a table, as irradiance in W m⁻² nm⁻¹. */
  static RadiantSpectrum column(String file, String column) {
    List<Map<String, String>> rows = ReferenceFolder.rows(file);
    double[] nm = column(rows, "wavelength_nm");
    return new RadiantSpectrum(Wavelengths.of(nm), column(rows, column), Scale.IRRADIANCE);
  }

  static double[] column(List<Map<String, String>> rows, String column) {
    return rows.stream().mapToDouble(row -> Double.parseDouble(row.get(column))).toArray();
  }

  /** Every spectrum of results.csv whose table is in the folder, with its row there. */
  static List<Case> results() {
    List<Case> cases = new ArrayList<>();
    for (Map<String, String> row : ReferenceFolder.rows("results.csv")) {
      String name = row.get("spectrum");
      String file = row.get("data");
      double step = Double.parseDouble(row.get("grid_nm").split("/")[1]);
      if (file.startsWith("CIE 1 nm") || file.matches("illuminants_.*_1nm.csv")) {
        continue; // these tables are not in the folder
      }
      RadiantSpectrum spectrum = column(file, name.startsWith("SYN4") ? "S" : name);
      cases.add(
          new Case(name + " at " + step + " nm", every(spectrum, step), new LinkedHashMap<>(row)));
    }
    return cases;
  }

  /** Samples of 380-780 nm, picked as the results were. */
  private static RadiantSpectrum every(RadiantSpectrum spectrum, double step) {
    Wavelengths picked = Wavelengths.even(380, 780, step);
    double[] power = new double[picked.size()];
    for (int i = 0; i < power.length; i++) {
      power[i] = spectrum.at(picked.nm(i));
    }
    return new RadiantSpectrum(picked, power, spectrum.scale());
  }

  /** A spectrum and its row of results. */
  record Case(String name, RadiantSpectrum spectrum, Map<String, String> row) {
    double expected(String column) {
      return Double.parseDouble(row.get(column));
    }

    boolean has(String column) {
      return !row.get(column).isEmpty();
    }

    @Override
    public String toString() {
      return name;
    }
  }
}
