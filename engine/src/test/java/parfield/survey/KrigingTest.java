package parfield.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

class KrigingTest {
  private static final Tank TANK = Tank.of(0.9, 0.6, 0.5);
  private static final List<Place> PLACES =
      GridPlan.of(TANK, List.of(0.15, 0.3), LengthUnit.CM).places();

  /** A smooth hump, wider with depth. */
  private static double hump(Place place) {
    double r2 = Math.pow(place.x() - 0.45, 2) + Math.pow(place.y() - 0.3, 2);
    return -r2 / (0.05 + 0.2 * place.depth());
  }

  private static double[] humps(List<Place> places) {
    return places.stream().mapToDouble(KrigingTest::hump).toArray();
  }

  @Test
  void aSmoothFieldIsExpectedWhereItIsNotRead() {
    Kriging.Fit fit = new Kriging(PLACES, TANK).fit(humps(PLACES));
    for (int i = 0; i < PLACES.size(); i++) {
      // The hump falls by 2; a symmetric grid 15 cm wide tells it to a tenth of that everywhere.
      assertThat(fit.expected(new int[] {i})[0])
          .as("at %s", PLACES.get(i))
          .isCloseTo(hump(PLACES.get(i)), within(0.2));
    }
  }

  @Test
  void whatIsExpectedDoesNotDependOnWhatIsReadThere() {
    double[] values = humps(PLACES);
    int[] at = {3, 4, 17};
    Kriging kriging = new Kriging(PLACES, TANK);
    Kriging.Fit fit = kriging.fit(values);
    double[] others = values.clone();
    for (int i : at) {
      others[i] += 1e-6; // too little to move the parameters
    }
    Kriging.Fit moved = kriging.fit(others, fit);
    for (int k = 0; k < at.length; k++) {
      assertThat(moved.expected(at)[k]).isCloseTo(fit.expected(at)[k], within(1e-9));
    }
  }

  @Test
  void theLikeliestValueIsTheExpectedOne() {
    double[] values = humps(PLACES);
    SplittableRandom random = new SplittableRandom(5);
    for (int i = 0; i < values.length; i++) {
      values[i] += 0.05 * random.nextGaussian();
    }
    Kriging.Fit fit = new Kriging(PLACES, TANK).fit(values);
    int[] both = {7, 20};
    assertThat(fit.gain(both, new double[] {values[7], values[20]})).isCloseTo(0, within(1e-9));
    double expected = fit.expected(new int[] {7})[0];
    double best = fit.gain(new int[] {7}, new double[] {expected});
    for (double step : new double[] {-0.1, -0.01, 0.01, 0.1}) {
      assertThat(fit.gain(new int[] {7}, new double[] {expected + step})).isLessThan(best);
    }
    assertThat(fit.conditional(new int[] {20, 7})).isCloseTo(fit.conditional(both), within(1e-9));
  }

  @Test
  void conditionalDensityIntegratesToOne() {
    List<Place> few = new ArrayList<>(PLACES.subList(0, 20));
    double[] values = humps(few);
    Kriging kriging = new Kriging(few, TANK);
    Kriging.Fit fit = kriging.fit(values);
    int[] at = {9};
    double centre = fit.expected(at)[0];
    double here = fit.conditional(at);
    // p(v) = p(value) exp(gain of v): trapezoid over ± 3, far into the tails of the Student law.
    double step = 1e-4;
    double integral =
        IntStream.rangeClosed(-30_000, 30_000)
            .mapToDouble(
                k -> Math.exp(here + fit.gain(at, new double[] {centre + k * step})) * step)
            .sum();
    assertThat(integral).isCloseTo(1, within(1e-3));
  }
}
