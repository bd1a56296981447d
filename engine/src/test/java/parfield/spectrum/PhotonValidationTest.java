package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parfield.ReferenceFolder;

/** Sums of photons and of light against the reference folder's figures. */
class PhotonValidationTest {
  private static LightFigures figures(RadiantSpectrum spectrum) {
    return LightAnalysis.of(spectrum);
  }

  /** {@code results.csv}, trapezoidal sums in the libraries named there: its seven digits or so. */
  @Test
  void agreesWithTheResultsOnSumsOfPhotonsAndLight() {
    for (ReferenceSpectra.Case light : ReferenceSpectra.results()) {
      LightFigures found = figures(light.spectrum());
      closeTo(light, "LER_trapz_lm_W", value(found.luminousEfficacy()), 3e-5);
      closeTo(light, "lux_per_PPFD_trapz", value(found.luxPerPpfd()), 3e-5);
      closeTo(light, "umol_per_J_400_700", value(found.micromolesPerJoule()), 3e-5);
      closeTo(light, "KBv_W_per_lm_trapz", value(found.blueLightPerLumen()), 5e-5);
    }
  }

  private static double value(Finding<Double> finding) {
    return finding.toOptional().orElseThrow();
  }

  private static void closeTo(
      ReferenceSpectra.Case light, String column, double found, double relative) {
    double expected = light.expected(column);
    assertThat(found)
        .as("%s of %s", column, light)
        .isCloseTo(expected, within(relative * expected));
  }

  /** Closed forms: error functions of the bells that the synthetic lights are made of. */
  @ParameterizedTest
  @ValueSource(strings = {"SYN4_BLUE", "SYN4_COOL", "SYN4_WHITE"})
  void agreesWithClosedForms(String name) {
    RadiantSpectrum light = ReferenceSpectra.column("synthetic_" + name + "_1nm.csv", "S");
    PhotonSpectrum photons = light.toPhotons();
    for (Map<String, String> row : ReferenceFolder.rows("synthetic_" + name + "_analytic.csv")) {
      double from = Double.parseDouble(row.get("band_lo_nm"));
      double to = Double.parseDouble(row.get("band_hi_nm"));
      double energy = Double.parseDouble(row.get("energy_W"));
      double count = Double.parseDouble(row.get("photons_umol_s"));
      // Straight lines between samples 1 nm apart over a bell of sigma 6 nm: h² f'/12 at each end.
      double lines = 0.004;
      assertThat(light.power(from, to))
          .as("power of %s, %s-%s nm", name, from, to)
          .isCloseTo(energy, within(lines));
      assertThat(photons.photons(from, to))
          .as("photons of %s, %s-%s nm", name, from, to)
          .isCloseTo(count, within(4 * lines));
    }
    List<Double> shares = WaveBands.COMMON.shares(photons).toOptional().orElseThrow();
    List<Map<String, String>> rows = ReferenceFolder.rows("synthetic_" + name + "_analytic.csv");
    for (int i = 0; i < 6; i++) {
      double share = Double.parseDouble(rows.get(i).get("photon_fraction_of_380_700"));
      assertThat(shares.get(i)).as("share %d of %s", i + 1, name).isCloseTo(share, within(5e-5));
    }
  }

