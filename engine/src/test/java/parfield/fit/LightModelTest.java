package parfield.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import parfield.field.FastSolver;
import parfield.field.Places;
import parfield.field.UnitFields;
import parfield.lamp.CosinePower;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.Setting;
import parfield.rig.Rig;
import parfield.units.Estimate;

class LightModelTest {
  private static final FitReport EMPTY =
      new FitReport(List.of(), List.of(), List.of(), List.of(), 0);
  private static final SimulatedBench BENCH = SimulatedBench.asStated(1);
  private static final Fixture STATED =
      SimulatedBench.fixture(List.of(SimulatedBench.channel("blue", 450, Optional.empty())));
  private static final Rig RIG = BENCH.statedRig(STATED, .2, Setting.full());
  private static final Places PLACES = Places.of(BENCH.centres(4, 3, .2));

  private static Truth truth(double peak, double meterScale) {
    List<IntensityDistribution> lamps = List.of(new CosinePower(peak, 2));
    return new Truth(
        Map.of("pendant", lamps),
        List.of(.9, .8, .7, .6),
        .25,
        .1,
        .01,
        -.02,
        .03,
        .05,
        meterScale);
  }

  private static void refuses(ThrowingCallable call, String message) {
    assertThatThrownBy(call).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
  }

  @Test
  void aTruthTakesThePlaceOfWhatIsStated() {
    Rig real = truth(100, 1).applyTo(RIG);
    assertThat(real.tank().walls().left().clear()).isEqualTo(.9);
    assertThat(real.tank().walls().right().clear()).isEqualTo(.8);
    assertThat(real.tank().walls().front().clear()).isEqualTo(.7);
    assertThat(real.tank().walls().back().clear()).isEqualTo(.6);
    assertThat(real.tank().bottomReflectance()).isEqualTo(.25);
    assertThat(real.tank().water().yellowing()).isEqualTo(.1);
    assertThat(real.hangings().get(0).x()).isCloseTo(.46, within(1e-12));
    assertThat(real.hangings().get(0).y()).isCloseTo(.28, within(1e-12));
    assertThat(real.hangings().get(0).height()).isCloseTo(.23, within(1e-12));
    assertThat(real.hangings().get(0).fixture().channels().get(0).distribution())
        .contains(new CosinePower(100, 2));
  }

  /** The interval of a place without the meter's error, and with it. */
  @Test
  void theMeterScalesAllPlacesTogether() {
    LightModel model =
        new LightModel(truth(100, 1), List.of(truth(90, .9), truth(110, 1.1)), 0, EMPTY);
    PredictedField field = model.predict(new FastSolver(), RIG, PLACES);
    double[] best = field.best();
    Estimate[] shown = field.asShown();
    Estimate[] scaled = field.withMeterScale();
    assertThat(field.draws()).isEqualTo(2);
    assertThat(field.meterScale(1)).isEqualTo(1.1);
    assertThat(field.places().size()).isEqualTo(12);
    for (int i = 0; i < best.length; i++) {
      // Two draws of .9 and 1.1 times the best: 5 % and 95 % lie .01 inside.
      assertThat(shown[i].value()).isEqualTo(best[i]);
      assertThat(shown[i].low()).isCloseTo(.91 * best[i], within(1e-9 * best[i]));
      assertThat(shown[i].high()).isCloseTo(1.09 * best[i], within(1e-9 * best[i]));
      // With the meter's own .9 and 1.1 on top: .81 and 1.21.
      assertThat(scaled[i].low()).isCloseTo(.83 * best[i], within(1e-9 * best[i]));
      assertThat(scaled[i].high()).isCloseTo(1.19 * best[i], within(1e-9 * best[i]));
    }
  }

  @Test
  void anySettingIsASumOfChannels() {
    LightModel model = new LightModel(truth(100, 1), List.of(truth(90, 1)), .02, EMPTY);
    PredictedField field = model.predict(new FastSolver(), RIG, PLACES);
    Setting half = new Setting(Map.of("blue", 50.0));
    for (int i = 0; i < PLACES.size(); i++) {
      assertThat(field.best(half)[i]).isCloseTo(.5 * field.bestOfChannel(0)[i], within(1e-9));
      assertThat(field.draw(0, half)[i]).isCloseTo(.5 * field.drawOfChannel(0, 0)[i], within(1e-9));
      assertThat(field.draw(0)[i]).isEqualTo(field.draw(0, Setting.full())[i]);
    }
  }

