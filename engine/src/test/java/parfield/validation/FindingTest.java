package parfield.validation;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** When a figure agrees. */
class FindingTest {
  private static PublishedValue value(PublishedValue.Tolerance kind) {
    return new PublishedValue("case", "R", 1, .01, kind, .003, "source");
  }

  @ParameterizedTest
  @CsvSource({
    // Half a step and three standard errors.
    "ROUNDING, 1.0185, .003, AGREES",
    "ROUNDING, 1.0195, .003, DIFFERS",
    "ROUNDING, .9815, .003, AGREES",
    "ROUNDING, .9805, .003, DIFFERS",
    // Known too little, though near enough; far off all the same.
    "ROUNDING, 1.0185, .0031, OPEN",
    "ROUNDING, 1.0295, .0031, DIFFERS",
    "ROUNDING, 1, NaN, OPEN",
    // Computed: no chance at all.
    "ROUNDING, 1.0099, 0, AGREES",
    "ROUNDING, 1.0101, 0, DIFFERS",
    // Three standard errors of the difference.
    "ERROR, 1.0313, .003, AGREES",
    "ERROR, 1.0314, .003, DIFFERS",
    // The scatter of the published results is the limit, until chance is larger.
    "SPREAD, 1.0099, .003, AGREES",
    "SPREAD, 1.0101, .003, DIFFERS",
    "SPREAD, 1.0119, .004, OPEN"
  })
  void verdictAtFullPrecision(
      PublishedValue.Tolerance kind, double got, double error, Finding.Verdict expected) {
    assertThat(Finding.of(value(kind), new Figure(got, error), 1).verdict()).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource({"1.05, .02, AGREES", "1.08, .02, DIFFERS", "1.05, .04, OPEN"})
  void verdictAtATenthOfIt(double got, double error, Finding.Verdict expected) {
    PublishedValue value = value(PublishedValue.Tolerance.ROUNDING);
    assertThat(Finding.of(value, new Figure(got, error), 10).verdict()).isEqualTo(expected);
  }
}
