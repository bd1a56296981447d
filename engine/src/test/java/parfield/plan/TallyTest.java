package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.field.LightField;
import parfield.field.Places;
import parfield.survey.PlaneStatistics;
import parfield.tank.Tank;

class TallyTest {
  private static final long SEED = Long.getLong("seed", 20_260_103L);

  /** Outer sixths and middle third of so many places along the length. */
  private static byte[] parts(int columns) {
    byte[] parts = new byte[columns];
    for (int i = 0; i < columns; i++) {
      double share = (i + 0.5) / columns;
      boolean end = share < 1.0 / 6 || share > 5.0 / 6;
      boolean centre = share > 1.0 / 3 && share < 2.0 / 3;
      parts[i] = end ? Sampling.END : centre ? Sampling.CENTRE : Sampling.BETWEEN;
    }
    return parts;
  }

  @Test
  void theDefinitionsAreThoseOfSurveys() {
    SplittableRandom random = new SplittableRandom(SEED);
    Tank tank = Benches.TANK;
    for (int trial = 0; trial < 100; trial++) {
      String at = "seed " + SEED + ", trial " + trial;
      int columns = 6 * (1 + random.nextInt(5));
      double[] ppfd = random.doubles(columns).map(u -> 400 * u).toArray();
      PlaneStatistics expected =
          PlaneStatistics.of(
              tank,
              new LightField(Places.plane(tank, 0.2, columns, 1), ppfd),
              List.of(Benches.SOFT, Benches.STONY),
              List.of());
      Tally tally = new Tally(ppfd, parts(columns), List.of(Benches.SOFT, Benches.STONY), 500);
      assertThat(tally.mean).as(at).isCloseTo(expected.statistics().mean(), within(1e-9));
      assertThat(tally.evenness()).as(at).isCloseTo(expected.statistics().evenness(), within(1e-9));
      assertThat(tally.greatest).as(at).isEqualTo(expected.hotSpot().ppfd());
      assertThat(tally.endsToCentre)
          .as(at)
          .isCloseTo(
              expected.statistics().endsToCentre().orElseThrow().ratio().orElseThrow(),
              within(1e-9));
      assertThat(tally.coverage(0)).as(at).isEqualTo(expected.coverageOfPlane().get(0).inside());
      assertThat(tally.coverage(1)).as(at).isEqualTo(expected.coverageOfPlane().get(1).inside());
      assertThat(tally.retention).as(at).isCloseTo(tally.mean / 500, within(1e-12));
    }
  }

  @Test
  void placesThatStandForNoAreaCountForExtremesOnly() {
    double[] ppfd = {100, 100, 100, 100, 100, 100, 10, 400};
    Tally tally = new Tally(ppfd, parts(6), List.of(Benches.SOFT), 100);
    assertThat(tally.mean).isEqualTo(100);
    assertThat(tally.coverage(0)).isEqualTo(1);
    assertThat(tally.evenness()).isEqualTo(0.1);
    assertThat(tally.greatest).isEqualTo(400);
  }

  @Test
  void endsAndCentreMayHoldDifferentNumbersOfPlaces() {
    byte[] parts = {Sampling.END, Sampling.END, Sampling.END, Sampling.BETWEEN, Sampling.CENTRE};
    double[] ppfd = {100, 200, 300, 1000, 400};
    assertThat(new Tally(ppfd, parts, List.of(), 1).endsToCentre).isEqualTo(0.5);
    byte[] noEnds = {Sampling.CENTRE, Sampling.BETWEEN};
    assertThat(new Tally(new double[] {1, 1}, noEnds, List.of(), 1).endsToCentre).isZero();
  }

  @Test
  void darknessHasNoRatios() {
    Tally tally = new Tally(new double[6], parts(6), List.of(Benches.SOFT), 0);
    assertThat(tally.evenness()).isZero();
    assertThat(tally.endsToCentre).isZero();
    assertThat(tally.retention).isZero();
  }
}
