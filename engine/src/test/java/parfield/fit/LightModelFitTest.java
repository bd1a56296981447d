package parfield.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import parfield.field.FastSolver;
import parfield.field.Places;
import parfield.lamp.CosinePower;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.Setting;
import parfield.rig.Rig;
import parfield.survey.Meter;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.units.Estimate;

/** Fits against simulated benches whose truth is known. */
class LightModelFitTest {
  private static final Setting FULL = Setting.full();

  private static LightModel fit(Survey... surveys) {
    return LightModelFit.with(new FastSolver()).fit(List.of(surveys));
  }

  private static Survey one(SimulatedBench bench, double height) {
    return bench.survey(
        "one", SimulatedBench.oval(), SimulatedBench.METER, height, FULL, 6, 4, .15, .35);
  }

  private static double[] best(
      SimulatedBench bench, LightModel model, Fixture lamp, Setting dials) {
    Rig rig = model.best().applyTo(bench.statedRig(lamp, .22, dials));
    return new FastSolver().solve(rig, Places.of(bench.centres(9, 6, .25))).ppfd();
  }

  private static double farthest(double[] a, double[] b) {
    double farthest = 0;
    for (int i = 0; i < a.length; i++) {
      farthest = Math.max(farthest, Math.abs(a[i] / b[i] - 1));
    }
    return farthest;
  }

  /**
   * Eight benches, 72 places each at a height that was not read: nine in ten of the true values lie
   * in the 5–95 % intervals.
   *
   * <p>The places of one bench err together, so that the sample is one of eight: the shares inside
   * scatter by .07 from bench to bench, their mean by .025. It must lie within three of these
   * standard errors of .90 (significance .003). X
   */
  @Test
  void intervalsHoldNineTenthsOfTheTruth() {
    int inside = 0;
    int all = 0;
    List<Double> errors = new ArrayList<>();
    Fixture lamp = SimulatedBench.oval();
    for (long seed = 1; seed <= 8; seed++) {
      SimulatedBench bench = SimulatedBench.worn(seed);
      FastSolver solver = new FastSolver();
      LightModel model =
          LightModelFit.with(solver)
              .fit(
                  List.of(
                      bench.survey("low", lamp, SimulatedBench.METER, .15, FULL, 4, 4, .15, .35),
                      bench.survey("high", lamp, SimulatedBench.METER, .30, FULL, 4, 4, .15, .35)));
      List<Place> places = new ArrayList<>();
      for (double depth : new double[] {.1, .25, .4}) {
        places.addAll(bench.centres(6, 4, depth));
      }
      double[] truth = bench.truth(lamp, .22, FULL, places, true);
      Estimate[] estimates =
          model.predict(solver, bench.statedRig(lamp, .22, FULL), Places.of(places)).asShown();
      for (int i = 0; i < truth.length; i++) {
        inside += truth[i] >= estimates[i].low() && truth[i] <= estimates[i].high() ? 1 : 0;
        all++;
        errors.add(Math.abs(estimates[i].value() / truth[i] - 1));
      }
    }
    Collections.sort(errors);
    assertThat((double) inside / all).as("%d of %d", inside, all).isBetween(.825, .975);
    assertThat(errors.get(errors.size() / 2)).as("median error").isLessThan(.03);
    assertThat(errors.get(errors.size() * 9 / 10)).as("90th percentile").isLessThan(.08);
  }

  @Test
  void theOrderOfReadingsAndSurveysChangesNothing() {
    SimulatedBench bench = SimulatedBench.worn(3);
    Survey low =
        bench.survey("low", SimulatedBench.oval(), SimulatedBench.METER, .15, FULL, 4, 4, .15, .35);
    Survey high =
        bench.survey("high", SimulatedBench.oval(), SimulatedBench.METER, .3, FULL, 4, 4, .25);
    double[] straight = best(bench, fit(low, high), SimulatedBench.oval(), FULL);
    double[] shuffled =
        best(bench, fit(shuffled(high), shuffled(low)), SimulatedBench.oval(), FULL);
    assertThat(farthest(shuffled, straight)).isLessThan(1e-9);
  }

  private static Survey shuffled(Survey survey) {
    List<Reading> readings = new ArrayList<>(survey.readings());
    Collections.shuffle(readings, new Random(8));
    return survey.withReadings(readings);
  }

