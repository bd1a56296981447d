package parfield.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Place;
import parfield.tank.Tank;

class ThinningTest {
  private static final Fixture LAMP =
      new Fixture(
          "lamp",
          0,
          0,
          List.of(new Emitter(0, 0, 0)),
          List.of(Channel.of("white", new CosinePower(100, 1))),
          List.of());

  private static final Rig RIG =
      new Rig("low", Tank.of(1, 0.5, 0.5), List.of(Hanging.level(LAMP, 0.5, 0.25, 0.2)));

  private static final Meter METER = new Meter("probe", 1, true, 0, 0.05, 0.02, 0.005, 1);

  private static Survey survey(String name, int readings, long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Reading> list = new ArrayList<>();
    for (int i = 0; i < readings; i++) {
      Place place = new Place(random.nextDouble(), random.nextDouble() / 2, 0.1 + 0.2 * (i % 2));
      list.add(new Reading(i + 2, place, 100 + i));
    }
    return new Survey(name, RIG, METER, list);
  }

  @Test
  void smallSurveysAreLeftWhole() {
    Survey small = survey("small", 40, 1);

    assertThat(Thinning.together(List.of(small, survey("other", 60, 2)), 100).get(0))
        .isEqualTo(small);
  }

  @Test
  void largeSurveysShareWhatSmallOnesLeave() {
    List<Survey> thinned =
        Thinning.together(
            List.of(survey("a", 5000, 1), survey("b", 40, 2), survey("c", 900, 3)), 1040);

    assertThat(thinned).extracting(s -> s.readings().size()).containsExactly(500, 40, 500);
  }

  @Test
  void keptReadingsAreReadingsOfTheSurveyInTheirOrder() {
    Survey survey = survey("a", 5000, 4);
    Survey thinned = Thinning.together(List.of(survey), 300).get(0);

    assertThat(survey.readings()).containsSubsequence(thinned.readings());
    assertThat(thinned.readings()).doesNotHaveDuplicates().hasSize(300);
  }

  @Test
  void everyPartOfTheTankKeepsItsShare() {
    Survey survey = survey("a", 20_000, 5);
    Survey thinned = Thinning.together(List.of(survey), 2000).get(0);

    for (int half = 0; half < 2; half++) {
      for (double depth : new double[] {0.1, 0.3}) {
        double left = half / 2.0;
        long before = count(survey, left, depth);
        long after = count(thinned, left, depth);
        // A systematic sample misses a share by the cells at its edges only.
        assertThat(after / 2000.0).isBetween(before / 20_000.0 - 0.01, before / 20_000.0 + 0.01);
      }
    }
  }

  private static long count(Survey survey, double left, double depth) {
    return survey.readings().stream()
        .filter(r -> r.place().x() >= left && r.place().x() < left + 0.5)
        .filter(r -> r.place().depth() == depth)
        .count();
  }

  @Test
  void eachSurveyMustKeepAReading() {
    assertThatThrownBy(() -> Thinning.together(List.of(survey("a", 5, 1), survey("b", 5, 2)), 1))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage("each of 2 surveys must keep a reading; got 1 readings to keep");
  }
}