  /**
   * Thimijan and Heins 1983, HortScience 18:818, table 3: lux per µmol m⁻² s⁻¹ and µmol per J.
   * Lamps differ: 5 %. Sun and sky as CIE D65, blue sky as CIE daylight of 15 000 K, discharge
   * lamps as CIE HP1 and HP3 (CIE 15), the fluorescent lamp as CIE FL2, incandescent as CIE A.
   */
  @ParameterizedTest
  @CsvSource({
    "sun_and_sky_daylight",
    "blue_sky_only",
    "metal_halide",
    "high_pressure_sodium",
    "cool_white_fluorescent",
    "incandescent"
  })
  void hasThePublishedLuxPerPpfdOfSixLamps(String lamp) {
    LightFigures found =
        figures(
            switch (lamp) {
              case "sun_and_sky_daylight" ->
                  ReferenceSpectra.column("illuminant_A_D65_5nm.csv", "D65");
              case "blue_sky_only" -> daylight(15_000);
              case "metal_halide" -> discharge(1);
              case "high_pressure_sodium" -> discharge(0);
              case "cool_white_fluorescent" ->
                  ReferenceSpectra.column("illuminants_FL1_FL12_5nm.csv", "FL2");
              default -> ReferenceSpectra.column("illuminant_A_D65_5nm.csv", "A");
            });
    List<Map<String, String>> rows =
        ReferenceFolder.rows("photon_conversions.csv").stream()
            .filter(row -> row.get("quantity").equals(lamp))
            .toList();
    assertThat(rows).hasSize(2);
    for (Map<String, String> row : rows) {
      double expected = Double.parseDouble(row.get("value"));
      double value =
          row.get("unit").startsWith("lux")
              ? value(found.luxPerPpfd())
              : value(found.micromolesPerJoule());
      assertThat(value)
          .as("%s of %s", row.get("unit"), lamp)
          .isCloseTo(expected, within(0.05 * expected));
    }
  }

  /** CIE 15 prints the chromaticities of HP1 and HP3 (from memory): the tables were typed in. */
  @Test
  void theDischargeLampsAreThoseOfTheCie() {
    Chromaticity sodium = Chromaticity.of(discharge(0)).toOptional().orElseThrow();
    assertThat(sodium.x()).isCloseTo(0.533, within(5e-4));
    assertThat(sodium.y()).isCloseTo(0.415, within(5e-4));
    Chromaticity halide = Chromaticity.of(discharge(1)).toOptional().orElseThrow();
    assertThat(halide.x()).isCloseTo(0.4302, within(5e-5));
    assertThat(halide.y()).isCloseTo(0.4075, within(5e-5));
  }

  private static RadiantSpectrum discharge(int lamp) {
    PublishedTable table =
        PublishedTable.read("discharge_lamps_5nm.csv", SpectralWeight.Between.LINES);
    return sampled(table.columns().get(lamp)::at);
  }

  private static RadiantSpectrum daylight(double kelvin) {
    double[] shares = Daylight.shares(kelvin);
    return sampled(
        nm ->
            shares[0] * Daylight.COMPONENTS.get(0).at(nm)
                + shares[1] * Daylight.COMPONENTS.get(1).at(nm)
                + shares[2] * Daylight.COMPONENTS.get(2).at(nm));
  }

  private static RadiantSpectrum sampled(java.util.function.DoubleUnaryOperator power) {
    Wavelengths wavelengths = Wavelengths.even(380, 780, 5);
    double[] values = new double[wavelengths.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = power.applyAsDouble(wavelengths.nm(i));
    }
    return new RadiantSpectrum(wavelengths, values, Scale.RELATIVE);
  }

  /** {@code photon_conversions.csv}: black bodies, computed there. */
  @ParameterizedTest
  @CsvSource({"2856, 50.26, 5.013", "5800, 54.98, 4.564"})
  void countsBlackBodies(double kelvin, double luxPerPpfd, double micromolesPerJoule) {
    LightFigures found = figures(sampled(nm -> PlanckianLocus.exitance(nm, kelvin)));
    assertThat(value(found.luxPerPpfd())).isCloseTo(luxPerPpfd, within(0.01));
    assertThat(value(found.micromolesPerJoule())).isCloseTo(micromolesPerJoule, within(1e-3));
  }

  /**
   * One wavelength, 450 nm: 6.90 lux per µmol, so that one factor for all lights fails for blue.
   */
  @Test
  void countsOneWavelength() {
    RadiantSpectrum line =
        new RadiantSpectrum(new double[] {449.9, 450, 450.1}, new double[] {0, 1, 0});
    assertThat(value(figures(line).luxPerPpfd())).isCloseTo(6.90, within(5e-3));
    assertThat(value(figures(line).micromolesPerJoule())).isCloseTo(3.761706, within(1e-6));
  }
}
