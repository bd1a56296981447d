package parfield.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parfield.field.FastSolver;
import parfield.field.Places;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.survey.Meter;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.tank.Tank;
import parfield.tank.Wall;
import parfield.tank.Walls;

/**
 * Figures of the trade, common practice, no source: a test tank of 61 × 61 cm, a fixture with two
 * clusters 24 cm apart, 6 × 6 readings 15 cm deep. Hung 15 cm over the water: centre four 725,
 * outer ring 238, mean 392. Hung 25 cm: centre 494, outer ring 259, mean about 85 % of the first.
 *
 * <p>Only ring means are known, so that 36 readings are made up that have them: a lobe's field,
 * scaled ring by ring (the ring between has 537.7 by subtraction). Depth of the water, bottom and
 * panes are not told either. How much is left at 25 cm hangs on the panes above all: with clean
 * ones the fit predicts 0.90 to 0.91, with painted ones 0.76 to 0.78, and 0.83 to 0.88 for the
 * panes of a tank in use, which are the ones tested here.
 */
class CommonPracticeTest {
  private static final double SIDE = .61;
  private static final double DEPTH = .15;

  /** Means of the rings at 15 cm from the outside in. */
  private static final double[] LOW = {238, (36 * 392 - 20 * 238 - 4 * 725) / 12.0, 725};

  private static int ring(int reading) {
    int column = reading % 6;
    int row = reading / 6;
    return Math.min(Math.min(column, 5 - column), Math.min(row, 5 - row));
  }

  /** Means of the three rings, then of all. */
  private static double[] means(double[] ppfd) {
    double[] sums = new double[4];
    for (int i = 0; i < 36; i++) {
      sums[ring(i)] += ppfd[i];
      sums[3] += ppfd[i];
    }
    return new double[] {sums[0] / 20, sums[1] / 12, sums[2] / 4, sums[3] / 36};
  }

  private static Walls panes(String condition) {
    return switch (condition) {
      case "film, painted back" -> new Walls(Wall.film(), Wall.film(), Wall.film(), Wall.painted());
      case "coralline" -> Walls.all(Wall.coralline());
      case "coralline, front wiped" ->
          new Walls(Wall.coralline(), Wall.coralline(), Wall.film(), Wall.coralline());
      case "clean" -> Walls.all(Wall.clean());
      default -> throw new IllegalArgumentException(condition);
    };
  }

  @ParameterizedTest
  @CsvSource({
    "'film, painted back', 0.45, 80",
    "'film, painted back', 0.45, 120",
    "'coralline', 0.40, 100",
    "'coralline, front wiped', 0.50, 100"
  })
  void aModelFittedAt15CentimetresPredictsTheMeanAt25(String condition, double water, double beam) {
    assertThat(meanAt25(condition, water, beam)).isCloseTo(.85 * 392, within(.04 * .85 * 392));
  }

  /** With panes stated clean the mean comes out 5 to 8 % too high: not within the 4 % hoped for. */
  @ParameterizedTest
  @CsvSource({"0.40, 80", "0.50, 100"})
  void cleanPanesWouldKeepMore(double water, double beam) {
    assertThat(meanAt25("clean", water, beam)).isBetween(1.05 * .85 * 392, 1.08 * .85 * 392);
  }

  private static double meanAt25(String condition, double water, double beam) {
    Tank tank =
        Tank.of(SIDE, SIDE, water)
            .withWalls(panes(condition))
            .withBottomReflectance(.2)
            .withWater(Water.seaWater(.05));
    Fixture lobe =
        new Fixture(
            "two clusters",
            0,
            0,
            List.of(new Emitter(-.12, 0, 0), new Emitter(.12, 0, 0)),
            List.of(Channel.of("white", CosinePower.ofBeamAngle(100, Math.toRadians(beam)))),
            List.of());
    Places grid = Places.plane(tank, DEPTH, 6, 6);
    double[] pattern = new FastSolver().solve(rig(tank, lobe, .15), grid).ppfd();
    double[] plain = means(pattern);
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < 36; i++) {
      readings.add(new Reading(0, grid.get(i), pattern[i] * LOW[ring(i)] / plain[ring(i)]));
    }
    Meter meter = new Meter("probe", 1, true, 0, .05, .02, .005, 1);
    Fixture unknown = SimulatedBench.unknown(lobe);
    Survey survey = new Survey("15 cm", rig(tank, unknown, .15), meter, readings);
    assertThat(means(survey.ppfd())[3]).isCloseTo(392, within(1e-9));

    LightModel model = LightModelFit.with(new FastSolver()).fit(List.of(survey));
    double[] high =
        means(new FastSolver().solve(model.best().applyTo(rig(tank, unknown, .25)), grid).ppfd());
    System.out.printf(
        Locale.ROOT,
        "common practice, no source; panes %s, beam %.0f: at 25 cm centre %.0f (494), outer ring"
            + " %.0f (259), mean %.0f (333), %.3f of that at 15 cm (0.85)%n",
        condition,
        beam,
        high[2],
        high[0],
        high[3],
        high[3] / 392);
    return high[3];
  }

  private static Rig rig(Tank tank, Fixture fixture, double height) {
    return new Rig("test", tank, List.of(Hanging.level(fixture, SIDE / 2, SIDE / 2, height)));
  }
}