  /** The same readings give the same model, draws and all. */
  @Test
  void isTheSameEveryTime() {
    SimulatedBench bench = SimulatedBench.worn(4);
    Survey survey = one(bench, .15);
    LightModel first = fit(survey);
    LightModel second = fit(survey);
    Rig rig = bench.statedRig(SimulatedBench.oval(), .22, FULL);
    Places places = Places.of(bench.centres(3, 2, .2));
    double[] a = first.predict(new FastSolver(), rig, places).draw(7);
    double[] b = second.predict(new FastSolver(), rig, places).draw(7);
    assertThat(b).isEqualTo(a);
    assertThat(second.report().statements()).isEqualTo(first.report().statements());
  }

  /** A slip of a decimal at one place moves the field by less than 2 % and is named. */
  @Test
  void aSlipOfADecimalIsNamedAndDoesNotMoveTheField() {
    SimulatedBench bench = SimulatedBench.worn(5);
    Survey clean = one(bench, .15);
    double[] expected = best(bench, fit(clean), SimulatedBench.oval(), FULL);
    for (int slip : new int[] {0, 21}) {
      List<Reading> readings = new ArrayList<>(clean.readings());
      Reading was = readings.get(slip);
      readings.set(slip, new Reading(was.line(), was.place(), 10 * was.value()));
      LightModel model = fit(clean.withReadings(readings));
      assertThat(farthest(best(bench, model, SimulatedBench.oval(), FULL), expected))
          .as("reading %d times ten", slip)
          .isLessThan(.02);
      assertThat(
              model.report().residuals().stream()
                  .filter(residual -> !residual.suspicion().isEmpty())
                  .map(FitReport.Residual::index))
          .containsExactly(slip);
    }
  }

  /** Two channels of different optics, each read alone once: each is found by itself. */
  @Test
  void channelsAreToldApartWhereTheSurveysAllowIt() {
    SimulatedBench bench = SimulatedBench.worn(6);
    Fixture lamp = twoChannels();
    LightModel model =
        fit(
            bench.survey(
                "both",
                lamp,
                SimulatedBench.METER,
                .15,
                SimulatedBench.dials(100, 100),
                6,
                4,
                .15,
                .35),
            bench.survey(
                "violet",
                lamp,
                SimulatedBench.METER,
                .15,
                SimulatedBench.dials(0, 100),
                6,
                4,
                .15));
    for (Setting dials : List.of(SimulatedBench.dials(100, 0), SimulatedBench.dials(0, 100))) {
      double[] truth = bench.truth(lamp, .22, dials, bench.centres(9, 6, .25), false);
      double[] errors = best(bench, model, lamp, dials);
      for (int i = 0; i < errors.length; i++) {
        errors[i] = Math.abs(errors[i] / truth[i] - 1);
      }
      Arrays.sort(errors);
      assertThat(errors[errors.length / 2]).as("%s", dials).isLessThan(.05);
    }
    assertThat(model.report().statements())
        .noneMatch(statement -> statement.contains("only ever lit in one ratio"))
        .anyMatch(statement -> statement.startsWith("Fixture pendant, blue: 98 % of the light"))
        .anyMatch(statement -> statement.startsWith("Fixture pendant, violet: 98 % of the light"));
  }

  private static Fixture twoChannels() {
    return SimulatedBench.fixture(
        List.of(
            SimulatedBench.channel("blue", 450, Optional.of(SimulatedBench.OVAL)),
            SimulatedBench.channel("violet", 415, Optional.of(new CosinePower(40, 1.2)))));
  }

  @Test
  void saysWhereChannelsCannotBeToldApart() {
    SimulatedBench bench = SimulatedBench.worn(7);
    LightModel model =
        fit(
            bench.survey(
                "both",
                twoChannels(),
                SimulatedBench.METER,
                .15,
                SimulatedBench.dials(100, 50),
                6,
                4,
                .2));
    assertThat(model.report().statements())
        .contains(
            "Fixture pendant: channels blue + violet were only ever lit in one ratio, so the"
                + " readings cannot tell them apart; they are shared out by watts. Other ratios are"
                + " guesses until a plane is read with one of them alone.");
  }

  @Test
  void saysWhichChannelWasNeverLit() {
    SimulatedBench bench = SimulatedBench.worn(8);
    LightModel model =
        fit(
            bench.survey(
                "blue",
                twoChannels(),
                SimulatedBench.METER,
                .15,
                SimulatedBench.dials(100, 0),
                6,
                4,
                .2));
    assertThat(model.report().statements())
        .contains(
            "Fixture pendant: channel violet was never lit in a survey; its light is guessed from"
                + " its watts and may be off by a factor of two. Read one plane with it alone.");
    // Guessed all the same: of equal watts, so about as bright as blue.
    double[] blue = best(bench, model, twoChannels(), SimulatedBench.dials(100, 0));
    double[] violet = best(bench, model, twoChannels(), SimulatedBench.dials(0, 100));
    assertThat(violet[20]).isBetween(.5 * blue[20], 2 * blue[20]);
  }

