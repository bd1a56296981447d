package parfield.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ReflectanceTest {
  @Test
  void grayIsTheSameEverywhere() {
    Reflectance gray = Reflectance.gray(0.3);
    assertThat(gray.at(400)).isEqualTo(0.3);
    assertThat(gray.at(700)).isEqualTo(0.3);
    assertThat(gray.isGray()).isTrue();
    assertThat(gray).isEqualTo(Reflectance.gray(0.3)).isNotEqualTo(Reflectance.gray(0.31));
  }

  @Test
  void aTableRunsStraightBetweenSamplesAndHoldsBeyond() {
    Reflectance pink =
        Reflectance.tabulated(new double[] {450, 550, 650}, new double[] {.2, .1, .4});
    assertThat(pink.at(400)).isEqualTo(0.2);
    assertThat(pink.at(450)).isEqualTo(0.2);
    assertThat(pink.at(500)).isCloseTo(0.15, within(1e-15));
    assertThat(pink.at(550)).isEqualTo(0.1);
    assertThat(pink.at(625)).isCloseTo(0.325, within(1e-15));
    assertThat(pink.at(800)).isEqualTo(0.4);
    assertThat(pink.isGray()).isFalse();
    assertThat(pink.least()).isEqualTo(0.1);
    assertThat(pink.greatest()).isEqualTo(0.4);
    assertThat(pink)
        .isEqualTo(Reflectance.tabulated(new double[] {450, 550, 650}, new double[] {.2, .1, .4}))
        .hasToString("Reflectance[0.1 to 0.4, 3 samples]");
  }

  @Test
  void whatIsNoReflectanceIsRefused() {
    assertThatThrownBy(() -> Reflectance.gray(1))
        .hasMessage("a reflectance runs from 0 to below 1; got 1.0");
    assertThatThrownBy(() -> Reflectance.gray(Double.NaN))
        .hasMessage("a reflectance runs from 0 to below 1; got NaN");
    assertThatThrownBy(() -> Reflectance.tabulated(new double[] {500}, new double[] {-0.1}))
        .hasMessage("a reflectance runs from 0 to below 1; got -0.1 at 500.0 nm");
    assertThatThrownBy(() -> Reflectance.tabulated(new double[] {500, 500}, new double[] {0, 0}))
        .hasMessage(
            "wavelengths of a reflectance must ascend from above 0 nm; sample 2 is 500.0 nm after"
                + " 500.0 nm");
    assertThatThrownBy(() -> Reflectance.tabulated(new double[] {500}, new double[0]))
        .hasMessage(
            "a reflectance needs one or more pairs of wavelength and value; got 1 wavelengths and 0"
                + " values");
  }
}
