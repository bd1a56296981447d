package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class IlluminantsValidationTest {
  /** The published tables, ISO/CIE 11664-2:2022, 100 at 560 nm, in the reference folder. */
  @Test
  @DisplayName("illuminants A and D65 are those of the published tables")
  void areThePublishedOnes() {
    assertSame(Illuminants.a(), "A", 2e-5);
    assertSame(Illuminants.d65(), "D65", 2e-5);
  }

  private static void assertSame(PhotonSpectrum found, String column, double relative) {
    RadiantSpectrum published = ReferenceSpectra.column("illuminant_A_D65_5nm.csv", column);
    RadiantSpectrum power = found.toRadiant();
    double at560 = power.at(560);
    for (double nm = 360; nm <= 780; nm += 5) {
      double expected = published.at(nm);
      assertThat(100 * power.at(nm) / at560)
          .as("%s at %s nm", column, nm)
          .isCloseTo(expected, within(relative * expected));
    }
  }
}
