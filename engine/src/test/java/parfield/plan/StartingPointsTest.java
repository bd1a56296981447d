package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parfield.field.FastSolver;
import parfield.fit.LightModel;
import parfield.fit.Transfer;
import parfield.lamp.CosinePower;
import parfield.lamp.Fixture;
import parfield.rig.Hanging;
import parfield.tank.Rectangle;

class StartingPointsTest {
  private static final FastSolver SOLVER = new FastSolver();
  private static final Fixture PENDANT = Benches.fixture(new CosinePower(60, 3));
  private static final LightModel MODEL = Benches.uncertain(60, 3, 0.05, 32, 3);
  private static final Demands DEMANDS = Demands.byCustom(List.of(Benches.SOFT), Benches.SOFT);
  private static final Hanging PATTERN = Benches.pattern(PENDANT);

  private static List<StartingPoint> points(Demands demands, List<NamedTank> tanks) {
    return StartingPoints.of(MODEL, SOLVER, List.of(PATTERN), demands, tanks);
  }

  @Test
  void everyTankOfTheListGetsARigThatHangsOverIt() {
    List<StartingPoint> points = points(DEMANDS, NamedTank.common());

    assertThat(points).extracting(StartingPoint::tank).isEqualTo(NamedTank.common());
    for (StartingPoint point : points) {
      assertThat(point.option().arrangement().fits(point.tank().tank())).isTrue();
      Figures figures = point.option().figuresOf(Extent.volume());
      assertThat(figures.mean().low()).isLessThan(figures.mean().value());
      assertThat(figures.mean().high()).isGreaterThan(figures.mean().value());
      assertThat(figures.coverage().get(0).band()).isEqualTo(Benches.SOFT);
    }
    assertThat(points(DEMANDS, NamedTank.common())).isEqualTo(points);
  }

  /** What a coarse search may miss of the thorough one's coverage: stated here, not a source. */
  @Test
  void theCoarseSearchComesCloseToTheThoroughOne() {
    for (StartingPoint point : points(DEMANDS, NamedTank.common().subList(0, 3))) {
      LightModel there = Transfer.to(point.tank().tank(), MODEL, List.of(PENDANT)).model();
      Search search =
          Search.around(List.of(point.option().over(point.tank().tank())), 0.2)
              .withHeights(List.of(0.15, 0.2, 0.27, 0.31, 0.36))
              .withCounts(List.of(1, 2, 3));
      Option thorough = new Planner(SOLVER).recommend(there, DEMANDS, search).best();

      assertThat(coverage(point.option())).isGreaterThan(coverage(thorough) - 0.06);
    }
  }

  private static double coverage(Option option) {
    return option.figuresOf(Extent.volume()).coverage().get(0).share().value();
  }

  @Test
  void demandsThatDoNotFitATankAreTakenOfItsWholeWater() {
    Zone reef = new Zone("reef", new Rectangle(0.2, 0.6, 0.1, 0.4), 0.1, 0.3);
    Demands demands =
        Demands.stated(
            List.of(),
            List.of(
                new Demand.Coverage(Benches.SOFT, 0.5, new Extent.Volume(Optional.of(reef))),
                new Demand.HotSpot(400, Extent.plane(0.45))));

    List<StartingPoint> points = points(demands, NamedTank.common().subList(1, 3));

    assertThat(points.get(0).assumptions())
        .containsExactly(
            "There is no water volume of zone reef in this tank: that demand is taken of the whole"
                + " water instead.");
    assertThat(points.get(1).assumptions())
        .containsExactly(
            "There is no water volume of zone reef in this tank: that demand is taken of the whole"
                + " water instead.",
            "There is no plane 45 cm deep in this tank: that demand is taken of the whole water"
                + " instead.");
    assertThat(points.get(1).option().verdicts().get(1).demand())
        .isEqualTo(new Demand.HotSpot(400, Extent.volume()));
  }

  @Test
  void aFixtureThatTheModelDoesNotKnowIsNamed() {
    Fixture other =
        new Fixture("bar", 0, 0, PENDANT.emitters(), PENDANT.channels(), PENDANT.masters());
    assertThatThrownBy(
            () ->
                StartingPoints.of(
                    MODEL,
                    SOLVER,
                    List.of(Hanging.level(other, 0.3, 0.3, 0.2)),
                    DEMANDS,
                    NamedTank.common()))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessage(
            "the light model knows pendant, over this tank hangs bar; state the model's fixture"
                + " under its own name, just as the model's setup does");
  }

  @Test
  void aTankOfAListNeedsAName() {
    assertThatThrownBy(() -> NamedTank.ofSize(" ", 0.6, 0.6, 0.5))
        .hasMessage("a tank of a list needs a name; got none");
  }
}