  /** The model's own error keeps its size: sampled over many draws and places. */
  @Test
  void theDiscrepancyHasTheSizeItStates() {
    Truth[] draws = new Truth[300];
    Arrays.fill(draws, truth(100, 1));
    LightModel model = new LightModel(truth(100, 1), List.of(draws), .04, EMPTY);
    PredictedField field = model.predict(new FastSolver(), RIG, PLACES);
    double[] best = field.best();
    double sum = 0;
    double square = 0;
    for (int d = 0; d < field.draws(); d++) {
      double[] draw = field.draw(d);
      for (int i = 0; i < draw.length; i++) {
        double off = draw[i] / best[i] - 1;
        sum += off;
        square += off * off;
      }
    }
    double n = (double) field.draws() * best.length;
    // 300 independent draws: the standard deviation is known to 1/√600 = 4 %.
    assertThat(Math.sqrt(square / n)).isCloseTo(.04, within(.005));
    assertThat(sum / n).isCloseTo(0, within(.007));
  }

  @Test
  void refusesAModelWithoutDraws() {
    refuses(
        () -> new LightModel(truth(1, 1), List.of(), 0, EMPTY),
        "a light model needs at least one draw; got none");
    refuses(
        () -> new LightModel(truth(1, 1), List.of(truth(1, 1)), -.1, EMPTY),
        "a discrepancy must be 0 or more; got -0.1");
    refuses(
        () -> new LightModel(truth(1, 1), List.of(truth(1, 1)), Double.NaN, EMPTY),
        "a discrepancy must be 0 or more; got NaN");
  }

  @Test
  void refusesATruthThatCannotBe() {
    refuses(
        () -> new Truth(Map.of(), List.of(1.0, 1.0), 0, 0, 0, 0, 0, 0, 1),
        "a tank has four panes; got clear shares for 2");
    refuses(() -> truth(1, 0), "a meter's scale must be above 0; got 0.0");
    refuses(() -> truth(1, Double.NaN), "a meter's scale must be above 0; got NaN");
  }

  @Test
  void refusesAFixtureItDoesNotKnow() {
    Fixture other = new Fixture("bar", 0, 0, STATED.emitters(), STATED.channels(), List.of());
    refuses(
        () -> truth(1, 1).applyTo(RIG.withHangings(hanging -> hanging.withFixture(other))),
        "fixture bar is not in the light model, which knows [pendant]; fit a survey taken with it");
    Fixture more =
        SimulatedBench.fixture(
            List.of(
                SimulatedBench.channel("blue", 450, Optional.empty()),
                SimulatedBench.channel("violet", 415, Optional.empty())));
    refuses(
        () -> truth(1, 1).applyTo(RIG.withHangings(hanging -> hanging.withFixture(more))),
        "fixture pendant has 2 channels but the light model knows 1; fit again");
  }

  /** A fixture that brings its own distributions needs no fit. */
  @Test
  void leavesAFixtureOfKnownLightAlone() {
    Fixture known =
        new Fixture("known", 0, 0, STATED.emitters(), SimulatedBench.oval().channels(), List.of());
    Rig real = truth(1, 1).applyTo(RIG.withHangings(hanging -> hanging.withFixture(known)));
    assertThat(real.hangings().get(0).fixture().channels()).isEqualTo(known.channels());
  }

  @Test
  void refusesAPredictionWhosePartsDiffer() {
    UnitFields fields = new FastSolver().unitFields(truth(1, 1).applyTo(RIG), PLACES);
    refuses(
        () -> new PredictedField(fields, List.of(), new double[0][], new double[0]),
        "a predicted field needs one meter scale and discrepancy a draw; got 0, 0, 0");
    refuses(
        () -> new PredictedField(fields, List.of(fields), new double[2][12], new double[1]),
        "a predicted field needs one meter scale and discrepancy a draw; got 1, 1, 2");
  }
}
