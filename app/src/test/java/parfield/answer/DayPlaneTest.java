package parfield.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.care.Certainty;
import parfield.care.CoralGroup;
import parfield.care.DailyProgram;
import parfield.care.DayLight;
import parfield.care.DayOutputs;
import parfield.care.Standing;
import parfield.field.Places;
import parfield.field.UnitFields;
import parfield.fit.PredictedField;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/** Doses and homes on a plane, by arithmetic: the light is stated, not solved. */
class DayPlaneTest {
  private static final Tank TANK = Tank.of(.9, .6, .5);

  /** PPFD at the centre of each cell falls from 300 to 0 along the tank, ±10 % in the draws. */
  private static DayPlane plane() {
    Channel channel =
        new Channel(
            "white",
            Optional.empty(),
            OptionalDouble.empty(),
            OutputCurve.proportional(),
            Optional.empty());
    Fixture fixture =
        new Fixture("pendant", 0, 0, List.of(new Emitter(0, 0, 0)), List.of(channel), List.of());
    Rig rig =
        new Rig(
            "low", TANK, List.of(Hanging.level(fixture, .45, .3, .2).withSetting(Setting.full())));
    Places places = Places.plane(TANK, .2, 30, 12);
    double[] ppfd = new double[places.size()];
    for (int i = 0; i < ppfd.length; i++) {
      ppfd[i] = 300 * (1 - places.x(i) / .9);
    }
    UnitFields best = new UnitFields(rig, places, new double[][][] {{ppfd}});
    double[] scales = {.9, .95, 1, 1.05, 1.1};
    double[][] discrepancy = new double[scales.length][places.size()];
    for (double[] row : discrepancy) {
      Arrays.fill(row, 1);
    }
    PredictedField field =
        new PredictedField(
            best, Arrays.stream(scales).mapToObj(scale -> best).toList(), discrepancy, scales);
    DailyProgram program =
        DailyProgram.together(
            rig,
            LocalTime.of(10, 0),
            Duration.ofHours(1),
            Duration.ofHours(9),
            Duration.ofHours(1));
    return new DayPlane(
        TANK,
        OptionalDouble.of(.2),
        places.cells().orElseThrow(),
        DayLight.of(field, DayOutputs.of(program, rig)));
  }

  @Test
  @DisplayName("DLI = .0036 · PPFD · (plateau + ½ ramps) in hours: the mean of each part")
  void dosesOfParts() {
    DayPlane plane = plane();
    List<List<String>> table = plane.doseTable();

    assertThat(table).hasSize(3);
    for (List<String> row : table) {
      for (int part = 0; part < 5; part++) {
        double dose = .0036 * 300 * (1 - (part + .5) / 5) * (9 + .5 * 2);
        assertThat(row.get(part)).startsWith(Numbers.fixed(dose, 1) + " (");
      }
    }
    assertThat(plane.mean().value()).isCloseTo(.0036 * 150 * 10, within(1e-9));
    // 10.6 in the brightest cell; of five draws the 5 % point lies at .91, the 95 % point at 1.09.
    assertThat(plane.doses())
        .isEqualTo(
            "Mean "
                + DayAnswer.dose(plane.mean())
                + ", from 0.2 (0.2–0.2) to 10.6 (9.7–11.6) mol m⁻² d⁻¹; intervals from 5 to 95 %.");
    assertThat(plane.columns(LengthUnit.CM))
        .containsExactly("0–18", "18–36", "36–54", "54–72", "72–90");
    assertThat(plane.rows(LengthUnit.CM)).containsExactly("0–20", "20–40", "40–60");
    assertThat(plane.rowsFrom()).isEqualTo("y");
    assertThat(plane.where(LengthUnit.INCH)).isEqualTo("7.87 in deep");
  }

  @Test
  @DisplayName("shares of the six classes add up, home first; what is nowhere is not named")
  void standingsOfCells() {
    DayPlane plane = plane();
    // Peak 100 to 200; the dose never decides: .036 mol a µmol, at most 10.8.
    CoralGroup group =
        new CoralGroup(new Band("invented", 100, 200), 0, 20, Certainty.LOW, "made up");
    Map<String, Double> shares = plane.standings(group);

    assertThat(shares.keySet())
        .containsExactly(
            "home",
            Standing.TOO_DIM.words(),
            Standing.DAY_TOO_LITTLE.words(),
            Standing.DAY_TOO_MUCH.words(),
            Standing.TOO_BRIGHT.words(),
            "too close to call");
    assertThat(shares.values().stream().mapToDouble(share -> share).sum())
        .isCloseTo(1, within(1e-9));
    // Five draws: the interval spans them nearly, so that home is within 111 to 182 of 300.
    assertThat(shares.get("home")).isBetween(.2, .3);
    assertThat(plane.standing(group))
        .startsWith("For invented, by area: home ")
        .contains("too dim", "too bright", "too close to call")
        .doesNotContain("in a day");
    List<String> row = plane.homeTable(group).get(0);
    assertThat(row.get(0)).isEqualTo("too bright 100 %");
    assertThat(row.get(4)).isEqualTo("too dim 100 %");
    assertThat(row.get(2)).startsWith("home ");
  }
}
