package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parfield.ReferenceFolder;

/** Holds every table of the resources against the published one in the reference folder. */
class PublishedTablesValidationTest {
  @ParameterizedTest
  @CsvSource({
    "cie1931_2deg_5nm.csv, cie1931_2deg_5nm.csv, 81",
    "tcs01_14_5nm.csv, tcs01_14_5nm.csv, 95",
    "blue_light_hazard_B.csv, blue_light_hazard_B.csv, 81",
    "actinic_uv_S.csv, actinic_uv_S.csv, 54"
  })
  void holdEveryPublishedRow(String resource, String file, int count) {
    PublishedTable table = PublishedTable.read(resource, SpectralWeight.Between.LINES);
    List<Map<String, String>> rows = ReferenceFolder.rows(file);
    assertThat(rows).hasSize(count);
    for (Map<String, String> row : rows) {
      List<String> cells = new ArrayList<>(row.values());
      double nm = Double.parseDouble(cells.get(0));
      assertThat(table.columns()).hasSize(cells.size() - 1);
      for (int i = 1; i < cells.size(); i++) {
        assertThat(table.columns().get(i - 1).at(nm))
            .as("column %d of %s at %s nm", i, resource, nm)
            .isEqualTo(Double.parseDouble(cells.get(i)));
      }
    }
  }

  /** V is the second colour-matching function: ISO/CIE 23539:2023. */
  @Test
  void luminousEfficiencyIsY() {
    for (Map<String, String> row : ReferenceFolder.rows("v_lambda_5nm.csv")) {
      assertThat(
              StandardObserver.luminousEfficiency()
                  .at(Double.parseDouble(row.get("wavelength_nm"))))
          .isEqualTo(Double.parseDouble(row.get("V")));
    }
  }

  /**
   * The observer's ends, and that its three functions have equal sums (CIE 018: 106.857 / 5 nm).
   */
  @Test
  void theObserverIsComplete() {
    for (SpectralWeight function : StandardObserver.matchingFunctions()) {
      double sum = 0;
      for (double nm = 360; nm <= 830; nm += 5) {
        sum += function.at(nm);
      }
      assertThat(5 * sum).isCloseTo(106.86, within(0.04));
    }
    assertThat(StandardObserver.luminousEfficiency().at(555)).isEqualTo(1);
    assertThat(StandardObserver.luminousEfficiency().at(359.9)).isZero();
  }
}
