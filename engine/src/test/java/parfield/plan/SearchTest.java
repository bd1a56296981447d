package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import parfield.field.InverseSquareSolver;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Rectangle;
import parfield.units.LengthUnit;

class SearchTest {
  private static final Fixture POINT = Benches.fixture(new CosinePower(100, 2));
  private static final Fixture LONG =
      new Fixture(
          "bar",
          0.3,
          0.1,
          List.of(new Emitter(0, 0, 0)),
          List.of(Channel.of("blue", new CosinePower(100, 2))),
          List.of());

  @Test
  void fixturesSpreadEvenlyAboutTheMiddle() {
    Hanging pattern = Hanging.level(POINT, 0.5, 0.25, 1);
    Rig row = Arrangement.row(pattern, 3, 0.2).over(Benches.TANK, 0.3);
    assertThat(row.hangings()).extracting(Hanging::x).containsExactly(0.3, 0.5, 0.7);
    assertThat(row.hangings()).extracting(Hanging::y).containsOnly(0.25);
    assertThat(row.hangings()).extracting(Hanging::height).containsOnly(0.3);
    Rig square = Arrangement.twoByTwo(pattern, 0.3).over(Benches.TANK, 0.3);
    assertThat(square.hangings()).extracting(Hanging::x).containsExactly(0.35, 0.65, 0.35, 0.65);
    // 0.3 m × 60 cm / 90 cm = 0.2 m from front to back.
    assertThat(square.hangings().get(0).y()).isCloseTo(0.15, within(1e-12));
    assertThat(square.hangings().get(2).y()).isCloseTo(0.35, within(1e-12));
  }

  @Test
  void arrangementsReadAsAPersonHangsThem() {
    Hanging pattern = Benches.pattern(POINT);
    assertThat(Arrangement.single(pattern).inWords(LengthUnit.CM)).isEqualTo("1 × pendant");
    assertThat(Arrangement.row(pattern, 2, 0.52).inWords(LengthUnit.CM))
        .isEqualTo("2 × pendant, 52 cm apart");
    assertThat(Arrangement.twoByTwo(pattern, 0.254).inWords(LengthUnit.INCH))
        .isEqualTo("4 × pendant two by two, 10 in apart");
  }

  @Test
  void whatCannotHangIsRefused() {
    Hanging pattern = Benches.pattern(POINT);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Arrangement.row(pattern, 9, 0.1))
        .withMessage("a plan hangs 1 to 8 fixtures; got 9");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Arrangement.row(pattern, 2, 0))
        .withMessage(
            "spacing must be above 0 m for several fixtures and 0 for one; got 0.0 m for 2");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Arrangement(pattern, 3, Layout.TWO_BY_TWO, 0.1))
        .withMessage("two by two takes 4 fixtures; got 3");
    Hanging bar = Hanging.level(LONG, 0.45, 0.3, 1);
    assertThat(Arrangement.row(bar, 2, 0.29).fits(Benches.TANK)).isFalse();
    assertThat(Arrangement.row(bar, 2, 0.30).fits(Benches.TANK)).isTrue();
    assertThat(Arrangement.row(bar, 2, 0.91).fits(Benches.TANK)).isFalse();
    Hanging across = new Hanging(LONG, 0.45, 0.3, 1, 0, Math.PI / 2, Setting.full());
    assertThat(Arrangement.row(across, 2, 0.15).fits(Benches.TANK)).isTrue();
    assertThat(Arrangement.twoByTwo(across, 0.4).fits(Benches.TANK)).isFalse();
  }

  @Test
  void aBenchSuggestsItsOwnSearch() {
    Search search =
        Search.around(
            List.of(
                Benches.rig(POINT, 1, 0, 0.15),
                Benches.rig(POINT, 1, 0, 0.22),
                Benches.rig(POINT, 2, 0.3, 0.40)),
            0.15);
    assertThat(search.heights()).containsExactly(0.15, 0.20, 0.22, 0.25, 0.3, 0.35, 0.4);
    assertThat(search.counts()).containsExactly(1, 2);
    assertThat(search.patterns()).hasSize(1);
    assertThat(search.patterns().get(0).x()).isCloseTo(0.45, within(1e-12));
    assertThat(search.mix()).isEqualTo(Mix.KEPT);
    assertThat(search.arrangements().stream().filter(a -> a.count() == 2))
        .extracting(Arrangement::spacing)
        .containsExactly(0.27, 0.32, 0.36, 0.41, 0.45, 0.5, 0.54);
    assertThat(Search.around(List.of(Benches.rig(POINT, 1, 0, 0.2)), 0.15).heights())
        .containsExactly(0.2, 0.25, 0.3, 0.35, 0.4);
    assertThat(search.withCounts(List.of(4)).arrangements())
        .extracting(Arrangement::layout)
        .contains(Layout.ROW, Layout.TWO_BY_TWO);
  }

  @Test
  void aCeilingLeavesOutWhatDoesNotFit() {
    Search search = Search.around(List.of(Benches.rig(POINT, 1, 0, 0.2)), 0.15);
    assertThat(search.withCeiling(0.3).heights()).containsExactly(0.2, 0.25, 0.3);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> search.withCeiling(0.1))
        .withMessage(
            "a mounting height of 0.4 m does not fit under a ceiling 0.1 m over the water");
  }

  @Test
  void wrongSearchesSayWhatIsWrong() {
    Search search = Search.around(List.of(Benches.rig(POINT, 1, 0, 0.2)), 0.15);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Search.around(List.of(), 0.1))
        .withMessage(
            "a search needs a rig to start from: which fixture, hung about where; got none");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> search.withHeights(List.of(0.2, -0.1)))
        .withMessage("mounting heights must be above 0 m; got -0.1 m");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> search.withHeights(List.of()))
        .withMessage(
            "a search needs at least one fixture, one mounting height and one count; got 1, 0, 1");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Search.around(List.of(Benches.rig(POINT, 1, 0, 0.2)), 0.7))
        .withMessage("the plane to report on must lie in the water, 0 to 0.5 m deep; got 0.7 m");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> search.withCounts(List.of(2)).withSpacings(List.of(2.0)).arrangements())
        .withMessage(
            "no stated spacing lets [2] fixtures hang over a tank 0.9 m long without overlap; state"
                + " other spacings or counts");
  }

  @Test
  void demandsOutsideTheWaterAreRefused() {
    Zone outside = new Zone("reef", new Rectangle(0, 0.5, 0, 0.5), 0.1, 0.8);
    Demands demands =
        Demands.stated(
            List.of(),
            List.of(new Demand.Coverage(Benches.SOFT, 0.5, Extent.volume().within(outside))));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                new Planner(new InverseSquareSolver())
                    .recommend(Benches.certain(), demands, Benches.search(POINT, List.of(0.2))))
        .withMessage(
            "zone reef runs from 0.1 to 0.8 m along the tank's water depth, which runs from 0 to"
                + " 0.5 m; move it inside");
  }
}
