package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ValidateTest {
  @Test
  void coarserFiguresThanTenPercentAreRefused() {
    assertThat(Run.parfield("validate", "--until", "20%"))
        .isEqualTo(
            Run.refused(
                "parfield: --until runs to 10%: coarser figures tell nothing; got 20%",
                "  leave it out for full precision"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-1%", "NaN", "150%", "much"})
  void aShareLiesBetweenNothingAndAll(String share) {
    assertThat(Run.parfield("validate", "--until", share).err())
        .startsWith(
            "parfield: Invalid value for option '--until': a share lies above 0 and at most at"
                + " 100%, as in 1% or 0.01; got "
                + share
                + "\n");
  }

  @Test
  void aShareIsAPercentageOrANumber() {
    ShareConverter converter = new ShareConverter();
    assertThat(converter.convert("1%")).isEqualTo(.01);
    assertThat(converter.convert("0.5 %")).isEqualTo(.005);
    assertThat(converter.convert("0.02")).isEqualTo(.02);
  }
}
