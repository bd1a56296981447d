package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

/** What conversions and resampling must keep. */
class SpectrumLawsTest {
  /** Exact SI constants of 2019; the products as listed in photon_conversions.csv. */
  @Test
  void countsThePhotonsOfAJoule() {
    assertThat(PhotonEnergy.NM_JOULES_PER_MICROMOLE).isCloseTo(119.626566, within(1e-6));
    assertThat(PhotonEnergy.micromolesPerJoule(450)).isCloseTo(3.761706, within(1e-6));
    assertThat(PhotonEnergy.micromolesPerJoule(555)).isCloseTo(4.639438, within(1e-6));
    assertThat(PhotonEnergy.micromolesPerJoule(660)).isCloseTo(5.517169, within(1e-6));
    RadiantSpectrum flat =
        new RadiantSpectrum(Wavelengths.of(400, 700), new double[] {1, 1}, Scale.IRRADIANCE);
    assertThat(flat.toPhotons().parPhotons() / flat.power(400, 700))
        .as("flat power of 400-700 nm")
        .isCloseTo(4.597641, within(1e-6));
  }

  @Test
  void toPhotonsAndBackIsTheSameSpectrum() {
    SeededLaw.holds(
        200,
        random -> {
          Wavelengths wavelengths = RandomSpectra.wavelengths(random, 350, 800, 0.3, 5);
          RadiantSpectrum radiant =
              new RadiantSpectrum(
                  wavelengths, RandomSpectra.values(random, wavelengths), Scale.IRRADIANCE);
          RadiantSpectrum back = radiant.toPhotons().toRadiant();

          assertThat(back.wavelengths()).isSameAs(wavelengths);
          assertThat(back.scale()).isEqualTo(Scale.IRRADIANCE);
          for (int i = 0; i < back.size(); i++) {
            assertThat(back.power(i)).isCloseTo(radiant.power(i), within(1e-14));
          }
        });
  }

  /** The exact integral of λE over 119.63, E straight between samples, by Simpson's rule. */
  @Test
  void conversionKeepsPhotonsWithinThreePartsInAHundredThousand() {
    SeededLaw.holds(
        200,
        random -> {
          Wavelengths wavelengths = RandomSpectra.wavelengths(random, 350, 800, 0.3, 30);
          RadiantSpectrum radiant =
              new RadiantSpectrum(wavelengths, bells(random, wavelengths), Scale.RELATIVE);
          double exact = 0;
          for (int i = 1; i < radiant.size(); i++) {
            double a = wavelengths.nm(i - 1);
            double b = wavelengths.nm(i);
            double m = (a + b) / 2;
            exact += (b - a) / 6 * (a * radiant.at(a) + 4 * m * radiant.at(m) + b * radiant.at(b));
          }
          exact /= PhotonEnergy.NM_JOULES_PER_MICROMOLE;

          assertThat(radiant.toPhotons().photons()).isCloseTo(exact, within(3e-5 * exact));
        });
  }

  private static double[] bells(java.util.SplittableRandom random, Wavelengths wavelengths) {
    double[] values = RandomSpectra.values(random, wavelengths);
    for (int i = 0; i < values.length; i++) {
      values[i] = Math.max(0, values[i]);
    }
    return values;
  }

  /** The bound that the project asks for is 1e-6; the method is exact. */
  @Test
  void resamplingConservesPhotons() {
    SeededLaw.holds(
        500,
        random -> {
          Wavelengths wavelengths = RandomSpectra.wavelengths(random, 350, 800, 0.3, 6);
          PhotonSpectrum spectrum =
              new PhotonSpectrum(
                  wavelengths, RandomSpectra.values(random, wavelengths), Scale.IRRADIANCE);
          double from = 300 + 90 * random.nextDouble();
          double to = 705 + 200 * random.nextDouble();
          Wavelengths target = RandomSpectra.wavelengths(random, from, to, 0.2, 12);
          PhotonSpectrum there = spectrum.onto(target);

          double expected = spectrum.photons(from, to);
          assertThat(there.photons()).isCloseTo(expected, within(1e-12 * expected));
          assertThat(there.scale()).isEqualTo(Scale.IRRADIANCE);
        });
  }

  /** A step of the new wavelengths that cuts the old ones keeps its own photons and their mean. */
  @Test
  void resamplingKeepsANarrowLineWhereItWas() {
    PhotonSpectrum line =
        new PhotonSpectrum(new double[] {451.9, 452, 452.1}, new double[] {0, 10, 0});
    PhotonSpectrum there = line.onto(Wavelengths.even(440, 460, 5));

    assertThat(there.photons()).isCloseTo(1, within(1e-12));
    double mean = 0;
    for (int i = 0; i < there.size(); i++) {
      mean += there.wavelengthNm(i) * there.photonFlux(i) * there.wavelengths().width(i);
    }
    assertThat(mean).isCloseTo(452, within(1e-9));
    assertThat(there.photonFluxes()[0]).isZero();
    assertThat(there.photonFluxes()[2]).isCloseTo(0.6 / 5, within(1e-12));
    assertThat(there.photonFluxes()[3]).isCloseTo(0.4 / 5, within(1e-12));
  }

  @Test
  void finerWavelengthsThatHoldTheOldOnesReproduceTheLines() {
    SeededLaw.holds(
        100,
        random -> {
          Wavelengths wavelengths = Wavelengths.even(380, 780, 5);
          PhotonSpectrum spectrum =
              new PhotonSpectrum(
                  wavelengths, RandomSpectra.values(random, wavelengths), Scale.RELATIVE);
          PhotonSpectrum fine = spectrum.onto(Wavelengths.even(380, 780, 0.5));
          for (int i = 0; i < fine.size(); i++) {
            assertThat(fine.photonFlux(i))
                .isCloseTo(spectrum.at(fine.wavelengthNm(i)), within(1e-12));
          }
          assertThat(spectrum.onto(Wavelengths.even(380, 780, 5)).photonFluxes())
              .isEqualTo(spectrum.photonFluxes());
        });
  }

  @Test
  void negativeNoiseCountsInSums() {
    PhotonSpectrum noisy =
        new PhotonSpectrum(new double[] {400, 500, 600, 700}, new double[] {3, -1, 1, 1});
    assertThat(noisy.parPhotons()).isEqualTo(100 + 0 + 100);
  }

  @Test
  void radiantSumsAreExactAndCarryTheirUnit() {
    RadiantSpectrum radiant =
        new RadiantSpectrum(Wavelengths.of(450, 460, 500), new double[] {2, 6, 0}, Scale.FLUX);
    assertThat(radiant.power()).isEqualTo(160);
    assertThat(radiant.power(455, 480)).isEqualTo(25 + 90);
    assertThat(radiant.scale().radiantUnit()).hasValue("W");
    assertThat(Scale.IRRADIANCE.radiantUnit()).hasValue("W m⁻²");
    assertThat(Scale.RELATIVE.radiantUnit()).isEmpty();
    assertThat(radiant.toPhotons().scale().photonUnit()).hasValue("µmol s⁻¹");
    assertThat(radiant.times(0.5).power()).isEqualTo(80);
    assertThat(radiant.relative().scale()).isEqualTo(Scale.RELATIVE);
    assertThatThrownBy(() -> radiant.onto(Wavelengths.of(700, 800)))
        .hasMessage("no power of this spectrum lies within 700.0 to 800.0 nm");
    assertThatThrownBy(() -> new RadiantSpectrum(new double[] {400, 500}, new double[] {0, 0}))
        .hasMessage("a spectrum must hold power; this one sums to 0.0 over 400.0 to 500.0 nm");
  }
}
