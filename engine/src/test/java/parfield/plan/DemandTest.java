package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parfield.survey.Band;
import parfield.tank.Rectangle;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

class DemandTest {
  private static final Band SOFT = new Band("soft", 75, 150);
  private static final Tank TANK = Tank.of(0.9, 0.6, 0.5);
  private static final Zone REEF = new Zone("reef", new Rectangle(0.2, 0.7, 0.1, 0.5), 0.05, 0.25);

  @Test
  void demandsReadAsSentences() {
    assertThat(new Demand.Coverage(SOFT, 0.7, Extent.volume()).inWords())
        .isEqualTo("at least 70 % of the water volume in soft (75–150 µmol m⁻² s⁻¹)");
    assertThat(new Demand.Coverage(SOFT, 0.625, Extent.plane(0.2).within(REEF)).inWords())
        .isEqualTo(
            "at least 62.5 % of the plane 20 cm deep of zone reef in soft (75–150 µmol m⁻² s⁻¹)");
    assertThat(new Demand.Retention(0.85, Extent.volume().within(REEF)).inWords())
        .isEqualTo(
            "mean PPFD of the water volume of zone reef at least 85 % of that at the lowest height");
    assertThat(new Demand.Evenness(0.4, Extent.plane(0.254)).inWords(LengthUnit.INCH))
        .isEqualTo("evenness U₀ of the plane 10 in deep at least 0.4");
    assertThat(new Demand.EndsToCentre(0.75, Extent.plane(0.155)).inWords())
        .isEqualTo("ends-to-centre ratio of the plane 15.5 cm deep at least 0.75");
    assertThat(new Demand.Coverage(SOFT, 0.7, Extent.livingSurface()).inWords())
        .startsWith("at least 70 % of the living surface in ");
    assertThat(new Demand.HotSpot(500, Extent.livingSurface().within(REEF)).inWords())
        .startsWith("no place of the living surface of zone ");
    assertThat(new Demand.HotSpot(500, Extent.volume()).inWords())
        .isEqualTo("no place of the water volume above 500 µmol m⁻² s⁻¹");
    assertThat(new Demand.MeanPpfd(100, 150.5, Extent.volume()).inWords())
        .isEqualTo("mean PPFD of the water volume from 100 to 150.5 µmol m⁻² s⁻¹");
  }

  @Test
  void wrongDemandsSayWhatIsWrong() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Demand.Coverage(SOFT, 70, Extent.volume()))
        .withMessage(
            "coverage of band soft must lie above 0 and be at most 1; got 70.0; write 70 % as 0.70");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Demand.Retention(Double.NaN, Extent.volume()))
        .withMessage("retention must lie above 0 and be at most 1; got NaN; write 70 % as 0.70");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Demand.Evenness(0, Extent.volume()))
        .withMessage("evenness U₀ must lie above 0 and be at most 1; got 0.0; write 70 % as 0.70");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Demand.EndsToCentre(-1, Extent.volume()))
        .withMessage("an ends-to-centre ratio must be above 0; got -1.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Demand.HotSpot(0, Extent.volume()))
        .withMessage("the limit of a hot spot must be above 0 µmol m⁻² s⁻¹; got 0.0");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Demand.MeanPpfd(200, 100, Extent.volume()))
        .withMessage("a mean PPFD must run upward from 0 or more; got 200.0 to 100.0 µmol m⁻² s⁻¹");
  }

  @Test
  void extentsMustLieInTheWater() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Extent.plane(-0.1))
        .withMessage("a plane's depth must be 0 m or more; got -0.1 m");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Extent.plane(0.3).within(REEF))
        .withMessage("the plane 0.3 m deep does not cut zone reef, which runs from 0.05 to 0.25 m");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Extent.plane(0.6).checkInside(TANK))
        .withMessage("the plane 0.6 m deep lies below the bottom; the water is 0.5 m deep");
    Zone outside = new Zone("reef", new Rectangle(0.2, 1.2, 0.1, 0.5), 0.05, 0.25);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Extent.livingSurface().within(outside).checkInside(TANK))
        .withMessageStartingWith("zone ");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Extent.volume().within(outside).checkInside(TANK))
        .withMessage(
            "zone reef runs from 0.2 to 1.2 m along the tank's length, which runs from 0 to 0.9 m; "
                + "move it inside");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Zone("reef", new Rectangle(0, 1, 0, 1), 0.3, 0.2))
        .withMessage("zone reef must run downward from a depth of 0 m or more; got 0.3 to 0.2 m");
    Extent.volume().within(Zone.depths("all", TANK, 0, 0.5)).checkInside(TANK);
  }

  @Test
  void customIsStatedAsAssumed() {
    Demands one = Demands.byCustom(List.of(SOFT));
    assertThat(one.all())
        .containsExactly(
            new Demand.Coverage(SOFT, 0.7, new Extent.Volume(Optional.empty())),
            new Demand.Retention(0.85, Extent.volume()));
    assertThat(one.assumptions())
        .containsExactly(
            "No demand was stated; assumed 70 % of the water volume in soft (75–150 µmol m⁻² s⁻¹)"
                + " (common practice, no source).",
            "No demand was stated; assumed that at least 85 % of the lowest height's mean PPFD is"
                + " kept (common practice, no source).");
    Demands two = Demands.byCustom(List.of(SOFT, new Band("stony", 200, 350)));
    assertThat(((Demand.Coverage) two.all().get(1)).share()).isEqualTo(0.35);
    assertThat(two.assumptions().get(0))
        .isEqualTo(
            "No demand was stated; assumed a mixed tank with 70 % of the water volume in band,"
                + " shared equally among 2 bands (common practice, no source).");
    Demands aimed = Demands.byCustom(two.bands(), SOFT);
    assertThat(aimed.all()).isEqualTo(one.all());
    assertThat(aimed.bands()).isEqualTo(two.bands());
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Demands.byCustom(List.of()))
        .withMessage(
            "a recommendation needs a demand or a band to aim at; state a band, such as 75 to 150"
                + " µmol m⁻² s⁻¹");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Demands.stated(List.of(new Band("soft", 50, 100)), one.all()))
        .withMessage("two different bands are named soft; give each its own name");
    Band stony = new Band("stony", 200, 350);
    assertThat(Demands.stated(List.of(stony), one.all()).bands()).containsExactly(stony, SOFT);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Demands.stated(List.of(), List.of()))
        .withMessage(
            "a plan needs at least one demand; state one, or state a band and let custom decide");
  }
}
