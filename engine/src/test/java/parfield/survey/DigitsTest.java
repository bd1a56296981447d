package parfield.survey;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class DigitsTest {
  @Test
  void typesNumbersAsAPersonDoes() {
    assertThat(Digits.typed(153)).isEqualTo("153");
    assertThat(Digits.typed(2000)).isEqualTo("2000");
    assertThat(Digits.typed(15.3)).isEqualTo("15.3");
    assertThat(Digits.typed(0)).isEqualTo("0");
  }

  @Test
  void swapsNeighbouringDigits() {
    assertThat(Digits.swapped(153)).containsExactly(513.0, 135.0);
    assertThat(Digits.swapped(15.3)).containsExactly(51.3, 13.5);
    // 015 is not how a person writes 15, and swapping like digits changes nothing.
    assertThat(Digits.swapped(105)).containsExactly(150.0);
    assertThat(Digits.swapped(55)).isEmpty();
    assertThat(Digits.swapped(7)).isEmpty();
    assertThat(Digits.swapped(0.7)).containsExactly(7.0);
  }

  @Test
  void readsTheDisplaysStepOffTheReadings() {
    assertThat(Digits.step(new double[] {191, 224, 30})).isEqualTo(1);
    assertThat(Digits.step(new double[] {190, 220, 30})).isEqualTo(10);
    assertThat(Digits.step(new double[] {19.1, 22.4, 3})).isEqualTo(0.1);
    assertThat(Digits.step(new double[] {1.0 / 3})).isEqualTo(0.001);
  }
}
