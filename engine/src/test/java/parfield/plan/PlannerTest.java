package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import parfield.field.InverseSquareSolver;
import parfield.fit.LightModel;
import parfield.fit.Truth;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.survey.Band;
import parfield.tank.Rectangle;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/**
 * The planner against closed forms of the inverse-square law: straight under a point of intensity
 * I, E = I / D², D = mounting height + depth in air.
 */
class PlannerTest {
  private static final Planner PLANNER = new Planner(new InverseSquareSolver());
  private static final double PEAK = 60;
  private static final Fixture LAMP = Benches.fixture(new CosinePower(PEAK, 2));

  /** So small that its light is that straight under the lamp, to 1e-4. */
  private static final Zone SPOT =
      new Zone("spot", new Rectangle(0.449, 0.451, 0.299, 0.301), 0.1, 0.3);

  private static final Extent UNDER = Extent.plane(0.2).within(SPOT);

  private static Recommendation recommend(Search search, Demand... demands) {
    return PLANNER.recommend(
        Benches.certain(), Demands.stated(List.of(), List.of(demands)), search);
  }

  @Test
  void retentionFallsWithTheSquareOfTheDistance() {
    Recommendation recommendation =
        recommend(
            Benches.search(LAMP, List.of(0.2, 0.25, 0.3)),
            new Demand.Coverage(Benches.SOFT, 0.9, UNDER));
    for (Option option : recommendation.heightSweep()) {
      double expected = Math.pow(0.4 / (option.height() + 0.2), 2);
      Estimate retention = option.figuresOf(UNDER).retention();
      assertThat(retention.value()).isCloseTo(expected, within(1e-4));
      assertThat(retention.low()).isCloseTo(retention.high(), within(1e-12));
    }
    assertThat(recommendation.heightSweep())
        .extracting(Option::height)
        .containsExactly(0.2, 0.25, 0.3);
    assertThat(recommendation.spacingSweep()).isEmpty();
  }

  /** E at full = 60 / 0.4² = 375; the middle of 75–150 by ratio is √(75 × 150) = 106.07: 28 %. */
  @Test
  void theDialPutsTheLightInTheMiddleOfTheBand() {
    Option best =
        recommend(Benches.search(LAMP, List.of(0.2)), new Demand.Coverage(Benches.SOFT, 0.9, UNDER))
            .best();
    assertThat(best.setting().percent("blue")).isBetween(27.0, 30.0);
    assertThat(best.probability().value()).isEqualTo(1);
    assertThat(best.standing()).isEqualTo(Verdict.Standing.MET);
    assertThat(best.figuresOf(UNDER).mean().value())
        .isCloseTo(375 * best.setting().percent("blue") / 100, within(0.05));
    assertThat(best.over(Benches.TANK).hangings().get(0).setting()).isEqualTo(best.setting());
  }

  @Test
  void twiceTheLightTakesHalfTheDial() {
    Demand demand = new Demand.Coverage(Benches.SOFT, 0.5, Extent.volume());
    Fixture twice = Benches.fixture(new CosinePower(2 * PEAK, 2));
    Search search = Benches.search(LAMP, List.of(0.2));
    double once = recommend(search, demand).best().setting().percent("blue");
    Search brighter = Benches.search(twice, List.of(0.2));
    double half = recommend(brighter, demand).best().setting().percent("blue");
    // Half a percent of rounding either way, doubled, and plateaus of whole percents.
    assertThat(2 * half).isCloseTo(once, within(4.0));
  }

