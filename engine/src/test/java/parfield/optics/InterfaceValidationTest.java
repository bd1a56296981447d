package parfield.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parfield.ReferenceFolder;
import parfield.SeededLaw;

/** Holds Snell and Fresnel against published figures and against their laws. */
class InterfaceValidationTest {
  private static final double SEA = 1.34;

  private static double fromAir(double degrees, double index) {
    return Interface.reflectance(Math.cos(Math.toRadians(degrees)), 1, index);
  }

  private static double fromWater(double degrees, double index) {
    return Interface.reflectance(Math.cos(Math.toRadians(degrees)), index, 1);
  }

  /** ((n - 1) / (n + 1))²; Gregg and Carder 1990, Limnol. Oceanogr. 35:1657 print .0211. */
  @ParameterizedTest
  @CsvSource({"1.333, .020373", "1.34, .021112"})
  void reflectsLittleAtNormalIncidence(double index, double expected) {
    assertThat(fromAir(0, index)).isCloseTo(expected, within(5e-7));
    assertThat(fromWater(0, index)).isCloseTo(expected, within(5e-7));
  }

  /** Jerlov 1976, Marine Optics, table XVI, n = 4/3, in per cent rounded to .1. */
  @ParameterizedTest
  @CsvSource({"0, 2.0", "30, 2.1", "45, 2.8", "60, 5.9", "70, 13.3", "80, 34.9", "85, 58.3"})
  void reflectsAsJerlovTableSixteen(double degrees, double percent) {
    // The table rounds to .1, and at 60 and 70 degrees it is .1 lower than Fresnel gives.
    assertThat(100 * fromAir(degrees, 4.0 / 3)).isCloseTo(percent, within(.1));
  }

  /** Every row of the published table for both indices, and Jerlov's column of it. */
  @Test
  void holdsEveryPublishedRow() {
    for (Map<String, String> row : ReferenceFolder.rows("fresnel_air_water.csv")) {
      double degrees = Double.parseDouble(row.get("incidence_deg_in_air"));
      assertThat(fromAir(degrees, 4.0 / 3))
          .as("n = 4/3 at %s degrees", degrees)
          .isCloseTo(Double.parseDouble(row.get("R_unpol_n4over3")), within(6e-7));
      assertThat(fromAir(degrees, SEA))
          .as("n = 1.34 at %s degrees", degrees)
          .isCloseTo(Double.parseDouble(row.get("R_unpol_n1.34")), within(6e-7));
      assertThat(100 * fromAir(degrees, 4.0 / 3))
          .as("Jerlov at %s degrees", degrees)
          .isCloseTo(Double.parseDouble(row.get("jerlov_tableXVI_unpol_percent")), within(.1));
    }
  }

  /**
   * Diffuse light, exact integrals by an independent program; .066 for n = 1.333 is the published
   * figure, .48 for n = 1.34 from below that of Morel and Gentili 1996, Appl. Opt. 35:4850.
   */
  @ParameterizedTest
  @CsvSource({"1.333, .066406, .474591", "1.34, .067511, .480681"})
  void reflectsDiffuseLight(double index, double intoWater, double intoAir) {
    assertThat(Interface.diffuseReflectance(1, index)).isCloseTo(intoWater, within(1e-6));
    assertThat(Interface.diffuseReflectance(index, 1)).isCloseTo(intoAir, within(1e-6));
  }

  /** From below, n = 1.34, by an independent program. */
  @ParameterizedTest
  @CsvSource({"30, .02653", "40, .05881", "45, .15286", "47, .30229", "48, .57053"})
  void reflectsFromBelow(double degrees, double expected) {
    assertThat(fromWater(degrees, SEA)).isCloseTo(expected, within(5e-6));
  }

  /** arcsin(1/n): 48.607° for n = 1.333, 48.268° for n = 1.34. */
  @ParameterizedTest
  @CsvSource({"1.333, 48.607", "1.34, 48.268"})
  void reflectsAllBeyondTheCriticalAngle(double index, double critical) {
    assertThat(fromWater(critical + 1e-3, index)).isEqualTo(1);
    assertThat(fromWater(critical - 1e-3, index)).isLessThan(1);
    assertThat(fromWater(90, index)).isEqualTo(1);
  }

  /** Snell: n sin θ is the same on both sides. */
  @Test
  void refractsBySnell() {
    assertThat(Interface.refractedSine(.5, 1, SEA)).isCloseTo(.5 / SEA, within(1e-15));
    assertThat(Interface.refractedSine(.8, SEA, 1)).isCloseTo(.8 * SEA, within(1e-15));
  }

  /** Stokes 1849: a boundary reflects the same share of a ray and of the ray that runs back. */
  @Test
  void reflectsTheSameBothWays() {
    SeededLaw.holds(
        1000,
        random -> {
          double index = 1.05 + .9 * random.nextDouble();
          double sine = random.nextDouble();
          double refracted = Interface.refractedSine(sine, 1, index);
          double down = Interface.reflectance(Math.sqrt(1 - sine * sine), 1, index);
          double up = Interface.reflectance(Math.sqrt(1 - refracted * refracted), index, 1);
          assertThat(down).isCloseTo(up, within(1e-9));
          assertThat(down).isBetween(0.0, 1.0);
        });
  }

  /** No boundary, no reflection. */
  @Test
  void reflectsNothingBetweenAlikeMedia() {
    for (double cosine = .01; cosine <= 1; cosine += .01) {
      assertThat(Interface.reflectance(cosine, 1.4, 1.4)).isCloseTo(0, within(1e-15));
    }
    assertThat(Interface.diffuseReflectance(1.4, 1.4)).isCloseTo(0, within(1e-15));
  }
}
