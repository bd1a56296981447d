package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.OutputCurve;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.tank.Place;
import parfield.tank.Tank;

class FieldMessagesTest {
  private static final Tank TANK = Tank.of(.9, .6, .5);

  private static Rig rig(Channel channel) {
    Fixture lamp =
        new Fixture("pendant", 0, 0, List.of(new Emitter(0, 0, 0)), List.of(channel), List.of());
    return new Rig("one", TANK, List.of(Hanging.level(lamp, .45, .3, .2)));
  }

  private static void refuses(ThrowingCallable call, String message) {
    assertThatThrownBy(call).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
  }

  @Test
  void namesThePlaceThatLiesOutside() {
    Rig rig = rig(Channel.of("white", new CosinePower(100, 2)));
    Places places = Places.of(List.of(new Place(.1, .1, .1), new Place(.1, .7, .1)));
    String message =
        "place 1 lies outside the water: x 0.1, y 0.7, depth 0.1 m in a tank of 0.9 x 0.6 x 0.5 m";
    FastSolver solver = new FastSolver();
    refuses(() -> solver.solve(rig, places), message);
    refuses(() -> solver.paths(rig, places, PhotonSpectrum.flat()), message);
    refuses(
        () -> solver.solve(rig, Places.of(List.of(new Place(.1, Double.NaN, .1)))),
        "place 0 lies outside the water: x 0.1, y NaN, depth 0.1 m in a tank of 0.9 x 0.6 x 0.5 m");
  }

  @Test
  void namesTheChannelThatHasNoDistribution() {
    Channel unknown =
        new Channel(
            "violet",
            Optional.empty(),
            OptionalDouble.empty(),
            OutputCurve.proportional(),
            Optional.empty());
    refuses(
        () -> new FastSolver().solve(rig(unknown), Places.plane(TANK, .2, 2, 2)),
        "fixture pendant: channel violet has no intensity distribution yet; fit a survey first");
  }

  @Test
  void refusesAGridWithoutCells() {
    refuses(
        () -> Places.plane(TANK, .2, 0, 3),
        "a grid of cells needs at least one each way; got 0 x 3 x 1");
    refuses(
        () -> Places.volume(TANK, 2, 3, 0),
        "a grid of cells needs at least one each way; got 2 x 3 x 0");
  }

  @Test
  void refusesValuesThatAreNoField() {
    Places places = Places.plane(TANK, .2, 2, 1);
    refuses(
        () -> new LightField(places, new double[3]),
        "a field needs one value a place; got 3 for 2");
    refuses(
        () -> new LightField(places, new double[] {1, Double.NaN}),
        "the field is not a number at place 1");
  }

  @Test
  void gridsRunAlongXFirstThenYThenDepth() {
    Places volume = Places.volume(TANK, 3, 2, 2);
    assertThat(volume.size()).isEqualTo(12);
    assertThat(volume.get(0)).isEqualTo(new Place(.9 * .5 / 3, .15, .125));
    assertThat(volume.get(1).x()).isEqualTo(.9 * 1.5 / 3);
    assertThat(volume.get(3).y()).isEqualTo(.6 * 1.5 / 2);
    assertThat(volume.get(6).depth()).isEqualTo(.375);
    assertThat(Places.plane(TANK, .2, 3, 2).get(5))
        .isEqualTo(new Place(.9 * 2.5 / 3, .6 * 1.5 / 2, .2));
  }

  @Test
  void aFieldHandsOutCopies() {
    double[] values = {1, 2};
    LightField field = new LightField(Places.plane(TANK, .2, 2, 1), values);
    values[0] = 9;
    field.ppfd()[1] = 9;
    assertThat(field.ppfd()).containsExactly(1, 2);
  }
}
