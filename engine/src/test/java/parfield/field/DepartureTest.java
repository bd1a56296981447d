package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import parfield.optics.Agitation;
import parfield.optics.Scattering;
import parfield.optics.Water;
import parfield.tank.Lid;
import parfield.tank.Opening;
import parfield.tank.Tank;

/** The fast solver says where it leaves its ground, and what that costs. */
class DepartureTest {
  private static final Tank TANK = Tank.of(.9, .6, .5).withBottomReflectance(.3);

  @Test
  void aCommonTankIsItsGround() {
    assertThat(Departure.of(TANK)).isEmpty();
    assertThat(Departure.of(TANK.withSurface(Agitation.GENTLE))).isEmpty();
    assertThat(
            Departure.of(
                TANK.withWater(Water.seaWater(.3).withScattering(Scattering.particles(.1)))))
        .isEmpty();
  }

  @Test
  void itSaysWhatItLeavesOut() {
    assertThat(words(TANK.withSurface(Agitation.STRONG)))
        .containsExactly(
            "The surface moves strongly, and what waves do to light between the shadows is left"
                + " out: predicted PPFD is off by about 1.0 %, by 2.5 % in places.");
    assertThat(words(TANK.withWater(Water.seaWater(0).withScattering(Scattering.particles(.5)))))
        .containsExactly(
            "The water is turbid, and scattering is left out: predicted PPFD is off by about 0.8 %,"
                + " by 2.0 % in places.");
    assertThat(words(TANK.withOpening(new Opening(0, List.of(), new Lid.None(), .06))))
        .containsExactly(
            "The panes stand above the water, and what their dry glass throws back is left out:"
                + " predicted PPFD is off by about 0.5 %, by 2.6 % in places.");
  }

  private static List<String> words(Tank tank) {
    return Departure.of(tank).stream().map(Departure::inWords).toList();
  }
}
