package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.lamp.CosinePower;
import parfield.lamp.Setting;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

class VerdictTest {
  private static final Demand COVERAGE = new Demand.Coverage(Benches.SOFT, 0.7, Extent.volume());

  @Test
  void thresholdsSeparateMetFailedAndTooClose() {
    Estimate value = new Estimate(0.72, 0.68, 0.75);
    assertThat(new Verdict(COVERAGE, value, new Probability(90, 100)).standing())
        .isEqualTo(Verdict.Standing.MET);
    assertThat(new Verdict(COVERAGE, value, new Probability(89, 100)).standing())
        .isEqualTo(Verdict.Standing.TOO_CLOSE_TO_CALL);
    assertThat(new Verdict(COVERAGE, value, new Probability(10, 100)).standing())
        .isEqualTo(Verdict.Standing.FAILED);
  }

  @Test
  void verdictsReadAsSentences() {
    assertThat(
            new Verdict(COVERAGE, new Estimate(0.72, 0.68, 0.753), new Probability(93, 100))
                .inWords(LengthUnit.CM))
        .isEqualTo(
            "at least 70 % of the water volume in soft (75–150 µmol m⁻² s⁻¹): met (probability"
                + " 0.93), 72.0 % (68.0–75.3 %)");
    assertThat(
            new Verdict(
                    new Demand.HotSpot(500, Extent.plane(0.1)),
                    new Estimate(512, 470, 555),
                    new Probability(40, 100))
                .inWords(LengthUnit.INCH))
        .isEqualTo(
            "no place of the plane 3.9 in deep above 500 µmol m⁻² s⁻¹: too close to call"
                + " (probability 0.40), 512 (470–555) µmol m⁻² s⁻¹");
    assertThat(
            new Verdict(
                    new Demand.Evenness(0.5, Extent.plane(0.1)),
                    new Estimate(0.412, 0.39, 0.43),
                    new Probability(0, 96))
                .inWords(LengthUnit.CM))
        .isEqualTo(
            "evenness U₀ of the plane 10 cm deep at least 0.5: failed (probability < 0.04), 0.41"
                + " (0.39–0.43)");
  }

  @Test
  void aDemandIsMetAtItsLimit() {
    Demand mean = new Demand.MeanPpfd(100, 200, Extent.volume());
    assertThat(mean.metBy(100)).isTrue();
    assertThat(mean.metBy(200)).isTrue();
    assertThat(mean.metBy(200.1)).isFalse();
    assertThat(mean.metBy(Double.NaN)).isFalse();
    assertThat(new Demand.HotSpot(500, Extent.volume()).metBy(0)).isTrue();
    assertThat(new Demand.EndsToCentre(0.75, Extent.volume()).metBy(0.74)).isFalse();
  }

  @Test
  void aPartlyMetDemandCountsByItsRatio() {
    assertThat(Merit.part(0.35, 0.7, Double.POSITIVE_INFINITY)).isEqualTo(0.5);
    assertThat(Merit.part(0.8, 0.7, Double.POSITIVE_INFINITY)).isEqualTo(1);
    assertThat(Merit.part(1000, 0, 500)).isEqualTo(0.5);
    assertThat(Merit.part(0, 0, 500)).isEqualTo(1);
  }

  @Test
  void aShortfallSaysByHowMuchAndWhatElseCouldBe() {
    Verdict failed =
        new Verdict(COVERAGE, new Estimate(0.612, 0.58, 0.64), new Probability(5, 100));
    Option alone = option(0.9, 0.5, 0.6, 1, 0.95);
    Shortfall shortfall = new Shortfall(failed, alone);
    assertThat(shortfall.missing()).isCloseTo(0.088, within(1e-12));
    assertThat(shortfall.inWords(LengthUnit.CM))
        .isEqualTo(
            "At least 70 % of the water volume in soft (75–150 µmol m⁻² s⁻¹): failed. The"
                + " recommended option reaches 61.2 % (58.0–64.0 %), 8.8 points off. If nothing"
                + " else were asked it would be met, 90.0 % (90.0–90.0 %): 1 × pendant, 25 cm high;"
                + " blue 64 %; at the cost of mean PPFD of the water volume at least 85 % of that at"
                + " the lowest height, 50.0 % (50.0–50.0 %).");
  }

  @Test
  void theTradeOffHoldsWhatNothingBeats() {
    Option coverage = option(0.9, 0.5, 0.3, 1, 1);
    Option retention = option(0.5, 1.0, 0.3, 1, 1);
    Option nearlyCoverage = option(0.89, 0.51, 0.31, 1, 1);
    Option beaten = option(0.5, 0.9, 0.2, 1, 1);
    Option evenWithTwo = option(0.9, 0.5, 0.6, 2, 1);
    assertThat(TradeOff.front(List.of(coverage, nearlyCoverage, beaten, retention, evenWithTwo), 0))
        .containsExactly(coverage, evenWithTwo, retention);
  }

  @Test
  void noOptionOfATradeOffBeatsAnother() {
    long seed = Long.getLong("seed", 20_260_106L);
    SplittableRandom random = new SplittableRandom(seed);
    List<Option> options = new ArrayList<>();
    for (int i = 0; i < 200; i++) {
      options.add(
          option(
              random.nextDouble(),
              random.nextDouble(),
              random.nextDouble(),
              1 + random.nextInt(3),
              1));
    }
    List<Option> front = TradeOff.front(options, 0);
    assertThat(front).isNotEmpty();
    for (Option a : front) {
      assertThat(options).as("seed %d", seed).noneMatch(b -> beats(b, a));
    }
  }

  private static boolean beats(Option b, Option a) {
    Figures ofA = a.figures().get(0);
    Figures ofB = b.figures().get(0);
    return b.coverage() > a.coverage()
        && ofB.retention().value() > ofA.retention().value()
        && ofB.evenness().value() > ofA.evenness().value()
        && b.arrangement().count() <= a.arrangement().count();
  }

  private static Probability percent(double share) {
    return new Probability((int) Math.round(100 * share), 100);
  }

  private static Option option(
      double coverage, double retention, double evenness, int count, double probability) {
    Arrangement arrangement =
        new Arrangement(
            Benches.pattern(Benches.fixture(new CosinePower(60, 2))),
            count,
            Layout.ROW,
            count == 1 ? 0 : 0.3);
    Demand keep = new Demand.Retention(0.85, Extent.volume());
    return new Option(
        arrangement,
        0.25,
        new Setting(Map.of("blue", 64.0)),
        List.of(
            new Figures(
                Extent.volume(),
                Estimate.exact(100),
                Estimate.exact(200),
                Estimate.exact(evenness),
                Estimate.exact(0.8),
                Estimate.exact(retention),
                List.of(new BandCoverage(Benches.SOFT, Estimate.exact(coverage))))),
        List.of(
            new Verdict(COVERAGE, Estimate.exact(coverage), percent(probability)),
            new Verdict(keep, Estimate.exact(retention), percent(retention >= 0.85 ? 1 : 0))),
        percent(0),
        OptionalDouble.empty(),
        0);
  }

  @Test
  void unknownExtentsAndBandsAreRefused() {
    Option option = option(0.9, 0.5, 0.3, 1, 1);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> option.figuresOf(Extent.plane(0.2)))
        .withMessage("the plan did not look at the plane 20 cm deep");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> option.figuresOf(Extent.volume()).coverageOf(Benches.STONY))
        .withMessage("the plan reports on bands [soft], not on stony");
  }
}
