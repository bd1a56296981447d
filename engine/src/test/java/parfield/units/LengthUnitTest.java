package parfield.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class LengthUnitTest {
  /** The international inch is 25.4 mm exactly (ISO 80000-3; agreed in 1959; from memory). */
  @Test
  void convertsExactly() {
    assertThat(LengthUnit.INCH.toMetres(1)).isEqualTo(0.0254);
    assertThat(LengthUnit.CM.toMetres(90)).isCloseTo(0.9, within(1e-15));
    assertThat(LengthUnit.INCH.fromMetres(0.6096)).isCloseTo(24, within(1e-12));
    assertThat(LengthUnit.CM.symbol()).isEqualTo("cm");
    assertThat(LengthUnit.INCH.symbol()).isEqualTo("in");
  }

  @Test
  void thereAndBackIsTheSame() {
    SeededLaw.holds(
        500,
        random -> {
          double length = 500 * (random.nextDouble() - 0.5);
          for (LengthUnit unit : LengthUnit.values()) {
            assertThat(unit.fromMetres(unit.toMetres(length)))
                .isCloseTo(length, within(1e-13 * Math.abs(length)));
          }
        });
  }
}
