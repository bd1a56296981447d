package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parfield.SeededLaw;

class ColourTest {
  /** The places in every diagram are one and the same. */
  @Test
  void convertsBetweenDiagrams() {
    // D65, CIE 15: x .3127 y .3290, u' .1978 v' .4683.
    Chromaticity d65 = new Chromaticity(0.3127, 0.3290);
    assertThat(d65.u()).isCloseTo(0.1978, within(5e-5));
    assertThat(d65.vPrime()).isCloseTo(0.4683, within(5e-5));
    assertThat(d65.vPrime()).isCloseTo(1.5 * d65.v(), within(1e-15));
    Chromaticity back = Chromaticity.ofUv(d65.u(), d65.v());
    assertThat(back.x()).isCloseTo(0.3127, within(1e-12));
    assertThat(back.y()).isCloseTo(0.3290, within(1e-12));
    assertThat(d65.distance(d65)).isZero();
  }

  /** A black body is its own nearest: the law that the locus's table must keep. */
  @Test
  void aBlackBodyHasItsOwnTemperature() {
    SeededLaw.holds(
        300,
        random -> {
          double kelvin = 1e6 / (10.5 + 980 * random.nextDouble());
          Chromaticity place = PlanckianLocus.chromaticity(kelvin);
          ColourTemperature found = ColourTemperature.of(place).toOptional().orElseThrow();
          assertThat(found.kelvin()).isCloseTo(kelvin, within(1e-4 * kelvin));
          assertThat(found.duv()).isCloseTo(0, within(1e-8));
        });
  }

  /** Moved off at right angles, Duv is the way moved and the temperature stays. */
  @Test
  void duvIsTheWayFromTheLocus() {
    SeededLaw.holds(
        300,
        random -> {
          double mired = 40 + 560 * random.nextDouble();
          double duv = 0.04 * (2 * random.nextDouble() - 1);
          Chromaticity place = PlanckianLocus.chromaticity(1e6 / mired);
          Chromaticity before = PlanckianLocus.chromaticity(1e6 / (mired - 0.05));
          Chromaticity after = PlanckianLocus.chromaticity(1e6 / (mired + 0.05));
          double du = after.u() - before.u();
          double dv = after.v() - before.v();
          double length = Math.hypot(du, dv);
          Chromaticity moved =
              Chromaticity.ofUv(place.u() - duv * dv / length, place.v() + duv * du / length);
          ColourTemperature found = ColourTemperature.of(moved).toOptional().orElseThrow();
          assertThat(found.kelvin()).isCloseTo(1e6 / mired, within(1e6 / mired * 2e-4));
          assertThat(found.duv()).isCloseTo(duv, within(1e-6));
        });
  }

  @Test
  void saysWhyThereIsNoColourTemperature() {
    assertThat(ColourTemperature.of(new Chromaticity(0.30, 0.60)))
        .isEqualTo(
            Finding.notDefined(
                "the light is 0.099 from the Planckian locus in u, v; CIE 15 allows 0.05"));
    assertThat(ColourTemperature.of(new Chromaticity(0.73, 0.27)))
        .isEqualTo(Finding.notDefined("the light is redder than a black body of 1000 K"));
  }

  @Test
  void saysWhyThereIsNoColour() {
    RadiantSpectrum infrared = new RadiantSpectrum(new double[] {800, 900}, new double[] {1, 1});
    assertThat(Chromaticity.of(infrared))
        .isEqualTo(Finding.notDefined("no light that the eye sees, within 380 to 780 nm"));
    assertThat(ColourTemperature.of(infrared))
        .isEqualTo(Finding.notDefined("no light that the eye sees, within 380 to 780 nm"));
    assertThatThrownBy(() -> new Chromaticity(0.3, 0))
        .hasMessage("a chromaticity needs a finite x and a y above 0; got 0.3, 0.0");
  }

  /** Pink light near 2500 K, too far below the black body. */
  @Test
  void saysWhyThereIsNoColourRendering() {
    double[] power = new double[81];
    Wavelengths wavelengths = Wavelengths.even(380, 780, 5);
    for (int i = 0; i < power.length; i++) {
      double nm = wavelengths.nm(i);
      power[i] = Math.exp(-Math.pow((nm - 450) / 10, 2)) + Math.exp(-Math.pow((nm - 590) / 40, 2));
    }
    RadiantSpectrum pink = new RadiantSpectrum(wavelengths, power, Scale.RELATIVE);
    assertThat(ColourTemperature.of(pink).toOptional()).isPresent();
    assertThat(ColourRendering.of(pink)).isInstanceOf(Finding.NotDefined.class);
    assertThat(((Finding.NotDefined<ColourRendering>) ColourRendering.of(pink)).reason())
        .matches(
            "the light is 0\\.023\\d from its reference in u, v; the indices are given up to"
                + " 0\\.0108");
  }

  /** A black body under itself renders perfectly, and so does daylight. */
  @ParameterizedTest
  @ValueSource(doubles = {2000, 2856, 4000, 4900})
  void aBlackBodyRendersPerfectly(double kelvin) {
    Wavelengths wavelengths = Wavelengths.even(380, 780, 5);
    double[] power = new double[wavelengths.size()];
    for (int i = 0; i < power.length; i++) {
      power[i] = PlanckianLocus.exitance(wavelengths.nm(i), kelvin);
    }
    RadiantSpectrum body = new RadiantSpectrum(wavelengths, power, Scale.RELATIVE);
    ColourRendering found = ColourRendering.of(body).toOptional().orElseThrow();
    assertThat(found.ra()).isCloseTo(100, within(0.01));
    assertThat(found.lessAccurate()).isFalse();
  }

