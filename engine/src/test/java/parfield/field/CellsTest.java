package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parfield.aquascape.Aquascape;
import parfield.aquascape.Box;
import parfield.aquascape.Rock;
import parfield.optics.Reflectance;
import parfield.tank.Place;
import parfield.tank.Tank;

class CellsTest {
  /** The middle third of the plan, in the lower half. */
  private static final Tank TANK =
      Tank.of(.9, .6, .4)
          .withAquascape(
              Aquascape.of(
                  List.of(
                      new Rock(
                          "block", new Box(.45, .3, .3, .3, .7, .2, 0), Reflectance.gray(.1)))));

  @Test
  void cellsInRockAreLeftOut() {
    Places places = Places.volume(TANK, 3, 2, 2);
    Cells cells = places.cells().orElseThrow();
    assertThat(IntStream.range(0, cells.size()).map(cells::cell))
        .containsExactly(0, 1, 2, 3, 4, 5, 6, 8, 9, 11);
    assertThat(cells.first(0)).isZero();
    assertThat(cells.first(1)).isEqualTo(6);
    assertThat(cells.first(2)).isEqualTo(10);
    assertThat(places.get(7)).isEqualTo(new Place(.9 * 2.5 / 3, .15, .4 * 1.5 / 2));
    places.requireInWater(TANK);
  }

  @Test
  void picturesTakeTheNearestWaterForRock() {
    Cells cells = Places.plane(TANK, .3, 3, 2).cells().orElseThrow();
    assertThat(cells.whole(new double[] {1, 2, 3, 4})).containsExactly(1, 1, 2, 3, 3, 4);
    Cells upright = Places.upright(TANK, 3, 2).cells().orElseThrow();
    assertThat(upright.size()).isEqualTo(5);
    assertThat(upright.whole(new double[] {1, 2, 3, 4, 5})).containsExactly(1, 2, 3, 4, 2, 5);
    assertThatThrownBy(() -> cells.whole(new double[6]))
        .hasMessage(
            "a picture needs one value for each cell in water of one layer, one at least; got 6 for"
                + " 4 in 1");
  }

  @Test
  void aPlaneAllOfRockIsRefused() {
    assertThatThrownBy(() -> Places.plane(TANK, .3, 1, 2))
        .hasMessage("there is no water among the 2 cells: rocks fill them all");
  }

  @Test
  void listsOfPlacesAreNoCells() {
    assertThat(Places.of(List.of(new Place(.1, .1, .1))).cells()).isEmpty();
  }
}
