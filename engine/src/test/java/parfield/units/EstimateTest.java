package parfield.units;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class EstimateTest {
  /** Quantiles interpolated between order statistics: type 7 of Hyndman and Fan 1996, by hand. */
  @Test
  void intervalSpansFiveToNinetyFivePerCent() {
    double[] sample = IntStream.rangeClosed(0, 100).mapToDouble(i -> 100 - i).toArray();

    assertThat(Estimate.ofSample(42, sample)).isEqualTo(new Estimate(42, 5, 95));
    assertThat(sample[0]).as("the sample is left unchanged").isEqualTo(100);
    assertThat(Estimate.quantile(new double[] {1, 2, 4}, 0.75)).isCloseTo(3, within(1e-15));
    assertThat(Estimate.quantile(new double[] {7}, 0.95)).isEqualTo(7);
  }

  @Test
  void whatIsExactHasNoWidth() {
    assertThat(Estimate.exact(3)).isEqualTo(new Estimate(3, 3, 3));
  }

  @Test
  void quantilesRiseWithProbability() {
    SeededLaw.holds(
        300,
        random -> {
          double[] sample = random.doubles(1 + random.nextInt(50)).sorted().toArray();
          double p = random.nextDouble();
          double q = p + (1 - p) * random.nextDouble();
          assertThat(Estimate.quantile(sample, q))
              .isGreaterThanOrEqualTo(Estimate.quantile(sample, p))
              .isBetween(sample[0], sample[sample.length - 1]);
        });
  }

  @Test
  void refusesWhatIsNoInterval() {
    assertThatThrownBy(() -> new Estimate(1, 2, 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("interval must run from low to high; got low 2.0, high 1.0");
    assertThatThrownBy(() -> new Estimate(1, Double.NaN, 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("interval must run from low to high; got low NaN, high 1.0");
    assertThatThrownBy(() -> new Estimate(Double.NaN, 0, 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("an estimate needs a number; got NaN");
    assertThatThrownBy(() -> Estimate.ofSample(1, new double[0]))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("an interval needs at least one draw; got none");
  }
}