  /**
   * The meter's scale error moves all light together: where the meter shows E, the band 95–105
   * holds for just those draws whose scale lies within 95/E–105/E. The best dial is sought by
   * trying all.
   */
  @Test
  void theMetersScaleErrorIsCarriedIntoTheProbability() {
    List<Truth> draws = new ArrayList<>();
    double[] scales = {0.90, 0.94, 0.97, 1.0, 1.02, 1.03, 1.06, 1.11, 1.0, 0.99};
    for (double scale : scales) {
      draws.add(Benches.truth(PEAK, 2, scale));
    }
    LightModel model = Benches.model(Benches.truth(PEAK, 2, 1), draws);
    Band narrow = new Band("narrow", 95, 105);
    Option best =
        PLANNER
            .recommend(
                model,
                Demands.stated(List.of(), List.of(new Demand.Coverage(narrow, 0.9, UNDER))),
                Benches.search(LAMP, List.of(0.2)))
            .best();
    double shown = 375 * best.setting().percent("blue") / 100;
    long most = 0;
    for (int percent = 1; percent <= 100; percent++) {
      most = Math.max(most, inBand(scales, narrow, 3.75 * percent));
    }
    assertThat(best.probability()).isEqualTo(new Probability((int) most, 10));
    assertThat(best.probability().value()).isEqualTo(inBand(scales, narrow, shown) / 10.0);
    assertThat(best.verdicts().get(0).standing()).isEqualTo(Verdict.Standing.TOO_CLOSE_TO_CALL);
    Estimate mean = best.figuresOf(UNDER).mean();
    assertThat(mean.value()).isCloseTo(shown, within(0.05));
    assertThat(mean.low()).isCloseTo(shown * 0.918, within(0.1));
    assertThat(mean.high()).isCloseTo(shown * 1.0875, within(0.1));
  }

  private static long inBand(double[] scales, Band band, double shown) {
    return Arrays.stream(scales).filter(scale -> band.contains(scale * shown)).count();
  }

  /** Two zones at distances D² in ratio 4 want bands in ratio 4: one dial serves both. */
  @Test
  void severalBandsInTheirZonesAreServedByOneDial() {
    Rectangle middle = new Rectangle(0.449, 0.451, 0.299, 0.301);
    Extent high = Extent.plane(0.05).within(new Zone("high", middle, 0.04, 0.06));
    Extent low = Extent.plane(0.3).within(new Zone("low", middle, 0.29, 0.31));
    Option best =
        recommend(
                Benches.search(LAMP, List.of(0.2)),
                new Demand.Coverage(new Band("stony", 190, 210), 1, high),
                new Demand.Coverage(new Band("soft", 47.5, 52.5), 1, low))
            .best();
    // 60 s / 0.25² = 200 and 60 s / 0.5² = 50: s = 0.2083.
    assertThat(best.setting().percent("blue")).isBetween(20.0, 21.0);
    assertThat(best.probability().value()).isEqualTo(1);
    assertThat(best.figures()).extracting(Figures::extent).contains(high, low, Extent.volume());
  }

  @Test
  void aHotSpotLimitHoldsTheDialBack() {
    Demand limit = new Demand.HotSpot(90, UNDER);
    Option best =
        recommend(
                Benches.search(LAMP, List.of(0.2)),
                new Demand.Coverage(Benches.SOFT, 0.9, UNDER),
                limit)
            .best();
    assertThat(best.figuresOf(UNDER).hotSpot().value()).isBetween(75.0, 90.0);
    assertThat(best.probability().value()).isEqualTo(1);
  }

  @Test
  void aSecondFixtureMustEarnItsKeep() {
    Search search = Benches.search(LAMP, List.of(0.2)).withCounts(List.of(1, 2));
    Option easy = recommend(search, new Demand.Coverage(Benches.SOFT, 0.9, UNDER)).best();
    assertThat(easy.arrangement().count()).isEqualTo(1);
    Recommendation wide = recommend(search, new Demand.EndsToCentre(0.75, Extent.plane(0.2)));
    assertThat(wide.best().arrangement().count()).isEqualTo(2);
    assertThat(wide.options()).extracting(o -> o.arrangement().count()).contains(1, 2);
    assertThat(wide.spacingSweep()).hasSize(7);
    assertThat(wide.spacingSweep())
        .extracting(Option::arrangement)
        .contains(wide.best().arrangement());
    List<Double> ratios =
        wide.spacingSweep().stream()
            .map(o -> o.figuresOf(Extent.plane(0.2)).endsToCentre().value())
            .toList();
    assertThat(ratios).isSorted();
    assertThat(wide.closestCustomarySpacing().orElseThrow().arrangement().spacing())
        .isEqualTo(
            wide.spacingSweep().stream()
                .filter(o -> o.figuresOf(Extent.plane(0.2)).endsToCentre().value() >= 0.75)
                .findFirst()
                .orElseThrow()
                .arrangement()
                .spacing());
  }

