package parfield.answer;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import parfield.Approved;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.Master;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.plan.Arrangement;
import parfield.plan.BandCoverage;
import parfield.plan.BandSetting;
import parfield.plan.Demand;
import parfield.plan.Demands;
import parfield.plan.Extent;
import parfield.plan.Figures;
import parfield.plan.NextReading;
import parfield.plan.Option;
import parfield.plan.Probability;
import parfield.plan.Recommendation;
import parfield.plan.Remedy;
import parfield.plan.Search;
import parfield.plan.Shortfall;
import parfield.plan.Verdict;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.survey.Meter;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/** The wording of recommendations, on figures made up for it. */
class RecommendationAnswerTest {
  private static final Tank TANK = Tank.of(1.0, 0.5, 0.5);
  private static final Band SOFT = new Band("soft", 80, 160);
  private static final Band STONY = new Band("stony", 180, 320);

  private static final Demand.Coverage COVERAGE = new Demand.Coverage(STONY, 0.7, Extent.volume());
  private static final Demand.HotSpot HOT_SPOT = new Demand.HotSpot(600, Extent.plane(0.15));

  private static final Fixture BAR =
      new Fixture(
          "bar",
          0.4,
          0.1,
          List.of(new Emitter(0, 0, 0)),
          List.of(channel("blue", 50), channel("white", 40)),
          List.of(new Master("overall", new TreeSet<>(List.of("blue", "white")))));

  private static Channel channel(String name, double watts) {
    return new Channel(
        name,
        Optional.empty(),
        OptionalDouble.of(watts),
        OutputCurve.proportional(),
        Optional.of(new CosinePower(10, 2)));
  }

  private static Probability of96(double share) {
    return new Probability((int) Math.round(96 * share), 96);
  }

  private static Option option(int count, double height, double stony, double probability) {
    Hanging pattern = Hanging.level(BAR, 0.5, 0.25, height);
    Estimate share = new Estimate(stony, stony - 0.05, stony + 0.03);
    Estimate hot = new Estimate(480, 440, 530);
    Probability counted = of96(probability);
    return new Option(
        count == 1 ? Arrangement.single(pattern) : Arrangement.row(pattern, count, 0.48),
        height,
        new Setting(Map.of("blue", 90.0, "overall", 75.0)),
        List.of(figures(Extent.volume(), share), figures(Extent.plane(0.15), share)),
        List.of(new Verdict(COVERAGE, share, counted), new Verdict(HOT_SPOT, hot, of96(1))),
        counted,
        OptionalDouble.of(count * 60.5),
        probability);
  }

  private static Figures figures(Extent extent, Estimate stony) {
    return new Figures(
        extent,
        new Estimate(257.4, 235.2, 278.6),
        new Estimate(480, 440, 530),
        new Estimate(0.41, 0.39, 0.44),
        new Estimate(0.86, 0.84, 0.88),
        new Estimate(0.9, 0.9, 0.91),
        List.of(
            new BandCoverage(SOFT, new Estimate(0.09, 0.04, 0.14)),
            new BandCoverage(STONY, stony)));
  }

  private static Survey survey() {
    return new Survey(
        "low",
        new Rig("low", TANK, List.of(Hanging.level(BAR, 0.5, 0.25, 0.2))),
        new Meter("probe", 1, true, 0, 0.05, 0.02, 0.005, 1),
        List.of(new Reading(2, new Place(0.5, 0.25, 0.15), 400)));
  }

  private static RecommendationAnswer answer(
      List<Option> options, List<Shortfall> shortfalls, List<Remedy> remedies, boolean complete) {
    Option best = options.get(0);
    Search search = Search.around(List.of(best.over(TANK)), 0.15).withHeights(List.of(0.2, 0.25));
    return new RecommendationAnswer(
        "setup.yaml",
        List.of(survey()),
        List.of("All readings share the meter's scale error of 5.0 %."),
        new Recommendation(
            Demands.stated(List.of(SOFT, STONY), List.of(COVERAGE, HOT_SPOT)),
            search,
            options,
            options,
            complete ? List.of(option(2, 0.2, 0.7, 0.5), option(2, 0.25, 0.78, 0.96)) : List.of(),
            List.of(),
            complete ? bandSettings() : List.of(),
            shortfalls,
            remedies,
            complete
                ? List.of(
                    new NextReading(new Place(0.2, 0.14, 0.25), new Estimate(289, 268, 311), 0.4))
                : List.of(),
            12,
            complete));
  }

  private static List<BandSetting> bandSettings() {
    return List.of(
        new BandSetting(
            SOFT,
            Extent.volume(),
            new Setting(Map.of("overall", 40.0)),
            new Estimate(0.8, 0.75, 0.82)),
        new BandSetting(
            STONY,
            Extent.volume(),
            new Setting(Map.of("overall", 75.0)),
            new Estimate(0.78, 0.73, 0.81)));
  }

  private static RecommendationAnswer met() {
    return answer(
        List.of(option(2, 0.25, 0.78, 0.96), option(1, 0.2, 0.4, 0)), List.of(), List.of(), true);
  }

  private static RecommendationAnswer failed() {
    Option best = option(1, 0.2, 0.4, 0.04);
    return answer(
        List.of(best),
        List.of(new Shortfall(best.verdicts().get(0), option(1, 0.25, 0.5, 0.1))),
        List.of(
            new Remedy(Remedy.Kind.ONE_MORE_FIXTURE, 1, option(2, 0.25, 0.78, 0.96), best),
            new Remedy(Remedy.Kind.WIDER_OPTICS, 1.25, option(1, 0.2, 0.4, 0.04), best)),
        true);
  }

  @Test
  void whatMeetsTheDemands() {
    Approved.check("recommendation-met.txt", met().text(LengthUnit.CM));
  }

  @Test
  void whatFailsADemandWithWhatWouldHelp() {
    Approved.check("recommendation-failed.txt", failed().text(LengthUnit.INCH));
  }

  @Test
  void whatIsTooCloseToCallIsCalledSo() {
    assertThat(
            answer(List.of(option(2, 0.25, 0.71, 0.6)), List.of(), List.of(), true)
                .text(LengthUnit.CM))
        .contains(
            "  All demands together: too close to call (probability 0.60, 0.51–0.69, in 58 of 96 truths)\n");
  }

  @Test
  void anInterruptedSearchIsCalledSo() {
    assertThat(
            answer(List.of(option(2, 0.25, 0.78, 0.96)), List.of(), List.of(), false)
                .text(LengthUnit.CM))
        .contains("Interrupted: this is the best found so far, by coarse figures.\n")
        .contains("The search was stopped after 12 rigs");
  }

  @Test
  void jsonHoldsTheSame() {
    Approved.check("recommendation-failed.json", Json.text(failed().json()));
  }

  @Test
  void thereAreCautionsAndNoVerdictOfSafety() {
    for (RecommendationAnswer answer : List.of(met(), failed())) {
      for (String text : List.of(answer.text(LengthUnit.CM), Json.text(answer.json()))) {
        assertThat(text.toLowerCase(Locale.ROOT)).doesNotContain("safe").contains("caution");
      }
    }
  }
}
