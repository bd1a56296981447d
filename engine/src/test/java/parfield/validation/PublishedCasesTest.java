package parfield.validation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parfield.photon.Watch;

/**
 * The published cases at a tenth of full precision, in seconds; {@code parfield validate} counts
 * them in full, and docs/VALIDATION.md has its table.
 */
class PublishedCasesTest {
  private static final double COARSE = .03;
  private static final long SEED = 1;

  private static List<Finding> findings;

  @BeforeAll
  static void count() {
    findings = new Validation(COARSE, SEED, 2).run((done, of, name) -> true);
  }

  @Test
  void everyPublishedValueIsHeldAgainstAFigure() {
    assertThat(findings.stream().map(Finding::expected))
        .containsExactlyInAnyOrderElementsOf(PublishedValues.all());
    assertThat(findings).hasSize(Validation.values());
  }

  /**
   * Of some 190 figures, chance puts half a one beyond three standard errors, and one beyond five
   * in ten thousand runs.
   */
  @Test
  void figuresAgreeWithWhatWasPublished() {
    assertThat(findings).noneMatch(finding -> finding.verdict() == Finding.Verdict.OPEN);
    assertThat(findings.stream().filter(finding -> finding.verdict() == Finding.Verdict.DIFFERS))
        .hasSizeLessThanOrEqualTo(3);
    for (Finding finding : findings) {
      double allowed = finding.expected().allowed(finding.standardError() * 5 / 3);
      assertThat(Math.abs(finding.error())).as("%s", finding).isLessThanOrEqualTo(allowed);
    }
  }

  /** Ordinary sizes of scatter: neither too good to be true nor too bad. */
  @Test
  void missesAreAsLargeAsTheStandardErrorsSay() {
    double[] sigmas =
        findings.stream()
            .filter(finding -> finding.expected().kind() == PublishedValue.Tolerance.ROUNDING)
            .filter(finding -> finding.standardError() > 10 * finding.expected().tolerance())
            .mapToDouble(finding -> finding.error() / finding.standardError())
            .toArray();
    assertThat(sigmas).hasSizeGreaterThan(80);
    double square = java.util.Arrays.stream(sigmas).map(z -> z * z).average().orElseThrow();
    assertThat(Math.sqrt(square)).isBetween(.6, 1.5);
  }

  /** A check that cannot fail is none: a coefficient that is off by a few percent must show. */
  @ParameterizedTest
  @CsvSource({"10.5, .75", "10, .73"})
  void aWrongCoefficientDiffers(double absorption, double asymmetry) {
    List<Finding> wrong =
        PublishedCases.matchedSlab("matched slab", absorption, asymmetry)
            .findings(COARSE, SEED, 2, Watch.patient());
    assertThat(wrong).hasSize(2);
    assertThat(wrong).anyMatch(finding -> finding.verdict() == Finding.Verdict.DIFFERS);
  }

  @Test
  void theSameSeedFindsTheSameWhateverTheThreads() {
    PublishedCase slab = PublishedCases.matchedSlab("matched slab", 10, .75);

    List<Finding> one = slab.findings(COARSE, 7, 1, Watch.patient());
    assertThat(slab.findings(COARSE, 7, 3, Watch.patient())).isEqualTo(one);
    assertThat(slab.findings(COARSE, 8, 1, Watch.patient())).isNotEqualTo(one);
  }

  @Test
  void stopsWhenToldToWithWhatWasBegun() {
    List<Finding> begun =
        new Validation(Validation.COARSEST, SEED, 1).run((done, of, name) -> done < 2);
    assertThat(begun.stream().map(f -> f.expected().ofCase()).collect(Collectors.toSet()))
        .containsExactlyInAnyOrder("matched slab", "half-space of index 1.5");
  }

  @Test
  void refusesAPrecisionThatTellsNothing() {
    assertThatThrownBy(() -> new Validation(.2, 1, 1))
        .hasMessage("the precision of a validation lies above 0 and at most at 0.1; got 0.2");
    assertThatThrownBy(() -> new Validation(Double.NaN, 1, 1))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> new Validation(.01, 1, 0))
        .hasMessage("at least one thread must work; got 0");
  }
}