  /**
   * CIE's own table of D65: the daylight of 6500 K at c2 = 1.438e-2, its M1 and M2 rounded to three
   * decimals as CIE 15 has it.
   */
  @Test
  void daylightIsCiesDaylight() {
    double[] shares = Daylight.shares(6500 * 1.4388 / 1.4380);
    double m1 = Math.rint(1000 * shares[1]) / 1000;
    double m2 = Math.rint(1000 * shares[2]) / 1000;
    RadiantSpectrum d65 = ReferenceSpectra.column("illuminant_A_D65_5nm.csv", "D65");
    for (int i = 0; i < d65.size(); i++) {
      double nm = d65.wavelengthNm(i);
      double sum = Daylight.COMPONENTS.get(0).at(nm);
      sum += m1 * Daylight.COMPONENTS.get(1).at(nm);
      sum += m2 * Daylight.COMPONENTS.get(2).at(nm);
      assertThat(sum)
          .as("D65 at %s nm", nm)
          .isCloseTo(d65.power(i), within(1e-3)); // its six digits, twice rounded
    }
  }

  /** Illuminant A is a black body of 2856 K at c2 = 1.435e-2 by its definition, ISO 11664-2. */
  @Test
  void plancksLawMakesIlluminantA() {
    RadiantSpectrum a = ReferenceSpectra.column("illuminant_A_D65_5nm.csv", "A");
    double kelvin = 2848 * PlanckianLocus.C2 / 1.435e-2;
    for (int i = 0; i < a.size(); i++) {
      assertThat(100 * PlanckianLocus.exitance(a.wavelengthNm(i), kelvin))
          .isCloseTo(a.power(i), within(1e-5 * a.power(i)));
    }
  }

  /** White is white, and the primaries of sRGB are themselves (IEC 61966-2-1). */
  @ParameterizedTest
  @CsvSource({
    "0.3127, 0.3290, #ffffff",
    "0.64, 0.33, #ff0000",
    "0.30, 0.60, #00ff00",
    "0.15, 0.06, #0000ff"
  })
  void showsWhatAScreenCanShow(double x, double y, String hex) {
    DisplayColour shown = DisplayColour.of(new Chromaticity(x, y));
    assertThat(shown.hex()).isEqualTo(hex);
    assertThat(shown.paled()).isFalse();
  }

  /**
   * A colour that no screen shows lies on one line with the colour shown and the screen's white;
   * one that it shows is itself. Matrix back to XYZ: IEC 61966-2-1.
   */
  @Test
  void palesStraightTowardsWhite() {
    SeededLaw.holds(
        300,
        random -> {
          double x = 0.05 + 0.6 * random.nextDouble();
          double y = 0.03 + (0.9 - x) * random.nextDouble();
          DisplayColour shown = DisplayColour.of(new Chromaticity(x, y));
          double r = linear(shown.red());
          double g = linear(shown.green());
          double b = linear(shown.blue());
          double bigX = 0.4124 * r + 0.3576 * g + 0.1805 * b;
          double bigY = 0.2126 * r + 0.7152 * g + 0.0722 * b;
          double bigZ = 0.0193 * r + 0.1192 * g + 0.9505 * b;
          double sum = bigX + bigY + bigZ;
          assertThat(Math.max(r, Math.max(g, b))).isCloseTo(1, within(1e-9));
          if (shown.paled()) {
            assertThat(Math.min(r, Math.min(g, b))).isCloseTo(0, within(1e-9));
            double cross =
                (bigX / sum - 0.3127) * (y - 0.3290) - (bigY / sum - 0.3290) * (x - 0.3127);
            assertThat(cross).as("off the line").isCloseTo(0, within(2e-4));
          } else {
            assertThat(bigX / sum).isCloseTo(x, within(2e-3));
            assertThat(bigY / sum).isCloseTo(y, within(2e-3));
          }
        });
  }

  private static double linear(double encoded) {
    return encoded <= 0.04045 ? encoded / 12.92 : Math.pow((encoded + 0.055) / 1.055, 2.4);
  }

  /** Rows and laws: exact at rows, a fifth-order polynomial is reproduced between. */
  @Test
  void interpolatesAsSprague() {
    Wavelengths rows = Wavelengths.even(400, 500, 10);
    double[] values = new double[rows.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = cubic(rows.nm(i));
    }
    SpectralWeight weight = new SpectralWeight(rows, values, SpectralWeight.Between.SPRAGUE);
    for (double nm = 430; nm <= 470; nm += 0.7) {
      assertThat(weight.at(nm)).isCloseTo(cubic(nm), within(1e-9));
    }
    assertThat(weight.at(399)).isZero();
    assertThat(weight.at(501)).isZero();
    assertThat(weight.fromNm()).isEqualTo(400);
    assertThat(weight.toNm()).isEqualTo(500);
  }

  private static double cubic(double nm) {
    double x = (nm - 450) / 50;
    return 1 + x - 2 * x * x + 0.7 * x * x * x;
  }
}
