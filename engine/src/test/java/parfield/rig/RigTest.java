package parfield.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.tank.Tank;

class RigTest {
  private static final Fixture LAMP =
      new Fixture(
          "pendant",
          0,
          0,
          List.of(new Emitter(0, 0, 0)),
          List.of(Channel.of("blue", new CosinePower(100, 2))),
          List.of());
  private static final Tank TANK = Tank.of(0.9, 0.6, 0.5);

  private static void refuses(ThrowingCallable make, String message) {
    assertThatThrownBy(make).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
  }

  @Test
  void knowsItsMeanHeight() {
    Rig rig =
        new Rig(
            "two",
            TANK,
            List.of(Hanging.level(LAMP, 0.2, 0.3, 0.1), Hanging.level(LAMP, 0.7, 0.3, 0.4)));
    assertThat(rig.meanHeight()).isCloseTo(0.25, within(1e-15));
  }

  @Test
  void changesOneThingAtATime() {
    Hanging hanging = new Hanging(LAMP, 0.2, 0.3, 0.1, 0.05, 0.6, Setting.full());
    Setting half = new Setting(Map.of("blue", 50.0));
    Rig rig = new Rig("one", TANK, List.of(hanging));
    Tank other = TANK.withBottomReflectance(0.4);

    assertThat(hanging.at(0.4, 0.5, 0.6))
        .isEqualTo(new Hanging(LAMP, 0.4, 0.5, 0.6, 0.05, 0.6, Setting.full()));
    assertThat(rig.withSetting(half).hangings())
        .containsExactly(new Hanging(LAMP, 0.2, 0.3, 0.1, 0.05, 0.6, half));
    assertThat(rig.withTank(other)).isEqualTo(new Rig("one", other, List.of(hanging)));
    assertThat(rig.withHangings(h -> h.at(0.4, 0.5, 0.6)).hangings())
        .containsExactly(hanging.at(0.4, 0.5, 0.6));
    Fixture renamed = new Fixture("other", 0, 0, LAMP.emitters(), LAMP.channels(), List.of());
    assertThat(hanging.withFixture(renamed).fixture()).isEqualTo(renamed);
  }

  @Test
  void refusesToHangInTheWater() {
    refuses(
        () -> Hanging.level(LAMP, 0, 0, 0),
        "fixture pendant: mounting height must be above 0 m, its emitters over the water; got 0.0"
            + " m");
    refuses(
        () -> Hanging.level(LAMP, 0, 0, Double.NaN),
        "fixture pendant: mounting height must be above 0 m, its emitters over the water; got NaN"
            + " m");
  }

  @Test
  void refusesAPlaceThatIsNone() {
    refuses(
        () -> Hanging.level(LAMP, Double.NaN, 0.3, 0.2),
        "fixture pendant: position and yaw must be finite; got NaN, 0.3 m, 0.0 rad");
    refuses(
        () -> new Hanging(LAMP, 0, 0, 0.2, 0, Double.POSITIVE_INFINITY, Setting.full()),
        "fixture pendant: position and yaw must be finite; got 0.0, 0.0 m, Infinity rad");
  }

  @Test
  void refusesToTiltBeyondTheHorizontal() {
    refuses(
        () -> new Hanging(LAMP, 0, 0, 0.2, Math.toRadians(135), 0, Setting.full()),
        "fixture pendant: tilt runs from -90 to 90 degrees; got 135.0");
    refuses(
        () -> new Hanging(LAMP, 0, 0, 0.2, Double.NaN, 0, Setting.full()),
        "fixture pendant: tilt runs from -90 to 90 degrees; got NaN");
  }

  @Test
  void refusesAnEmptyRig() {
    refuses(
        () -> new Rig("bare", TANK, List.of()), "rig bare needs at least one fixture; got none");
  }
}
