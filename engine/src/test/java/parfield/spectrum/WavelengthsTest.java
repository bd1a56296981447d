package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class WavelengthsTest {
  @Test
  void runEvenly() {
    Wavelengths wavelengths = Wavelengths.even(380, 780, 5);
    assertThat(wavelengths.size()).isEqualTo(81);
    assertThat(wavelengths.nm(80)).isEqualTo(780);
    assertThat(wavelengths.width(0)).isEqualTo(2.5);
    assertThat(wavelengths.width(40)).isEqualTo(5);
    assertThat(wavelengths.widestStep()).isEqualTo(5);
    assertThat(wavelengths).isEqualTo(Wavelengths.even(380, 780, 5)).hasSameHashCodeAs(wavelengths);
    assertThat(wavelengths).hasToString("81 wavelengths from 380.0 to 780.0 nm");
    assertThat(Wavelengths.of(400, 410, 411).divided(5, 2).toArray())
        .containsExactly(400, 402, 404, 406, 408, 410, 411);
  }

  @Test
  void refuseWhatIsNoSequence() {
    refuses(() -> Wavelengths.of(400), "a spectrum needs two or more wavelengths; got 1");
    refuses(
        () -> Wavelengths.of(400, Double.NaN), "wavelengths must be finite; sample 2 is NaN nm");
    refuses(
        () -> Wavelengths.of(400, 400),
        "wavelengths must ascend; sample 2 is 400.0 nm after 400.0 nm");
    refuses(
        () -> Wavelengths.even(400, 500, 3),
        "400.0 to 500.0 nm must be one or more whole steps of 3.0 nm");
    refuses(
        () -> Wavelengths.even(400, 500, 0),
        "400.0 to 500.0 nm must be one or more whole steps of 0.0 nm");
  }

  private static void refuses(Runnable made, String message) {
    assertThatThrownBy(made::run).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
  }
}
