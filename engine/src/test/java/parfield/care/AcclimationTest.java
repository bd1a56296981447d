package parfield.care;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static parfield.care.CareBench.CURVED;
import static parfield.care.CareBench.at;
import static parfield.care.CareBench.channel;
import static parfield.care.CareBench.field;
import static parfield.care.CareBench.fixture;
import static parfield.care.CareBench.hours;
import static parfield.care.CareBench.mastered;
import static parfield.care.CareBench.rig;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.fit.PredictedField;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.rig.Rig;

/** Steps towards more light, and how light falls with time. */
class AcclimationTest {
  private static final Rig RIG =
      rig(
          mastered(channel("blue", OutputCurve.proportional()), channel("violet", CURVED)),
          new Setting(Map.of("blue", 90.0, "violet", 60.0)));
  private static final DailyProgram DAY =
      DailyProgram.together(RIG, at("10:00"), hours(1), hours(8), hours(1));

  private static HadLight had(Pace.Known known, double peak) {
    return new HadLight(known, OptionalDouble.of(peak), OptionalDouble.empty());
  }

  @Test
  @DisplayName("steps are of one factor, from what it had to the wanted light: worked by hand")
  void stepsAreGeometric() {
    // Full light 100 · .9 = 90 in every truth; it had 45: a factor of 2.
    Rig rig =
        rig(
            fixture(channel("blue", OutputCurve.proportional())),
            new Setting(Map.of("blue", 90.0)));
    PredictedField field = field(rig, new double[][] {{100}}, 1, 1);
    DailyProgram day = DailyProgram.together(rig, at("10:00"), hours(0), hours(10), hours(0));
    Acclimation plan =
        Acclimation.plan(rig, day, field, had(Pace.Known.MEASURED, 45), new Pace(1.2, 7));

    // ln 2 / ln 1.2 = 3.8: four rises of 2^(1/4) = 1.189, dials 45, 54, 64, 76, 90.
    assertThat(plan.ratio()).isCloseTo(2, within(1e-12));
    assertThat(plan.steps())
        .extracting(step -> step.settings().get(0).percent("blue"))
        .containsExactly(45.0, 54.0, 64.0, 76.0, 90.0);
    assertThat(plan.steps())
        .extracting(Acclimation.Step::firstDay)
        .containsExactly(0, 7, 14, 21, 28);
    assertThat(plan.steps()).noneMatch(Acclimation.Step::coarse);
    assertThat(plan.daysToWanted()).isEqualTo(28);
    assertThat(plan.steps().get(1).dli().value()).isCloseTo(.54 * 3.6, within(1e-9));
  }

  @Test
  @DisplayName(
      "the first step is no more than it had even where the new light is at its bright end")
  void carefulAtBothEnds() {
    SplittableRandom random = new SplittableRandom(7);
    double[] scales = random.doubles(96, .8, 1.25).toArray();
    PredictedField field = field(RIG, new double[][] {{300}, {200}}, scales);
    Acclimation plan =
        Acclimation.plan(RIG, DAY, field, had(Pace.Known.TOLD, 100), Pace.Known.TOLD.pace());
    Acclimation.Step first = plan.steps().get(0);
    Acclimation.Step last = plan.steps().get(plan.steps().size() - 1);

    assertThat(first.peak().high()).isLessThan(100.01);
    assertThat(first.coarse()).isFalse();
    assertThat(last.settings().get(0)).isEqualTo(RIG.hangings().get(0).setting());
    assertThat(last.given()).isEqualTo(1);
    for (int k = 1; k < plan.steps().size(); k++) {
      Acclimation.Step step = plan.steps().get(k);
      assertThat(step.firstDay()).isEqualTo(plan.steps().get(k - 1).end());
      assertThat(step.rise()).isGreaterThan(1);
      if (!step.coarse()) {
        assertThat(step.rise()).isLessThanOrEqualTo(plan.pace().rise() * 1.005);
      } else {
        assertThat(step.days()).isEqualTo(2 * plan.pace().days());
      }
    }
  }

  @Test
  void coarseDialsAreTold() {
    Rig rig =
        rig(fixture(channel("blue", OutputCurve.proportional())), new Setting(Map.of("blue", 6.0)));
    PredictedField field = field(rig, new double[][] {{1000}}, 1, 1);
    DailyProgram day = DailyProgram.together(rig, at("10:00"), hours(0), hours(10), hours(0));
    Acclimation plan =
        Acclimation.plan(rig, day, field, had(Pace.Known.UNKNOWN, 30), Pace.Known.UNKNOWN.pace());

    // Whole percents 3, 4, 5, 6 are rises of 33, 25 and 20 %, where 10 % are wanted.
    assertThat(plan.steps())
        .extracting(step -> step.settings().get(0).percent("blue"))
        .containsExactly(3.0, 4.0, 5.0, 6.0);
    assertThat(plan.steps())
        .extracting(Acclimation.Step::coarse)
        .containsExactly(false, true, true, true);
    assertThat(plan.steps().get(1).rise()).isCloseTo(4 / 3., within(1e-12));
  }

  @Test
  void lessLightThanBeforeNeedsNoSteps() {
    PredictedField field = field(RIG, new double[][] {{100}, {100}}, 1, 1);
    Acclimation plan =
        Acclimation.plan(RIG, DAY, field, had(Pace.Known.MEASURED, 500), new Pace(1.2, 7));

    assertThat(plan.ratio()).isLessThan(1);
    assertThat(plan.steps()).hasSize(1);
    assertThat(plan.daysToWanted()).isZero();
  }

