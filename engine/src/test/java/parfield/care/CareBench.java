package parfield.care;

import java.time.Duration;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import parfield.field.Places;
import parfield.field.UnitFields;
import parfield.fit.PredictedField;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.Master;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Place;
import parfield.tank.Tank;

/** Invented fields for tests of this room: the light of each channel is stated, not solved. */
final class CareBench {
  static final Tank TANK = Tank.of(0.9, 0.6, 0.5);
  static final OutputCurve CURVED =
      new OutputCurve(new double[] {0, 20, 50, 80, 100}, new double[] {0, .05, .35, .8, 1});

  private CareBench() {}

  static Duration hours(double hours) {
    return Duration.ofSeconds(Math.round(3600 * hours));
  }

  static LocalTime at(String time) {
    return LocalTime.parse(time);
  }

  static Channel channel(String name, OutputCurve curve) {
    return new Channel(name, Optional.empty(), OptionalDouble.of(50), curve, Optional.empty());
  }

  static Fixture fixture(Channel... channels) {
    return new Fixture(
        "pendant", 0, 0, List.of(new Emitter(0, 0, 0)), List.of(channels), List.of());
  }

  static Fixture mastered(Channel... channels) {
    List<String> names = Arrays.stream(channels).map(Channel::name).toList();
    return new Fixture(
        "pendant",
        0,
        0,
        List.of(new Emitter(0, 0, 0)),
        List.of(channels),
        List.of(new Master("all", new TreeSet<>(names))));
  }

  static Rig rig(Fixture fixture, Setting setting) {
    return new Rig("low", TANK, List.of(Hanging.level(fixture, .45, .3, .2).withSetting(setting)));
  }

  /**
   * A field with the same light in each truth but for a factor.
   *
   * @param ppfd of each channel at full output, [channel][place]
   * @param factors one a draw
   */
  static PredictedField field(Rig rig, double[][] ppfd, double... factors) {
    List<Place> places = new ArrayList<>();
    for (int i = 0; i < ppfd[0].length; i++) {
      places.add(new Place(.1 + .01 * i, .3, .2));
    }
    return field(rig, Places.of(places), ppfd, factors);
  }

  static PredictedField field(Rig rig, Places places, double[][] ppfd, double... factors) {
    UnitFields best = new UnitFields(rig, places, new double[][][] {ppfd});
    double[][] discrepancy = new double[factors.length][places.size()];
    for (double[] row : discrepancy) {
      Arrays.fill(row, 1);
    }
    return new PredictedField(
        best, Arrays.stream(factors).mapToObj(factor -> best).toList(), discrepancy, factors);
  }
}
