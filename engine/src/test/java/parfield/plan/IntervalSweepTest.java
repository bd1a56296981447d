package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.plan.IntervalSweep.Group;
import parfield.plan.IntervalSweep.Plateau;

class IntervalSweepTest {
  private static final long SEED = Long.getLong("seed", 20_260_101L);
  private static final double FREE = Double.POSITIVE_INFINITY;

  /** Intervals by hand: [1, 2], [0.5, 1], [0.25, 0.5]: at 1 the first two meet, at 0.5 the last. */
  @Test
  void closedIntervalsMeetAtTheirEnds() {
    double[] light = {100, 200, 400};
    Plateau plateau = IntervalSweep.deepest(Group.of(light, 100, 200), FREE);
    assertThat(plateau.merit()).isEqualTo(2.0 / 3);
    assertThat(plateau.from()).isEqualTo(0.5);
    assertThat(plateau.to()).isEqualTo(0.5);
  }

  /**
   * Light in equal steps from a to b, band [lo, hi] with hi/lo = b/a: every place is in band for
   * exactly one scale, lo/a = hi/b.
   */
  @Test
  void aBandAsWideAsTheLightHoldsAllOfItAtOneScale() {
    double[] light = {64, 70, 96, 111, 128};
    Plateau plateau = IntervalSweep.deepest(Group.of(light, 32, 64), FREE);
    assertThat(plateau.merit()).isEqualTo(1);
    assertThat(plateau.middle()).isEqualTo(0.5);
  }

  @Test
  void theMiddleIsEquallyFarFromBothEndsByRatio() {
    Plateau plateau = IntervalSweep.deepest(Group.of(new double[] {100}, 25, 400), FREE);
    assertThat(plateau.from()).isEqualTo(0.25);
    assertThat(plateau.to()).isEqualTo(4);
    assertThat(plateau.middle()).isEqualTo(1);
    Plateau capped = IntervalSweep.deepest(Group.of(new double[] {100}, 25, 400), 1);
    assertThat(capped.to()).isEqualTo(1);
    assertThat(capped.middle()).isEqualTo(0.5);
    Plateau fromDark = IntervalSweep.deepest(Group.of(new double[] {100}, 0, 400), FREE);
    assertThat(fromDark.middle()).isEqualTo(2);
  }

  @Test
  void weightsDecideWhereNumbersWouldNot() {
    double[] light = {10, 10, 10, 100};
    double[] none = new double[4];
    Group heavy = Group.of(none, light, new double[] {1, 1, 1, 5}, 50, 100);
    assertThat(IntervalSweep.deepest(heavy, FREE).merit()).isEqualTo(5.0 / 8);
    assertThat(IntervalSweep.deepest(heavy, FREE).to()).isEqualTo(1);
    assertThat(IntervalSweep.deepest(Group.of(light, 50, 100), FREE).merit()).isEqualTo(3.0 / 4);
  }

  @Test
  void aDarkFieldHasNothingInBand() {
    Plateau plateau = IntervalSweep.deepest(Group.of(new double[] {0, 0}, 50, 100), 1);
    assertThat(plateau).isEqualTo(new Plateau(0, 1, 0));
    Plateau all = IntervalSweep.deepest(Group.of(new double[] {0, 0}, 0, 100), 1);
    assertThat(all.merit()).isEqualTo(1);
  }

  @Test
  void aLimitBoundsTheScale() {
    double[] light = {100, 150, 300};
    Group band = Group.of(light, 100, 200);
    Group limit = Group.limit(new double[3], light, 240);
    Plateau plateau = IntervalSweep.best(List.of(band, limit), s -> s[0] + 10 * s[1], FREE);
    assertThat(plateau.to()).isEqualTo(2.0 / 3);
    assertThat(plateau.merit()).isEqualTo(10 + 2.0 / 3);
    assertThat(plateau.from()).isEqualTo(2.0 / 3);
  }

