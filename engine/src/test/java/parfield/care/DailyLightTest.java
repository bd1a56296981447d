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
import static parfield.care.CareBench.rig;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parfield.fit.PredictedField;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.rig.Rig;
import parfield.units.Estimate;

/** The light of a day: doses, ramps, programs. */
class DailyLightTest {
  private static final Rig PLAIN =
      rig(fixture(channel("blue", OutputCurve.proportional())), Setting.full());

  private static LitSpell spell(String channel, String start, double up, double on, double down) {
    return new LitSpell(channel, at(start), hours(up), hours(on), hours(down), 100);
  }

  private static double dli(Rig rig, DailyProgram program, double ppfd) {
    PredictedField field = field(rig, new double[][] {{ppfd}}, 1, 1);
    return DayLight.of(field, DayOutputs.of(program, rig)).dli(0, 0);
  }

  /**
   * DLI = 0.0036 · PPFD · hours, the definition (mol m⁻² d⁻¹ from µmol m⁻² s⁻¹); the pairs are the
   * ones that extension tables of horticulture print (100 µmol over 12 h is 4.32 mol), from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "100, 12, 4.32",
    "100, 10, 3.6",
    "200, 10, 7.2",
    "200, 16, 11.52",
    "300, 12, 12.96",
    "50, 24, 4.32",
    "500, 8, 14.4",
    "1000, 1, 3.6"
  })
  void anEvenDayIsPpfdTimesHours(double ppfd, double hours, double dli) {
    DailyProgram program = new DailyProgram(List.of(spell("blue", "08:00", 0, hours, 0)));

    assertThat(dli(PLAIN, program, ppfd)).isCloseTo(dli, within(1e-9));
  }

  @Test
  @DisplayName("a straight ramp counts half: DLI = .0036 PPFD (plateau + half of the ramps)")
  void aStraightRampCountsHalf() {
    DailyProgram program = new DailyProgram(List.of(spell("blue", "09:30", 1.5, 7, 2.5)));

    assertThat(dli(PLAIN, program, 250))
        .isCloseTo(.0036 * 250 * (7 + .5 * (1.5 + 2.5)), within(1e-9));
  }

  @Test
  @DisplayName(
      "a ramp through a bent output curve: against Gauss-Legendre quadrature of Hipparchus")
  void aRampThroughACurveIsExact() {
    SplittableRandom random = new SplittableRandom(61);
    IterativeLegendreGaussIntegrator quadrature =
        new IterativeLegendreGaussIntegrator(8, 1e-12, 1e-12);
    for (int run = 0; run < 20; run++) {
      double dial = 100 * random.nextDouble();
      double level = 100 * random.nextDouble();
      double up = 3 * random.nextDouble();
      double down = 3 * random.nextDouble();
      Rig rig = rig(fixture(channel("blue", CURVED)), new Setting(Map.of("blue", dial)));
      LitSpell spell = new LitSpell("blue", at("20:00"), hours(up), hours(3), hours(down), level);
      DayOutputs outputs = DayOutputs.of(new DailyProgram(List.of(spell)), rig);

      // Pieces between the knots of the curve, so that the integrand is smooth on each.
      double summed = 3 * 3600 * CURVED.outputAt(dial * level / 100);
      for (Duration ramp : List.of(spell.rampUp(), spell.rampDown())) {
        double top = dial * level / 100;
        TreeSet<Double> knots = new TreeSet<>(List.of(0.0, top));
        for (int i = 0; i < CURVED.size(); i++) {
          if (CURVED.dial(i) < top) {
            knots.add(CURVED.dial(i));
          }
        }
        double seconds = ramp.toSeconds();
        Double from = null;
        for (double knot : knots) {
          if (from != null) {
            summed +=
                quadrature.integrate(
                    100_000,
                    second -> CURVED.outputAt(Math.min(100, top * second / seconds)),
                    from / top * seconds,
                    knot / top * seconds);
          }
          from = knot;
        }
      }
      assertThat(outputs.fullSeconds()[0][0])
          .as("run %d, dial %s, level %s", run, dial, level)
          .isCloseTo(summed, within(1e-6 * summed));
    }
  }

  @Test
  @DisplayName("the dose is the integral of the curve that is shown: sums of a second a step")
  void doseIsTheIntegralOfTheCurve() {
    Rig rig =
        rig(
            fixture(channel("blue", CURVED), channel("violet", OutputCurve.proportional())),
            new Setting(Map.of("blue", 70.0, "violet", 40.0)));
    DailyProgram program =
        new DailyProgram(
            List.of(
                spell("blue", "21:00", 2, 3, 1.5),
                spell("blue", "08:00", .5, 1, 0),
                spell("violet", "22:15", 0, 4, 3)));
    DayOutputs outputs = DayOutputs.of(program, rig);
    double[][] sum = new double[1][2];
    for (int second = 0; second < 86_400; second++) {
      double[][] now = outputs.at(second + .5);
      sum[0][0] += now[0][0];
      sum[0][1] += now[0][1];
    }

    assertThat(outputs.fullSeconds()[0][0]).isCloseTo(sum[0][0], within(.01));
    assertThat(outputs.fullSeconds()[0][1]).isCloseTo(sum[0][1], within(.01));
    assertThat(outputs.at(30 * 60)[0][0])
        .as("half past midnight, on the plateau")
        .isEqualTo(CURVED.outputAt(70));
    assertThat(outputs.at(12 * 3600)).isDeepEqualTo(new double[][] {{0, 0}});
  }

  @Test
  void aSpellMayCrossMidnight() {
    LitSpell late = spell("blue", "20:00", 1, 5, 1);

    assertThat(late.crossesMidnight()).isTrue();
    assertThat(late.end()).isEqualTo(at("03:00"));
    assertThat(late.share(20.5 * 3600)).isEqualTo(.5);
    assertThat(late.share(1 * 3600)).isEqualTo(1);
    assertThat(late.share(2.25 * 3600)).isEqualTo(.75);
    assertThat(late.share(3 * 3600)).isZero();
    assertThat(dli(PLAIN, new DailyProgram(List.of(late)), 100)).isCloseTo(.36 * 6, within(1e-9));
  }

  @Test
  void thePhotoperiodIsAllTheTimeInWhichSomethingIsLit() {
    Rig rig =
        rig(
            fixture(
                channel("blue", OutputCurve.proportional()),
                channel("violet", OutputCurve.proportional())),
            Setting.full());
    DailyProgram program =
        new DailyProgram(
            List.of(
                spell("blue", "10:00", 1, 6, 1),
                spell("violet", "17:00", 0, 3, 0),
                spell("violet", "23:00", 0, 2, 0)));
    program.requireChannels(rig);

    assertThat(program.photoperiod()).isEqualTo(hours(8 + 2 + 2));
    assertThat(new DailyProgram(List.of(spell("blue", "10:00", 0, 24, 0))).photoperiod())
        .isEqualTo(hours(24));
  }

  @Test
  void thePeakIsThatOfTheBrightestMoment() {
    Rig rig =
        rig(
            fixture(
                channel("blue", OutputCurve.proportional()),
                channel("violet", OutputCurve.proportional())),
            Setting.full());
    PredictedField field = field(rig, new double[][] {{100, 10}, {10, 100}}, 1, 1);
    DailyProgram apart =
        new DailyProgram(
            List.of(spell("blue", "08:00", 0, 4, 0), spell("violet", "14:00", 0, 4, 0)));
    DailyProgram crossing =
        new DailyProgram(
            List.of(spell("blue", "08:00", 0, 4, 2), spell("violet", "12:00", 2, 4, 0)));

    assertThat(DayLight.of(field, DayOutputs.of(apart, rig)).peak())
        .extracting(Estimate::value)
        .containsExactly(100.0, 100.0);
    // In the crossing blue falls as violet climbs: 100 − 90 s and 10 + 90 s, at most 100.
    assertThat(DayLight.of(field, DayOutputs.of(crossing, rig)).peak())
        .extracting(Estimate::value)
        .containsExactly(100.0, 100.0);
    assertThat(
            DayLight.of(
                    field,
                    DayOutputs.of(
                        DailyProgram.together(rig, at("09:00"), hours(1), hours(8), hours(1)), rig))
                .peak())
        .extracting(Estimate::value)
        .containsExactly(110.0, 110.0);
  }

  @Test
  @DisplayName("draws carry the meter's scale: dose and peak move together, quantiles by order")
  void intervalsComeFromTheTruths() {
    double[] scales = new double[101];
    for (int i = 0; i < scales.length; i++) {
      scales[i] = .9 + .002 * i;
    }
    PredictedField field = field(PLAIN, new double[][] {{100}}, scales);
    DayLight light =
        DayLight.of(
            field,
            DayOutputs.of(new DailyProgram(List.of(spell("blue", "08:00", 0, 10, 0))), PLAIN));

    assertThat(light.dli()[0].value()).isCloseTo(3.6, within(1e-9));
    assertThat(light.dli()[0].low()).isCloseTo(3.6 * .91, within(1e-9));
    assertThat(light.dli()[0].high()).isCloseTo(3.6 * 1.09, within(1e-9));
    assertThat(light.peak()[0].low()).isCloseTo(91, within(1e-9));
    assertThat(light.share(3.5, 4).value()).isEqualTo(1);
    assertThat(light.share(3.5, 4).low()).isZero();
    assertThat(
            DayLight.ppfdAt(
                field,
                DayOutputs.of(new DailyProgram(List.of(spell("blue", "08:00", 2, 10, 0))), PLAIN),
                9 * 3600)[0]
                .value())
        .isEqualTo(50);
  }

  @Test
  void aProgramThatCannotBeIsRefused() {
    assertThatThrownBy(() -> new DailyProgram(List.of()))
        .hasMessage(
            "a daily program needs at least one lit spell; got none: state when a channel is lit");
    assertThatThrownBy(
            () ->
                new DailyProgram(
                    List.of(spell("blue", "22:00", 1, 6, 1), spell("blue", "05:00", 0, 2, 0))))
        .hasMessage(
            "channel blue is lit twice at one time: from 22:00 to 06:00 and from 05:00 to 07:00;"
                + " let one spell end before the next begins");
    assertThatThrownBy(() -> spell("blue", "09:00", 2, 22, .5))
        .hasMessage("channel blue: ramps and plateau together last at most 24 h; got 24 h 30 min");
    assertThatThrownBy(() -> spell("blue", "09:00", 0, 0, 0))
        .hasMessage(
            "channel blue: ramps and plateau together must last above 0 minutes; state a plateau");
    assertThatThrownBy(() -> spell("blue", "09:00", -1, 8, 0))
        .hasMessage("channel blue: a ramp or plateau lasts 0 minutes or more; got -1 h");
    assertThatThrownBy(() -> new LitSpell("blue", at("09:00"), hours(0), hours(8), hours(0), 101))
        .hasMessage(
            "channel blue: its level runs from 0 to 100 % of what the rig dials; got 101.0");
    assertThatThrownBy(
            () -> DayOutputs.of(new DailyProgram(List.of(spell("red", "09:00", 0, 8, 0))), PLAIN))
        .hasMessage(
            "the daily program lights red, which is no channel of rig low; its channels are blue");
  }
}