  @Test
  void aStepBackGoesOnSlower() {
    PredictedField field = field(RIG, new double[][] {{300}, {200}}, .95, 1.05);
    Acclimation plan =
        Acclimation.plan(RIG, DAY, field, had(Pace.Known.MEASURED, 80), new Pace(1.2, 7));
    Acclimation back = plan.steppedBack(3, RIG, DAY, field);

    assertThat(back.steps().get(0).settings()).isEqualTo(plan.steps().get(2).settings());
    assertThat(back.steps().get(0).days()).isEqualTo(14);
    assertThat(back.pace()).isEqualTo(new Pace(Math.sqrt(1.2), 11));
    assertThat(back.steps().get(back.steps().size() - 1).given()).isEqualTo(1);
    assertThat(back.daysToWanted())
        .isGreaterThan(plan.daysToWanted() - plan.steps().get(3).firstDay());
  }

  @Test
  @DisplayName("not known: the low end of the group, and the worse of peak and dose counts")
  void unknownIsTheLowEnd() {
    CoralGroup soft = Livestock.common().get("soft");
    HadLight had = HadLight.unknown(soft);

    assertThat(had.peak()).hasValue(75);
    assertThat(had.dli()).hasValue(2.5);
    assertThat(had.ratio(150, 2.5)).isEqualTo(2);
    assertThat(had.ratio(75, 10)).isEqualTo(4);
    assertThat(Pace.Known.UNKNOWN.pace().rise()).isLessThan(Pace.Known.TOLD.pace().rise());
    assertThat(Pace.Known.TOLD.pace().rise()).isLessThan(Pace.Known.MEASURED.pace().rise());
  }

  @Test
  void whatCannotBePlannedIsRefused() {
    PredictedField field = field(RIG, new double[][] {{30_000}, {1}}, 1, 1);

    assertThatThrownBy(
            () -> Acclimation.plan(RIG, DAY, field, had(Pace.Known.UNKNOWN, 5), new Pace(1.1, 10)))
        .hasMessage(
            "the wanted light is 5400 times what the coral had: 91 steps are needed, at most 60 make"
                + " a plan; check the light it had, or begin in a dimmer place");
    assertThatThrownBy(() -> had(Pace.Known.TOLD, 0))
        .hasMessage(
            "the light that a coral had must be above 0; got 0.0; from the dark, begin at the low end"
                + " of its group");
    assertThatThrownBy(() -> new Pace(1, 7))
        .hasMessage(
            "light is raised by a factor above 1 to 2 a step of 1 day or more; got 1.0, 7 days");
    assertThatThrownBy(
            () ->
                Acclimation.plan(
                    RIG,
                    DAY,
                    field(RIG, new double[][] {{0}, {0}}, 1, 1),
                    had(Pace.Known.TOLD, 50),
                    new Pace(1.1, 10)))
        .hasMessage(
            "the rig gives no light at the coral's place: dial it, or choose another place");
  }

  @Test
  @DisplayName(
      "L70 at 50 000 h: .7 after a life, the root of it after half; dirt goes at a cleaning")
  void maintenance() {
    LocalDate read = LocalDate.of(2026, 3, 1);
    Maintenance clean = new Maintenance(10, 50_000, .7, 0, 28);
    Maintenance dirty = new Maintenance(0, 50_000, .7, .01, 28);

    assertThat(clean.factor(read, read.plusDays(5000))).isCloseTo(.7, within(1e-12));
    assertThat(clean.factor(read, read.plusDays(2500))).isCloseTo(Math.sqrt(.7), within(1e-12));
    assertThat(clean.agedBelow(read, .9))
        .isEqualTo(read.plusDays((long) Math.ceil(5000 * Math.log(.9) / Math.log(.7))));
    assertThat(dirty.factor(read, read.plusDays(7))).isCloseTo(.99, within(1e-12));
    assertThat(dirty.factor(read, read.plusDays(27)))
        .isCloseTo(Math.pow(.99, 27 / 7.), within(1e-12));
    assertThat(dirty.factor(read, read.plusDays(28))).isEqualTo(1);
    assertThat(dirty.dirtiest()).isCloseTo(Math.pow(.99, 4), within(1e-12));
    assertThat(clean.age(5000)).isCloseTo(.7, within(1e-12));
    assertThat(dirty.agedBelow(read, .9)).isEqualTo(read.plusDays(36_500));
    assertThat(Maintenance.common(10).inWords())
        .isEqualTo(
            "assumed, not measured: 70 % of the light is left after 50000 lit hours at 10.0 h a day,"
                + " dirt takes 1.0 % a week, and lamps and lids are cleaned every 28 days");
    assertThatThrownBy(() -> clean.factor(read, read.minusDays(1)))
        .hasMessage("light is told from the day of the readings on, 2026-03-01; got 2026-02-28");
    assertThatThrownBy(() -> new Maintenance(25, 50_000, .7, .01, 28))
        .hasMessage("lamps are lit 0 to 24 h a day; got 25.0");
  }

  @Test
  void signsToStepBackAndToHold() {
    assertThat(StopSign.PALING.stepsBack()).isTrue();
    assertThat(StopSign.CLOSED.stepsBack()).isFalse();
    assertThat(Acclimation.rules()).hasSizeGreaterThanOrEqualTo(4);
    assertThat(List.of(StopSign.values())).allMatch(sign -> !sign.words().endsWith("."));
  }
}