  /** A lamp that throws more to +y than to −y is told from one that does not. */
  @Test
  void anAsymmetricLampIsDetected() {
    IntensityDistribution skewed =
        (gamma, azimuth) ->
            100
                * Math.pow(Math.max(0, Math.cos(gamma)), 2)
                * Math.exp(.8 * Math.sin(gamma) * Math.sin(azimuth));
    Fixture lamp =
        SimulatedBench.fixture(List.of(SimulatedBench.channel("blue", 450, Optional.of(skewed))));
    SimulatedBench bench = SimulatedBench.asStated(9);
    LightModel model =
        fit(bench.survey("skewed", lamp, SimulatedBench.METER, .15, FULL, 6, 4, .15, .35));
    assertThat(model.report().statements().get(0))
        .startsWith("The lamp is not symmetric about its two axes: odds of ");
    assertThat(model.best().distributions().get("pendant").get(0).quadrantSymmetric()).isFalse();

    LightModel plain = fit(one(SimulatedBench.asStated(9), .15));
    assertThat(plain.report().statements().get(0))
        .startsWith("The lamp was taken as symmetric about its two axes");
    assertThat(plain.best().distributions().get("pendant").get(0).quadrantSymmetric()).isTrue();
  }

  @Test
  void keepsTheScaleOfOneMeterApart() {
    LightModel model = fit(one(SimulatedBench.worn(10), .15));
    assertThat(model.report().statements())
        .contains(
            "All readings share the meter's scale error of 5.0 %: no number of readings averages it"
                + " out. It is kept apart and counted in every decision.");
    double[] scales = model.draws().stream().mapToDouble(Truth::meterScale).sorted().toArray();
    // Normal of standard deviation .05: the 5 % and 95 % quantiles of 96 draws, within a third.
    assertThat(Estimate.quantile(scales, .05)).isCloseTo(1 - .082, within(.027));
    assertThat(Estimate.quantile(scales, .95)).isCloseTo(1 + .082, within(.027));
    assertThat(model.best().meterScale()).isEqualTo(1);
  }

  @Test
  void fitsTheScalesOfSeveralMetersAgainstEachOther() {
    SimulatedBench bench = SimulatedBench.asStated(11);
    Fixture lamp = SimulatedBench.oval();
    Survey first = bench.survey("first", lamp, SimulatedBench.METER, .15, FULL, 6, 4, .2);
    Meter other = new Meter("other", 1, true, 0, .05, .02, .005, 1);
    Survey second = bench.survey("second", lamp, other, .15, FULL, 6, 4, .2);
    // The other meter shows 8 % too little.
    Survey low =
        second.withReadings(
            second.readings().stream()
                .map(r -> new Reading(r.line(), r.place(), .92 * r.value()))
                .toList());
    LightModel model = fit(first, low);
    assertThat(model.report().statements())
        .contains("Several meters were used; their scales were fitted against each other.");
    double ratio = finding(model, "scale of meter other") / finding(model, "scale of meter probe");
    assertThat(ratio).isCloseTo(1 / .92, within(.02));
  }

  @Test
  void fitsReadingsAsTheSpectralFactorCorrectsThem() {
    SimulatedBench bench = SimulatedBench.asStated(13);
    Survey plain =
        bench.survey("low", SimulatedBench.oval(), SimulatedBench.EXACT, .15, FULL, 5, 4, .15, .35);
    // The same light, read by a meter that shows a fifth too little of this colour and is told so.
    Meter blueWeak = new Meter("exact", 1, true, 0, .12, .01, 0, 0, 1.25);
    Survey corrected =
        new Survey(
            "low",
            plain.rig(),
            blueWeak,
            plain.readings().stream()
                .map(r -> new Reading(r.line(), r.place(), r.value() / 1.25))
                .toList());
    LightModel one = fit(plain);
    LightModel other = fit(corrected);
    for (int i = 0; i < one.report().residuals().size(); i++) {
      double expected = one.report().residuals().get(i).predicted();
      assertThat(other.report().residuals().get(i).predicted())
          .isCloseTo(expected, within(1e-6 * expected));
    }
    assertThat(deviation(other)).isCloseTo(deviation(one) * .12 / .05, within(.01));
  }

