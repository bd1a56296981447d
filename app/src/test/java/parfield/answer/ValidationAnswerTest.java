package parfield.answer;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import org.junit.jupiter.api.Test;
import parfield.Approved;
import parfield.units.LengthUnit;
import parfield.validation.ComparedTank;
import parfield.validation.Finding;
import parfield.validation.Finding.Verdict;
import parfield.validation.PublishedValue;
import parfield.validation.PublishedValue.Tolerance;
import parfield.validation.TankComparison;

/** The table of a validation, on invented findings. */
class ValidationAnswerTest {
  private static Finding finding(
      String ofCase, String quantity, double expected, double got, double error, Verdict verdict) {
    return new Finding(
        new PublishedValue(ofCase, quantity, expected, 1e-9, Tolerance.ROUNDING, 1e-9, "a book"),
        got,
        error,
        verdict);
  }

  private static TankComparison comparison(int tank, double median, double high, boolean holds) {
    return new TankComparison(ComparedTank.all().get(tank), median, high, .001, .0012, holds);
  }

  private static final ValidationAnswer ANSWER =
      new ValidationAnswer(
          .003,
          7,
          List.of(
              finding("matched slab", "R", .09739, .0974123, .00021, Verdict.AGREES),
              finding(
                  "deep water", "E_u at depth 10", 1.250689e-7, 1.31e-7, 3e-10, Verdict.DIFFERS),
              finding("deep water", "L_u", 3.39e-8, 3.4e-8, Double.NaN, Verdict.OPEN),
              finding("Fresnel table", "greatest miss", 0, 3.2e-7, 0, Verdict.AGREES)),
          List.of(comparison(0, .0031, .0142, true), comparison(1, .05, .09, true)),
          18);

  @Test
  void tellsEachCaseWithSourceErrorAndVerdict() {
    Approved.check("validation.txt", ANSWER.text(LengthUnit.CM));
  }

  @Test
  void answersInJsonWithNothingForWhatIsNotKnown() {
    JsonNode json = ANSWER.json();

    assertThat(json.get("agrees").asBoolean()).isFalse();
    assertThat(json.get("complete").asBoolean()).isFalse();
    assertThat(json.at("/published/1/case").asText()).isEqualTo("deep water");
    assertThat(json.at("/published/1/expected").asDouble()).isEqualTo(1.250689e-7);
    assertThat(json.at("/published/1/verdict").asText()).isEqualTo("differs");
    assertThat(json.at("/published/2/standard_error").isNull()).isTrue();
    assertThat(json.at("/tanks/0/errs_as_it_says").asBoolean()).isTrue();
    assertThat(json.at("/tanks/1/errs_as_it_says").asBoolean()).isFalse();
  }
}