  @Test
  void refusesAnEmptyRangeOfScales() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> IntervalSweep.deepest(Group.of(new double[] {1}, 1, 2), 0))
        .withMessage("scales must be searched up to more than 0; got 0.0");
  }

  /** 1,000 random cases: no scale of a fine grid beats the sweep, and the sweep keeps its word. */
  @Test
  void bruteForceNeverBeatsTheSweep() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int trial = 0; trial < 1000; trial++) {
      String at = "seed " + SEED + ", trial " + trial;
      int groups = 1 + random.nextInt(3);
      Case c = new Case(random, groups);
      double upTo = random.nextInt(3) == 0 ? 1.0 : FREE;
      Plateau plateau = IntervalSweep.best(c.groups, c::merit, upTo);
      assertThat(c.meritAt(inside(plateau))).as(at).isCloseTo(plateau.merit(), within(1e-12));
      double brute = 0;
      for (int k = 0; k <= 2000; k++) {
        double scale = Double.isInfinite(upTo) ? Math.exp(-7 + 14.0 * k / 2000) : k / 2000.0;
        brute = Math.max(brute, c.meritAt(scale));
      }
      assertThat(plateau.merit()).as(at).isGreaterThanOrEqualTo(brute - 1e-12);
      assertThat(plateau.to()).as(at).isLessThanOrEqualTo(upTo);
    }
  }

  @Test
  void permutingPlacesChangesNothing() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int trial = 0; trial < 200; trial++) {
      double[] light = lights(random, 1 + random.nextInt(60));
      double[] shuffled = light.clone();
      for (int i = shuffled.length - 1; i > 0; i--) {
        int j = random.nextInt(i + 1);
        double swap = shuffled[i];
        shuffled[i] = shuffled[j];
        shuffled[j] = swap;
      }
      assertThat(IntervalSweep.deepest(Group.of(shuffled, 75, 150), FREE))
          .as("seed %d, trial %d", SEED, trial)
          .isEqualTo(IntervalSweep.deepest(Group.of(light, 75, 150), FREE));
    }
  }

  @Test
  void moreLightDividesTheScale() {
    SplittableRandom random = new SplittableRandom(SEED);
    for (int trial = 0; trial < 200; trial++) {
      double[] light = lights(random, 1 + random.nextInt(60));
      // A power of two, so that products round alike.
      double[] brighter = Arrays.stream(light).map(p -> 8 * p).toArray();
      Plateau plateau = IntervalSweep.deepest(Group.of(light, 75, 150), FREE);
      Plateau scaled = IntervalSweep.deepest(Group.of(brighter, 75, 150), FREE);
      String at = "seed " + SEED + ", trial " + trial;
      assertThat(scaled.merit()).as(at).isEqualTo(plateau.merit());
      assertThat(scaled.middle()).as(at).isCloseTo(plateau.middle() / 8, within(1e-12));
    }
  }

  private static double inside(Plateau plateau) {
    return plateau.from() == plateau.to() ? plateau.from() : plateau.middle();
  }

  private static double[] lights(SplittableRandom random, int n) {
    return random.doubles(n).map(u -> Math.exp(2 + 5 * u)).toArray();
  }

  /** Random places in random bands over some background, judged by plain counting. */
  private static final class Case {
    final List<Group> groups;
    private final double[][] background;
    private final double[][] light;
    private final double[][] weight;
    private final double[] from;
    private final double[] to;

    Case(SplittableRandom random, int count) {
      background = new double[count][];
      light = new double[count][];
      weight = new double[count][];
      from = new double[count];
      to = new double[count];
      Group[] made = new Group[count];
      for (int g = 0; g < count; g++) {
        int n = 1 + random.nextInt(40);
        light[g] = lights(random, n);
        double most = random.nextBoolean() ? 0 : 120;
        background[g] = random.doubles(n).map(u -> most * u).toArray();
        weight[g] = random.doubles(n).map(u -> 1 + Math.floor(4 * u)).toArray();
        from[g] = 200 * random.nextDouble();
        to[g] = from[g] + 1 + 200 * random.nextDouble();
        made[g] = Group.of(background[g], light[g], weight[g], from[g], to[g]);
      }
      groups = List.of(made);
    }

    double merit(double[] shares) {
      double sum = 0;
      for (int g = 0; g < shares.length; g++) {
        sum += Math.min(1, shares[g] / 0.6) + 0.1 * shares[g];
      }
      return sum;
    }

    double meritAt(double scale) {
      double[] shares = new double[light.length];
      for (int g = 0; g < light.length; g++) {
        double all = 0;
        for (int i = 0; i < light[g].length; i++) {
          double ppfd = background[g][i] + scale * light[g][i];
          all += weight[g][i];
          // A place set exactly to the end of its band may round out of it.
          if (ppfd >= from[g] * (1 - 1e-12) && ppfd <= to[g] * (1 + 1e-12)) {
            shares[g] += weight[g][i];
          }
        }
        shares[g] /= all;
      }
      return merit(shares);
    }
  }
}