  /** Standard deviation of the draws' meter scale. */
  private static double deviation(LightModel model) {
    double mean = model.draws().stream().mapToDouble(Truth::meterScale).average().orElseThrow();
    return Math.sqrt(
        model.draws().stream()
            .mapToDouble(draw -> Math.pow(draw.meterScale() - mean, 2))
            .average()
            .orElseThrow());
  }

  private static double finding(LightModel model, String name) {
    return model.report().findings().stream()
        .filter(finding -> finding.name().equals(name))
        .findFirst()
        .orElseThrow()
        .fitted()
        .value();
  }

  @Test
  void reportsEveryReadingConditionAndHeldOutPart() {
    SimulatedBench bench = SimulatedBench.worn(12);
    Fixture lamp = SimulatedBench.oval();
    LightModel model =
        fit(
            bench.survey("low", lamp, SimulatedBench.METER, .15, FULL, 4, 3, .15, .35),
            bench.survey("high", lamp, SimulatedBench.METER, .30, FULL, 4, 3, .15, .35));
    FitReport report = model.report();
    assertThat(report.residuals()).hasSize(48);
    assertThat(report.residuals().get(30).survey()).isEqualTo("high");
    assertThat(report.residuals().get(30).index()).isEqualTo(6);
    assertThat(report.findings())
        .extracting(FitReport.Finding::name)
        .contains(
            "clear share of the left pane",
            "clear share of the back pane",
            "yellowing at 440 nm (1/m)",
            "bottom reflectance",
            "mounting height offset (cm)",
            "offset of the fixtures along x (cm)",
            "offset of the fixtures along y (cm)");
    assertThat(report.crossValidation())
        .extracting(FitReport.CrossValidation::heldOut)
        .containsExactly(
            "each reading by itself",
            "the plane 15.0 cm deep",
            "the plane 35.0 cm deep",
            "the height of 15.0 cm",
            "the height of 30.0 cm");
    assertThat(report.crossValidation().get(0).median()).isBetween(0.0, .05);
    assertThat(report.relativeResidual()).isBetween(.005, .05);
  }

  private static void refuses(ThrowingCallable call, String message) {
    assertThatThrownBy(call).isInstanceOf(UnfittableException.class).hasMessage(message);
  }

  @Test
  void refusesTooFewReadings() {
    SimulatedBench bench = SimulatedBench.asStated(13);
    Survey survey = one(bench, .15);
    refuses(
        () -> fit(survey.withReadings(survey.readings().subList(0, 5))),
        "a light model needs 6 readings or more; the surveys hold 5: read a grid of cell centres,"
            + " corners and wall midpoints");
    refuses(
        () -> LightModelFit.with(new FastSolver()).fit(List.of()),
        "no survey to fit; take readings on a grid first");
  }

  @Test
  void refusesReadingsWithoutLight() {
    SimulatedBench bench = SimulatedBench.asStated(14);
    Survey survey = one(bench, .15);
    refuses(
        () ->
            fit(
                survey.withReadings(
                    survey.readings().stream()
                        .map(reading -> new Reading(0, reading.place(), 0))
                        .toList())),
        "every reading is 0 after the ambient is subtracted; check the meter and its ambient");
    Rig dark = bench.statedRig(SimulatedBench.oval(), .15, new Setting(Map.of("blue", 0.0)));
    refuses(
        () -> fit(new Survey("dark", dark, SimulatedBench.METER, survey.readings())),
        "no channel was lit in any survey: every dial stands at 0; take readings with light");
  }

  @Test
  void refusesSurveysOfTwoTanks() {
    SimulatedBench bench = SimulatedBench.asStated(15);
    Survey first = one(bench, .15);
    Survey second =
        new Survey(
            "two",
            first.rig().withTank(first.rig().tank().withBottomReflectance(.5)),
            first.meter(),
            first.readings());
    refuses(
        () -> fit(first, second),
        "surveys one and two were taken in different tanks; fit one tank at a time");
  }

  @Test
  void refusesReadingsThatNoLightCanReach() {
    SimulatedBench bench = SimulatedBench.asStated(16);
    Survey survey = one(bench, .15);
    Rig shut =
        survey
            .rig()
            .withTank(
                survey
                    .rig()
                    .tank()
                    .withOpening(
                        new Opening(0, List.of(new Rectangle(-1, 2, -1, 2)), new Lid.None())));
    refuses(
        () -> fit(new Survey("shut", shut, survey.meter(), survey.readings())),
        "no light of the stated rigs can reach the places that were read; check positions, rim and"
            + " braces");
  }
}