  @Test
  void aMixIsFreedOnlyWhereThatIsAllowed() {
    Fixture two = Benches.fixture(new CosinePower(60, 40), new CosinePower(60, 1));
    Rectangle middle = new Rectangle(0.449, 0.451, 0.299, 0.301);
    Extent under = Extent.plane(0.2).within(new Zone("under", middle, 0.1, 0.3));
    Extent aside =
        Extent.plane(0.2)
            .within(new Zone("aside", new Rectangle(0.849, 0.851, 0.299, 0.301), 0.1, 0.3));
    // Aside, at 45°, only the wide channel counts: 60 s cos²(45°) / 0.32 = 93.75 s; under the lamp
    // both do, 375 (n + s). Bands about 60 and 300 are met near s = 0.64, n = 0.16 and nowhere
    // else.
    Demand[] demands = {
      new Demand.Coverage(new Band("dim", 57, 63), 1, aside),
      new Demand.Coverage(new Band("bright", 285, 315), 1, under)
    };
    Search kept = Benches.search(two, List.of(0.2));
    assertThat(recommend(kept, demands).best().probability().value()).isZero();
    Option free = recommend(kept.withMix(Mix.FREE), demands).best();
    assertThat(free.probability().value()).isEqualTo(1);
    assertThat(free.setting().percent("violet")).isBetween(61.0, 67.0);
    assertThat(free.setting().percent("blue")).isBetween(9.0, 24.0);
  }

  @Test
  void thePowerIsThatOfTheDialledChannels() {
    Option best =
        recommend(Benches.search(LAMP, List.of(0.2)), new Demand.Coverage(Benches.SOFT, 0.9, UNDER))
            .best();
    assertThat(best.watts()).isEmpty();
    Fixture powered =
        LAMP.withChannels(
            LAMP.channels().stream()
                .map(
                    c ->
                        new Channel(
                            c.name(),
                            c.spectrum(),
                            OptionalDouble.of(50),
                            c.curve(),
                            c.distribution()))
                .toList());
    Option known =
        recommend(
                Benches.search(powered, List.of(0.2)),
                new Demand.Coverage(Benches.SOFT, 0.9, UNDER))
            .best();
    assertThat(known.watts().orElseThrow())
        .isCloseTo(0.5 * known.setting().percent("blue"), within(1e-9));
  }

  @Test
  void figuresNarrowTowardsTheBestEstimateAndStayInOrder() {
    Recommendation recommendation =
        PLANNER.recommend(
            Benches.uncertain(PEAK, 2, 0.1, 40, 7),
            Demands.byCustom(List.of(Benches.SOFT)),
            Benches.search(LAMP, List.of(0.2, 0.3)));
    for (Option option : recommendation.options()) {
      for (Figures figures : option.figures()) {
        for (Estimate e :
            List.of(figures.mean(), figures.hotSpot(), figures.evenness(), figures.retention())) {
          assertThat(e.low()).isLessThanOrEqualTo(e.high());
        }
        assertThat(figures.mean().value()).isBetween(figures.mean().low(), figures.mean().high());
        assertThat(figures.coverageOf(Benches.SOFT).value()).isBetween(0.0, 1.0);
      }
    }
    assertThat(recommendation.options())
        .isSortedAccordingTo(Comparator.comparingDouble((Option o) -> -o.merit()));
    assertThat(recommendation.bandSettings()).hasSize(1);
    assertThat(recommendation.bandSettings().get(0).coverage().value())
        .isGreaterThanOrEqualTo(recommendation.best().coverage() - 0.02);
  }

