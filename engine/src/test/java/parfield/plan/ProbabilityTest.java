package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProbabilityTest {
  /** Limits from the quantiles of the beta distribution of a general library (SciPy 1). */
  @ParameterizedTest
  @CsvSource({
    "8, 10, 0.4930986989367976, 0.9632285621125349",
    "90, 96, 0.8803720394571516, 0.9724339857787501",
    "1, 16, 0.0032006977101884967, 0.2639573972885685",
    "95, 96, 0.9515379282949429, 0.9994658375657073"
  })
  void itsIntervalIsThatOfClopperAndPearson(int met, int truths, double low, double high) {
    Probability probability = new Probability(met, truths);
    assertThat(probability.value()).isEqualTo((double) met / truths);
    assertThat(probability.low()).isCloseTo(low, within(1e-9));
    assertThat(probability.high()).isCloseTo(high, within(1e-9));
  }

  /** Hanley and Lippman-Hand 1983: none of n is compatible with 3/n at most, 1 − 0.05^(1/n). */
  @ParameterizedTest
  @CsvSource({"16", "30", "96", "1000"})
  void allOrNoneAreNoCertaintyButTheRuleOfThree(int truths) {
    double exact = 1 - Math.pow(0.05, 1.0 / truths);
    assertThat(exact).isCloseTo(3.0 / truths, within(0.35 / truths));
    Probability none = new Probability(0, truths);
    assertThat(none.high()).isCloseTo(exact, within(1e-12));
    assertThat(none.low()).isZero();
    Probability all = new Probability(truths, truths);
    assertThat(all.low()).isCloseTo(1 - exact, within(1e-12));
    assertThat(all.high()).isEqualTo(1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "96 | 96 | > 0.96 | > 0.96, in all of 96 truths",
        "0 | 96 | < 0.04 | < 0.04, in none of 96 truths",
        "90 | 96 | 0.94 | 0.94, 0.88–0.98, in 90 of 96 truths",
        "16 | 16 | > 0.82 | > 0.82, in all of 16 truths",
        "999 | 1000 | 1.00 would be too much | ",
      })
  void nothingCountedReadsAsCertain(int met, int truths, String words, String full) {
    Probability probability = new Probability(met, truths);
    if (full == null) {
      assertThat(probability.inWords()).isEqualTo("> 0.99");
      assertThat(probability.inFull()).isEqualTo("> 0.99, in 999 of 1000 truths");
      assertThat(new Probability(1, 1000).inWords()).isEqualTo("< 0.01");
    } else {
      assertThat(probability.inWords()).isEqualTo(words);
      assertThat(probability.inFull()).isEqualTo(full);
    }
  }

  @Test
  void noCountOfUpToAThousandTruthsPrintsOneOrNought() {
    for (int truths = 1; truths <= 1000; truths += 37) {
      for (int met = 0; met <= truths; met++) {
        assertThat(new Probability(met, truths).inWords())
            .doesNotContain("1.00")
            .isNotEqualTo("0.00");
      }
    }
  }

  @Test
  void whatIsNoCountIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Probability(5, 4))
        .withMessage("a probability counts 0 to all of one truth or more; got 5 of 4");
    assertThatIllegalArgumentException().isThrownBy(() -> new Probability(0, 0));
  }
}
