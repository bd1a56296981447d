package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Colour of the CIE illuminants A, D65, FL1 to FL12, the LED series and three synthetic lights
 * against {@code results.csv} of the reference folder: general-purpose colour libraries
 * (colour-science 0.4.6, luxpy 1.12.5) and direct sums.
 */
class ColourValidationTest {
  @Test
  void hasTheChromaticitiesOfTheResults() {
    List<ReferenceSpectra.Case> cases = ReferenceSpectra.results();
    assertThat(cases).hasSize(29);
    for (ReferenceSpectra.Case light : cases) {
      Chromaticity colour = Chromaticity.of(light.spectrum()).toOptional().orElseThrow();
      assertThat(colour.x()).as("x of %s", light).isCloseTo(light.expected("x"), within(2e-5));
      assertThat(colour.y()).as("y of %s", light).isCloseTo(light.expected("y"), within(2e-5));
      assertThat(colour.u())
          .as("u' of %s", light)
          .isCloseTo(light.expected("u_prime"), within(2e-5));
      assertThat(colour.vPrime())
          .as("v' of %s", light)
          .isCloseTo(light.expected("v_prime"), within(2e-5));
    }
  }

  /** Ohno 2014 (Leukos 10:47) as colour-science has it: 0.05 % and 3e-5. */
  @Test
  void hasTheColourTemperaturesOfTheResults() {
    int defined = 0;
    for (ReferenceSpectra.Case light : ReferenceSpectra.results()) {
      if (light.has("CCT_exact")) {
        ColourTemperature found = ColourTemperature.of(light.spectrum()).toOptional().orElseThrow();
        double kelvin = light.expected("CCT_colour_Ohno2013");
        assertThat(found.kelvin())
            .as("colour temperature of %s", light)
            .isCloseTo(kelvin, within(5e-4 * kelvin));
        assertThat(found.duv())
            .as("Duv of %s", light)
            .isCloseTo(light.expected("Duv_colour_Ohno2013"), within(3e-5));
        defined++;
      }
    }
    assertThat(defined).isEqualTo(27);
  }

  @Test
  void rendersColoursAsInTheResults() {
    int defined = 0;
    for (ReferenceSpectra.Case light : ReferenceSpectra.results()) {
      if (light.has("Ra_direct") && light.has("CCT_exact")) {
        ColourRendering found = ColourRendering.of(light.spectrum()).toOptional().orElseThrow();
        assertThat(found.ra())
            .as("Ra of %s", light)
            .isCloseTo(light.expected("Ra_direct"), within(0.1));
        for (int i = 1; i <= 14; i++) {
          // A special index is one colour's difference, not the mean of eight: 0.3.
          assertThat(found.r(i))
              .as("R%d of %s", i, light)
              .isCloseTo(light.expected("R" + i), within(0.3));
        }
        defined++;
      }
    }
    assertThat(defined).isEqualTo(27);
  }

  /** CIE 15, printed; from memory, and reproduced. */
  @ParameterizedTest
  @CsvSource({
    "FL1, 6430, 76", "FL2, 4230, 64", "FL3, 3450, 57", "FL4, 2940, 51", "FL5, 6350, 72",
    "FL6, 4150, 59", "FL7, 6500, 90", "FL8, 5000, 95", "FL9, 4150, 90", "FL10, 5000, 81",
    "FL11, 4000, 83", "FL12, 3000, 83"
  })
  void hasWhatCieFifteenPrints(String lamp, double kelvin, double ra) {
    RadiantSpectrum spectrum = ReferenceSpectra.column("illuminants_FL1_FL12_5nm.csv", lamp);
    assertThat(ColourTemperature.of(spectrum).toOptional().orElseThrow().kelvin())
        .isCloseTo(kelvin, within(6.0));
    // CIE 15 rounds each index before it takes the mean.
    assertThat(ColourRendering.of(spectrum).toOptional().orElseThrow().ra())
        .isCloseTo(ra, within(0.7));
  }

  /** FL5 and FL6 lie farther from their reference than CIE 13.3's tolerance, and say so. */
  @Test
  void saysWhereTheIndicesAreLessAccurate() {
    for (int lamp = 1; lamp <= 12; lamp++) {
      RadiantSpectrum spectrum =
          ReferenceSpectra.column("illuminants_FL1_FL12_5nm.csv", "FL" + lamp);
      assertThat(ColourRendering.of(spectrum).toOptional().orElseThrow().lessAccurate())
          .as("FL%d", lamp)
          .isEqualTo(lamp == 5 || lamp == 6);
    }
  }

  /** Libraries that print 148 051 K for this light are wrong (CIE 15 and 13.3; from memory). */
  @Test
  void aBlueTankLightHasNoColourTemperatureAndNoRendering() {
    RadiantSpectrum blue = ReferenceSpectra.column("synthetic_SYN4_BLUE_1nm.csv", "S");
    String reason =
        "the light is bluer than any black body: the nearest point of the Planckian locus is its hot"
            + " end, 0.039 away in u, v";
    assertThat(ColourTemperature.of(blue)).isEqualTo(Finding.notDefined(reason));
    assertThat(ColourRendering.of(blue))
        .isEqualTo(Finding.notDefined("there is no correlated colour temperature: " + reason));
  }
}