  @Test
  void theSameInputsGiveTheSameRecommendation() {
    LightModel model = Benches.uncertain(PEAK, 2, 0.1, 20, 11);
    Demands demands = Demands.byCustom(List.of(Benches.SOFT, Benches.STONY));
    Search search = Benches.search(LAMP, List.of(0.2, 0.3)).withCounts(List.of(1, 2));
    Recommendation once = PLANNER.recommend(model, demands, search);
    assertThat(PLANNER.recommend(model, demands, search)).isEqualTo(once);
  }

  @Test
  void progressRisesToTheEndAndKnowsTheBest() {
    List<Progress> told = new ArrayList<>();
    Recommendation recommendation =
        PLANNER.recommend(
            Benches.certain(),
            Demands.byCustom(List.of(Benches.SOFT)),
            Benches.search(LAMP, List.of(0.2, 0.3)),
            told::add,
            () -> false);
    assertThat(told)
        .isSortedAccordingTo(Comparator.comparingDouble(Progress::share))
        .extracting(Progress::evaluated)
        .isSorted();
    assertThat(told.get(told.size() - 1).share()).isEqualTo(1);
    assertThat(told.get(told.size() - 1).best()).isEqualTo(recommendation.best());
    assertThat(recommendation.complete()).isTrue();
  }

  @Test
  void cancellingKeepsTheBestSoFar() {
    for (int after : new int[] {0, 1, 3, 5, 6, 8}) {
      List<Progress> told = new ArrayList<>();
      Recommendation stopped =
          PLANNER.recommend(
              Benches.certain(),
              Demands.byCustom(List.of(Benches.SOFT)),
              Benches.search(LAMP, List.of(0.2, 0.25, 0.3, 0.35, 0.4)),
              told::add,
              () -> told.size() >= after);
      assertThat(stopped.complete()).isFalse();
      assertThat(stopped.evaluated()).isEqualTo(Math.max(1, after));
      assertThat(stopped.best().merit()).isEqualTo(told.get(told.size() - 1).best().merit());
      assertThat(stopped.nextReadings()).isEmpty();
      assertThat(stopped.assumptions(LengthUnit.CM))
          .contains(
              "The search was stopped after "
                  + Math.max(1, after)
                  + " rigs; a full one may find better.");
    }
  }

  @Test
  void whatWasAssumedIsSaid() {
    Recommendation recommendation =
        PLANNER.recommend(
            Benches.certain(),
            Demands.byCustom(List.of(Benches.SOFT)),
            Benches.search(LAMP, List.of(0.2, 0.3)));
    assertThat(recommendation.assumptions(LengthUnit.CM))
        .containsExactly(
            "No demand was stated; assumed 70 % of the water volume in soft (75–150 µmol m⁻² s⁻¹)"
                + " (common practice, no source).",
            "No demand was stated; assumed that at least 85 % of the lowest height's mean PPFD is"
                + " kept (common practice, no source).",
            "Looked at heights of 20, 30 cm; retention is relative to the lowest of them.",
            "The ratio of the channels was kept as the bench dials it.");
    assertThat(recommendation.greatestCustomaryHeight().orElseThrow().height()).isEqualTo(0.2);
    assertThat(recommendation.best().dials())
        .isEqualTo("blue " + Math.round(recommendation.best().setting().percent("blue")) + " %");
  }

  @Test
  void anOptionReadsAsWhatAPersonDoes() {
    Option option =
        new Option(
            Arrangement.row(Benches.pattern(LAMP), 2, 0.52),
            0.25,
            new Setting(Map.of("blue", 64.0)),
            List.of(),
            List.of(),
            new Probability(96, 96),
            OptionalDouble.empty(),
            0);
    assertThat(option.inWords(LengthUnit.CM))
        .isEqualTo("2 × pendant, 52 cm apart, 25 cm high; blue 64 %");
    assertThat(option.inWords(LengthUnit.INCH))
        .isEqualTo("2 × pendant, 20.5 in apart, 9.8 in high; blue 64 %");
  }
}
