package parfield.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WaterTest {
  /**
   * Yellow substance, a(400) / a(440): 1.751 for S = .014 (Jerlov 1968, Optical Oceanography),
   * 2.022 for S = .0176 (Babin et al. 2003, J. Geophys. Res. 108:3211).
   */
  @ParameterizedTest
  @CsvSource({".014, 1.751", ".0176, 2.022"})
  void yellowSubstanceFallsOffExponentially(double slope, double expected) {
    Water yellow = new Water(1.34, 0.7, slope);
    Water clear = new Water(1.34, 0, slope);
    double at400 = yellow.absorption(400) - clear.absorption(400);
    double at440 = yellow.absorption(440) - clear.absorption(440);
    assertThat(at440).isCloseTo(0.7, within(1e-12));
    assertThat(at400 / at440).isCloseTo(expected, within(5e-4));
  }

  @Test
  void withoutYellowSubstanceItIsPureWater() {
    Water pure = Water.seaWater(0);
    for (double wavelength = 380; wavelength <= 750; wavelength += 5) {
      assertThat(pure.absorption(wavelength)).isEqualTo(PureWater.absorption(wavelength));
    }
  }

  /**
   * Quan and Fry 1995, Appl. Opt. 34:3477, at 35 salinity and 25 °C: 1.349372, 1.342414, 1.338520,
   * 1.335937 at 400, 500, 600, 700 nm.
   */
  @ParameterizedTest
  @CsvSource({"1.349372", "1.342414", "1.338520", "1.335937"})
  void oneIndexServesTheWholeWaveband(double published) {
    assertThat(Water.SEA_WATER_INDEX).isCloseTo(published, within(.007 * published));
  }

  @Test
  void changesItsYellowingOnly() {
    Water water = new Water(1.333, 0.1, 0.02);
    assertThat(water.withYellowing(0.3)).isEqualTo(new Water(1.333, 0.3, 0.02));
  }

  @ParameterizedTest
  @CsvSource({"1.0", "2.0", "NaN", "-1.3"})
  void refusesAnIndexThatNoWaterHas(double index) {
    assertThatThrownBy(() -> new Water(index, 0, 0.015))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("water's refractive index lies between 1 and 2; got " + index);
  }

  @Test
  void refusesNegativeAbsorption() {
    assertThatThrownBy(() -> new Water(1.34, -0.1, 0.015))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "yellowing and its spectral slope must be 0 or more; got -0.1 1/m and 0.015 1/nm");
    assertThatThrownBy(() -> new Water(1.34, 0.1, Double.NaN))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("yellowing and its spectral slope must be 0 or more; got 0.1 1/m and NaN 1/nm");
  }
}
