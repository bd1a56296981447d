package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class SymbiontAbsorptionTest {
  /**
   * Symbiodinium in culture absorbs most in the blue (465 nm in Wangpraseurt et al. 2014, PLoS ONE
   * 9:e112809, figure 1), again at chlorophyll a's red peak, and least in between.
   */
  @Test
  void hasTheShapeOfLivingSymbionts() {
    SpectralWeight weight = SymbiontAbsorption.relative();
    double peak = 400;
    for (double nm = 400; nm <= 700; nm++) {
      peak = weight.at(nm) > weight.at(peak) ? nm : peak;
      assertThat(weight.at(nm)).isBetween(0.0, 1.0);
    }
    assertThat(peak).isBetween(430.0, 470.0);
    assertThat(weight.at(peak)).isEqualTo(1);
    assertThat(weight.at(465)).isGreaterThan(0.75);
    assertThat(weight.at(676)).isBetween(0.3, 0.7);
    assertThat(weight.at(600)).isLessThan(0.25);
    assertThat(weight.at(510)).as("peridinin").isGreaterThan(weight.at(560));
    assertThat(weight.at(399)).isZero();
  }

  /**
   * The column PUR_fraction_symb of {@code results.csv} was made with another set of pigments,
   * which is not at hand: this weight gives half as much again, evenly so from light to light.
   */
  @Test
  void ranksLightsAsAnotherSetOfPigmentsDoes() {
    double sum = 0;
    double squares = 0;
    int count = 0;
    for (ReferenceSpectra.Case light : ReferenceSpectra.results()) {
      double share =
          SymbiontAbsorption.usableShare(light.spectrum().toPhotons()).toOptional().orElseThrow();
      double ratio = share / light.expected("PUR_fraction_symb");
      sum += ratio;
      squares += ratio * ratio;
      count++;
    }
    double mean = sum / count;
    assertThat(mean).isCloseTo(1.5, within(0.05));
    assertThat(Math.sqrt(squares / count - mean * mean) / mean).isLessThan(0.08);
  }

  @Test
  void needsPar() {
    assertThat(
            SymbiontAbsorption.usableShare(
                new PhotonSpectrum(new double[] {750, 800}, new double[] {1, 1})))
        .isEqualTo(Finding.notDefined("no photons within 400 to 700 nm"));
    assertThat(SymbiontAbsorption.CAVEATS).hasSize(5);
  }
}
