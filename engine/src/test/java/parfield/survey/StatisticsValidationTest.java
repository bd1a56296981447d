package parfield.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import parfield.field.Places;
import parfield.tank.Place;
import parfield.tank.Tank;

/**
 * Mean and standard deviation against the certified values of the NIST Statistical Reference
 * Datasets, univariate summary statistics (data sets and values from memory: they are simple enough
 * to be rebuilt and checked by hand).
 */
class StatisticsValidationTest {
  @Test
  void nistNumAcc1() {
    Statistics statistics = of(new double[] {10_000_001, 10_000_003, 10_000_002});
    assertThat(statistics.mean()).isEqualTo(10_000_002);
    assertThat(deviation(statistics)).isCloseTo(1, within(1e-9));
  }

  @Test
  void nistNumAcc2() {
    assertThat(of(alternating(1.2, 1.1, 1.3)).mean()).isCloseTo(1.2, within(1e-14));
    assertThat(deviation(of(alternating(1.2, 1.1, 1.3)))).isCloseTo(0.1, within(1e-14));
  }

  @Test
  void nistNumAcc3() {
    Statistics statistics = of(alternating(1_000_000.2, 1_000_000.1, 1_000_000.3));
    assertThat(statistics.mean()).isCloseTo(1_000_000.2, within(1e-9));
    // 0.1 at an offset of 1e6: ten of sixteen digits are left.
    assertThat(deviation(statistics)).isCloseTo(0.1, within(1e-9));
  }

  @Test
  void nistNumAcc4() {
    Statistics statistics = of(alternating(10_000_000.2, 10_000_000.1, 10_000_000.3));
    assertThat(statistics.mean()).isCloseTo(10_000_000.2, within(1e-8));
    assertThat(deviation(statistics)).isCloseTo(0.1, within(1e-8));
  }

  @Test
  void commonPracticeTestTank() {
    // Common practice, no source: 61 x 61 cm, 6 x 6 readings; centre four 725, outer ring 238,
    // mean 392. The twelve between them follow: (36 · 392 - 4 · 725 - 20 · 238) / 12.
    double between = (36 * 392 - 4 * 725 - 20 * 238) / 12.0;
    Tank tank = Tank.of(0.61, 0.61, 0.4);
    double[] ppfd = new double[36];
    for (int i = 0; i < 36; i++) {
      int ring = Math.min(Math.min(i % 6, 5 - i % 6), Math.min(i / 6, 5 - i / 6));
      ppfd[i] = ring == 0 ? 238 : ring == 1 ? between : 725;
    }
    Statistics statistics = Statistics.of(tank, Places.plane(tank, 0.15, 6, 6), ppfd, List.of());
    assertThat(statistics.mean()).isCloseTo(392, within(1e-9));
    assertThat(statistics.evenness()).isCloseTo(238 / 392.0, within(1e-12));
    EndsToCentre ends = statistics.endsToCentre().orElseThrow();
    // Columns 1 and 6 are all outer ring; columns 3 and 4 are 238, between, 725, 725, between, 238.
    assertThat(ends.endMean()).isEqualTo(238);
    assertThat(ends.centreMean()).isCloseTo((238 + between + 725) / 3, within(1e-9));
    assertThat(ends.endCount()).isEqualTo(12);
    assertThat(ends.centreCount()).isEqualTo(12);
  }

  private static double[] alternating(double first, double even, double odd) {
    double[] values = new double[1001];
    values[0] = first;
    for (int i = 1; i < values.length; i++) {
      values[i] = i % 2 == 1 ? even : odd;
    }
    return values;
  }

  private static double deviation(Statistics statistics) {
    return statistics.variation() * statistics.mean();
  }

  private static Statistics of(double[] values) {
    List<Place> places = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      places.add(new Place(0.5, 0.3, 0.1));
    }
    return Statistics.of(Tank.of(0.9, 0.6, 0.5), Places.of(places), values, List.of());
  }
}
