package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Box;
import parfield.aquascape.Rock;
import parfield.field.InverseSquareSolver;
import parfield.field.Places;
import parfield.lamp.CosinePower;
import parfield.optics.Reflectance;
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
      assertThat(sampling.counted(e) % 6).isZero();
      assertThat(part(sampling, e, Sampling.END)).isEqualTo(sampling.counted(e) / 3);
      assertThat(part(sampling, e, Sampling.CENTRE)).isEqualTo(sampling.counted(e) / 3);
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

  private static long part(Sampling sampling, int extent, byte part) {
    byte[] parts = sampling.parts(extent);
    return IntStream.range(0, parts.length).filter(i -> parts[i] == part).count();
  }

  @Test
  void placesInRockAreLeftOutAndTheLivingSurfaceIsLookedAt() {
    // The middle third of the plan, in the lower half of the water.
    Box block =
        new Box(
            TANK.length() / 2,
            TANK.width() / 2,
            TANK.depth() * 0.75,
            TANK.length() / 3,
            2,
            TANK.depth() / 2,
            0);
    Tank rocky =
        TANK.withAquascape(Aquascape.of(List.of(new Rock("block", block, Reflectance.gray(0.1)))));
    Zone right =
        new Zone("right", new Rectangle(0.75 * TANK.length(), TANK.length(), 0, 0.6), 0.3, 0.5);
    List<Extent> extents =
        List.of(
            Extent.volume(),
            Extent.plane(0.9 * TANK.depth()),
            Extent.livingSurface(),
            Extent.livingSurface().within(right));
    Sampling sampling = Sampling.of(rocky, extents, 500, 0.3);
    Sampling clear = Sampling.of(TANK, extents.subList(0, 2), 500, 0.3);
    sampling.places().requireInWater(rocky);
    // A sixth of the volume and a third of the plane are rock.
    assertThat(sampling.counted(0) / (double) clear.counted(0)).isCloseTo(5.0 / 6, within(0.02));
    assertThat(sampling.counted(1) / (double) clear.counted(1)).isCloseTo(2.0 / 3, within(0.02));
    assertThat(part(sampling, 1, Sampling.CENTRE)).isZero();
    assertThat(part(sampling, 1, Sampling.END)).isEqualTo(part(clear, 1, Sampling.END));
    // Of the living surface a third is the block's top and two thirds bottom; the rest of the
    // places would stand on the bottom under the block.
    int living = sampling.first(2);
    assertThat(
            IntStream.range(living, living + sampling.counted(2))
                .filter(i -> sampling.places().depth(i) < 0.3)
                .count())
        .isCloseTo(sampling.counted(2) / 3, within(4L));
    assertThat(sampling.counted(3)).isBetween(60, 500);
    for (int i = sampling.first(3); i < sampling.first(4); i++) {
      assertThat(right.contains(sampling.places().get(i))).isTrue();
    }
    assertThat(part(sampling, 3, Sampling.END)).isPositive();
  }

  @Test
  void anExtentWithoutWaterIsRefused() {
    Tank filled =
        TANK.withAquascape(
            Aquascape.of(
                List.of(
                    new Rock(
                        "block", new Box(0.4, 0.3, 0.5, 3, 3, 0.5, 0), Reflectance.gray(0.1)))));
    assertThatThrownBy(() -> Sampling.of(filled, List.of(Extent.plane(0.3)), 500, 0.3))
        .hasMessage(
            "the plane 30 cm deep holds no water: rocks fill it; choose another one, or leave the"
                + " demand out");
    Zone open = new Zone("open", new Rectangle(0, 0.9, 0, 0.6), 0.05, 0.1);
    assertThatThrownBy(
            () -> Sampling.of(filled, List.of(Extent.livingSurface().within(open)), 500, 0.3))
        .hasMessage(
            "the living surface of zone open holds no surface that coral could live on; choose"
                + " another one, or leave the demand out");
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
