package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parfield.field.InverseSquareSolver;
import parfield.field.Places;
import parfield.lamp.CosinePower;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.tank.Rectangle;
import parfield.tank.Tank;

class SamplingTest {
  private static final long SEED = Long.getLong("seed", 20_260_104L);
  private static final Tank TANK = Benches.TANK;

  @Test
  void everyExtentIsFilledInsideTheWater() {
    Zone reef = new Zone("reef", new Rectangle(0.1, 0.4, 0.2, 0.5), 0.1, 0.3);
    List<Extent> extents =
        List.of(
            Extent.volume(),
            Extent.plane(0.2),
            Extent.volume().within(reef),
            Extent.plane(0.15).within(reef));
    Sampling sampling = Sampling.of(TANK, extents, 500, 0.3);
    for (int e = 0; e < extents.size(); e++) {
      assertThat(sampling.aLayer(e) % 6).isZero();
      assertThat(sampling.counted(e) % sampling.aLayer(e)).isZero();
      assertThat(sampling.counted(e)).isLessThan(sampling.first(e + 1) - sampling.first(e));
    }
    assertThat(sampling.first(4)).isEqualTo(sampling.places().size());
    for (int i = 0; i < sampling.places().size(); i++) {
      assertThat(TANK.contains(sampling.places().get(i))).isTrue();
      if (i >= sampling.first(2)) {
        assertThat(reef.contains(sampling.places().get(i))).isTrue();
      }
    }
    assertThat(sampling.counted(0)).isBetween(450, 550);
    assertThat(sampling.counted(1)).isBetween(110, 140);
  }

  @Test
  void extremesAreLookedForInTheCornersAndUnderTheFixtures() {
    Sampling sampling = Sampling.of(TANK, List.of(Extent.plane(0.2)), 500, 0.25);
    Places places = sampling.places();
    assertThat(IntStream.range(sampling.counted(0), places.size()).mapToObj(places::get))
        .anyMatch(p -> Math.abs(p.x() - 0.02) < 1e-12 && Math.abs(p.y() - 0.02) < 1e-12)
        .anyMatch(p -> Math.abs(p.x() - 0.88) < 1e-12 && Math.abs(p.y() - 0.58) < 1e-12)
        .anyMatch(p -> Math.abs(p.x() - 0.45) < 1e-12 && p.y() == 0.25);
  }

  /**
   * Against 138,240 cells: root mean square within what the class states, worst within 2.5 points.
   */
  @Test
  void coverageErrsByLessThanAPoint() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int number : new int[] {Planner.SEARCH_PLACES, Planner.FINAL_PLACES}) {
      Sampling sampling = Sampling.of(TANK, List.of(Extent.volume()), number, 0.3);
      double squares = 0;
      double worst = 0;
      int cases = 0;
      for (int trial = 0; trial < 8; trial++) {
        Rig rig =
            random.nextBoolean()
                ? Benches.rig(Benches.fixture(new CosinePower(100, 2)), 1, 0, height(random))
                : Benches.rig(
                    Benches.fixture(new CosinePower(100, 2)),
                    2,
                    0.2 + 0.4 * random.nextDouble(),
                    height(random));
        double[] fine = ppfd(rig, Places.volume(TANK, 72, 48, 40));
        double[] coarse = Arrays.copyOf(ppfd(rig, sampling.places()), sampling.counted(0));
        double mean = Arrays.stream(fine).average().orElseThrow();
        assertThat(Arrays.stream(coarse).average().orElseThrow())
            .as("seed %d, trial %d", SEED, trial)
            .isCloseTo(mean, within(0.004 * mean));
        for (double at : new double[] {0.5, 0.7, 0.9, 1.1, 1.4}) {
          Band band = new Band("any", at * mean / 1.4, at * mean * 1.4);
          double error = share(coarse, band) - share(fine, band);
          squares += error * error;
          worst = Math.max(worst, Math.abs(error));
          cases++;
        }
      }
      assertThat(Math.sqrt(squares / cases))
          .as("seed %d, %d places", SEED, number)
          .isLessThan(0.01);
      assertThat(worst).as("seed %d, %d places", SEED, number).isLessThan(0.025);
    }
  }

  private static double height(SplittableRandom random) {
    return 0.12 + 0.2 * random.nextDouble();
  }

  private static double[] ppfd(Rig rig, Places places) {
    return new InverseSquareSolver().solve(rig, places).ppfd();
  }

  private static double share(double[] ppfd, Band band) {
    return Arrays.stream(ppfd).filter(band::contains).count() / (double) ppfd.length;
  }
}
