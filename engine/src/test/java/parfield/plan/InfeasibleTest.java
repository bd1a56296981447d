package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import parfield.field.InverseSquareSolver;
import parfield.lamp.CosinePower;
import parfield.lamp.Fixture;
import parfield.survey.Band;
import parfield.tank.Rectangle;
import parfield.units.LengthUnit;

/** What is said when nothing meets the demands. */
class InfeasibleTest {
  private static final Planner PLANNER = new Planner(new InverseSquareSolver());
  private static final Extent PLANE = Extent.plane(0.2);
  private static final Extent UNDER =
      PLANE.within(new Zone("spot", new Rectangle(0.449, 0.451, 0.299, 0.301), 0.1, 0.3));
  private static final Fixture LAMP = Benches.fixture(new CosinePower(60, 2));

  private static Recommendation recommend(Fixture fixture, Demand... demands) {
    return PLANNER.recommend(
        Benches.certain(),
        Demands.stated(List.of(), List.of(demands)),
        Benches.search(fixture, List.of(0.2, 0.3)));
  }

  private static Remedy remedy(Recommendation recommendation, Remedy.Kind kind) {
    return recommendation.remedies().stream()
        .filter(remedy -> remedy.kind() == kind)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void nothingIsMissedWhereAllIsMet() {
    Recommendation met = recommend(LAMP, new Demand.Coverage(Benches.SOFT, 0.9, UNDER));
    assertThat(met.shortfalls()).isEmpty();
    assertThat(met.remedies()).isEmpty();
  }

  @Test
  void demandsThatExcludeEachOtherAreNamed() {
    Demand even = new Demand.Evenness(0.28, PLANE);
    Demand keep = new Demand.Retention(0.85, PLANE);
    Recommendation recommendation = recommend(LAMP, even, keep);
    assertThat(recommendation.best().probability().value()).isZero();
    assertThat(recommendation.shortfalls()).hasSize(1);
    Shortfall shortfall = recommendation.shortfalls().get(0);
    Verdict failed = shortfall.verdict();
    assertThat(failed.standing()).isEqualTo(Verdict.Standing.FAILED);
    assertThat(shortfall.missing())
        .isCloseTo(failed.demand().least() - failed.value().value(), within(1e-12))
        .isPositive();
    assertThat(shortfall.verdictAlone().standing()).isEqualTo(Verdict.Standing.MET);
    assertThat(shortfall.atTheCostOf())
        .extracting(Verdict::demand)
        .containsExactly(failed.demand().equals(even) ? keep : even);
  }

  /** E at full = 60 / 0.4² = 375, 3.2 times too little for the middle of 1,000–1,440 (1,200). */
  @Test
  void tooLittleLightAsksForBrighterFixtures() {
    Band noon = new Band("noon", 1000, 1440);
    Recommendation recommendation = recommend(LAMP, new Demand.Coverage(noon, 0.9, UNDER));
    assertThat(recommendation.best().setting().percent("blue")).isEqualTo(100);
    Remedy brighter = remedy(recommendation, Remedy.Kind.BRIGHTER);
    // The search leaves 5 % to spare.
    assertThat(brighter.factor()).isCloseTo(1.05 * 1200 / 375, within(0.01));
    assertThat(brighter.option().probability().value()).isEqualTo(1);
    assertThat(brighter.helps()).isTrue();
    assertThat(recommendation.remedies().get(0).option().probability().value()).isEqualTo(1);
    assertThat(brighter.inWords(LengthUnit.CM))
        .startsWith("Fixtures 3.4 times as bright would help: 1 × pendant, 20 cm high; blue ")
        .contains(
            "meets all demands with probability > 0.22, < 0.78 without; at least 90 % of the plane 20 cm"
                + " deep of zone spot in noon (1000–1440 µmol m⁻² s⁻¹): 100.0 % (100.0–100.0 %), 0.0"
                + " % (0.0–0.0 %) without.");
  }

  @Test
  void everyChangeIsWorkedOut() {
    Demand even = new Demand.Evenness(0.9, PLANE);
    Recommendation recommendation = recommend(LAMP, even);
    assertThat(recommendation.remedies())
        .extracting(Remedy::kind)
        .containsExactlyInAnyOrder(
            Remedy.Kind.ONE_MORE_FIXTURE,
            Remedy.Kind.LOWER,
            Remedy.Kind.HIGHER,
            Remedy.Kind.WIDER_OPTICS,
            Remedy.Kind.NARROWER_OPTICS);
    Remedy more = remedy(recommendation, Remedy.Kind.ONE_MORE_FIXTURE);
    assertThat(more.option().arrangement().count()).isEqualTo(2);
    Remedy higher = remedy(recommendation, Remedy.Kind.HIGHER);
    assertThat(higher.option().height()).isEqualTo(0.6);
    assertThat(higher.helps()).isTrue();
    Remedy lower = remedy(recommendation, Remedy.Kind.LOWER);
    assertThat(lower.option().height()).isLessThan(0.2);
    assertThat(lower.helps()).isFalse();
    Remedy wider = remedy(recommendation, Remedy.Kind.WIDER_OPTICS);
    Remedy narrower = remedy(recommendation, Remedy.Kind.NARROWER_OPTICS);
    assertThat(wider.option().verdicts().get(0).value().value())
        .isGreaterThan(wider.without().verdicts().get(0).value().value())
        .isGreaterThan(narrower.option().verdicts().get(0).value().value());
    assertThat(narrower.inWords(LengthUnit.CM)).startsWith("Optics 20 % narrower would not help: ");
    assertThat(wider.option().probability().value()).isLessThan(0.1);
    assertThat(wider.inWords(LengthUnit.CM))
        .startsWith("Optics 25 % wider would come nearer without getting there: ");
    assertThat(recommendation.shortfalls().get(0).inWords(LengthUnit.CM))
        .startsWith(
            "Evenness U₀ of the plane 20 cm deep at least 0.9: failed. The recommended option"
                + " reaches ")
        .contains(" off. Even if nothing else were asked it would reach ");
  }

  @Test
  void aCeilingKeepsRemediesUnderIt() {
    Recommendation recommendation =
        PLANNER.recommend(
            Benches.certain(),
            Demands.stated(List.of(), List.of(new Demand.Evenness(0.9, PLANE))),
            Benches.search(LAMP, List.of(0.2, 0.3)).withCeiling(0.4));
    assertThat(remedy(recommendation, Remedy.Kind.HIGHER).option().height())
        .isLessThanOrEqualTo(0.4);
  }

  @Test
  void oneChannelMoreFreedomIsTried() {
    Fixture two = Benches.fixture(new CosinePower(60, 40), new CosinePower(60, 1));
    Recommendation recommendation = recommend(two, new Demand.Evenness(0.9, PLANE));
    assertThat(remedy(recommendation, Remedy.Kind.FREE_MIX).inWords(LengthUnit.CM))
        .startsWith("Dialling the channels without keeping their ratio, another colour, would");
  }
}
