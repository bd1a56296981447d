package parfield.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parfield.ReferenceFolder;

/** Holds the table of pure water against the published one. */
class PureWaterValidationTest {
  /** Pope and Fry 1997, Appl. Opt. 36:8710, table 3. */
  @ParameterizedTest
  @CsvSource({
    "400, .00663",
    "420, .00454",
    "440, .00635",
    "450, .00922",
    "500, .0204",
    "550, .0565",
    "600, .2224",
    "650, .340",
    "700, .624"
  })
  void absorbsAsPopeAndFryMeasured(double wavelengthNm, double expected) {
    assertThat(PureWater.absorption(wavelengthNm)).isEqualTo(expected);
  }

  /** Kou et al. 1993, as in the IOCCG protocols 2018. Smith and Baker 1981 is 9-14 % lower. */
  @ParameterizedTest
  @CsvSource({"730, 1.97", "740, 2.78", "750, 2.85"})
  void absorbsInTheNearInfraredAsKouMeasured(double wavelengthNm, double expected) {
    assertThat(PureWater.absorption(wavelengthNm)).isEqualTo(expected);
  }

  /** Two rows that public copies of Pope and Fry 1997 have wrong. */
  @ParameterizedTest
  @CsvSource({"605, .2577", "640, .3108"})
  void avoidsTheSlipsOfPublicCopies(double wavelengthNm, double expected) {
    assertThat(PureWater.absorption(wavelengthNm)).isEqualTo(expected);
  }

  /** Pope and Fry 1997: .00442 at 417.5 nm is the least. */
  @Test
  void isClearestAt417Nanometres() {
    assertThat(PureWater.absorption(417.5)).isEqualTo(.00442);
    for (double wavelength = 380; wavelength <= 750; wavelength += 0.5) {
      assertThat(PureWater.absorption(wavelength))
          .as("at %s nm", wavelength)
          .isGreaterThanOrEqualTo(.00442);
    }
  }

  /** Every row of the published tables, at 2.5 nm and at 10 nm. */
  @ParameterizedTest
  @ValueSource(strings = {"pure_water_absorption_fine.csv", "pure_water_absorption.csv"})
  void holdsEveryPublishedRow(String file) {
    List<Map<String, String>> rows = ReferenceFolder.rows(file);
    assertThat(rows).hasSizeGreaterThan(30);
    for (Map<String, String> row : rows) {
      assertThat(PureWater.absorption(Double.parseDouble(row.get("wavelength_nm"))))
          .as("at %s nm", row.get("wavelength_nm"))
          .isEqualTo(Double.parseDouble(row.get("a_per_m")));
    }
  }

  @Test
  void isLinearBetweenRowsAndConstantOutside() {
    assertThat(PureWater.absorption(401.25)).isCloseTo((.00663 + .00579) / 2, within(1e-15));
    assertThat(PureWater.absorption(300)).isEqualTo(PureWater.absorption(380));
    assertThat(PureWater.absorption(900)).isEqualTo(PureWater.absorption(750));
  }
}
