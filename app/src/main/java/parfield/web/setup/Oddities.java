package parfield.web.setup;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import parfield.answer.Numbers;
import parfield.formats.Setup;
import parfield.formats.SetupPath;
import parfield.lamp.Fixture;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.survey.Meter;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/** What is odd but possible in a setup: said beside the field, and kept. */
final class Oddities {
  // Where values begin to be odd: common practice, no source.
  private static final double LONG_TANK = 4;
  private static final double SHORT_TANK = 0.2;
  private static final double DEEP_WATER = 1.2;
  private static final double SHALLOW_WATER = 0.1;
  private static final double HIGH = 1;
  private static final double LOW = 0.04;
  private static final double STRONG = 1500;
  private static final double YELLOW = 0.5;
  private static final double UNSURE = 0.2;
  private static final double BRIGHT = 1500;

  private final Map<String, String> remarks = new LinkedHashMap<>();
  private final LengthUnit unit;

  private Oddities(LengthUnit unit) {
    this.unit = unit;
  }

  /** By address of the value, what is odd about it; lengths are told in a unit. */
  static Map<String, String> of(Setup setup, LengthUnit unit) {
    Oddities odd = new Oddities(unit);
    odd.tank(setup.tank());
    setup.rigs().values().forEach(odd::rig);
    setup.fixtures().values().forEach(odd::fixture);
    setup.meters().values().forEach(odd::meter);
    setup.bands().values().forEach(odd::band);
    return odd.remarks;
  }

  private void say(SetupPath path, String words) {
    remarks.put(path.pointer(), words + ": kept as it is, look again");
  }

  private String shown(double metres) {
    return Numbers.withUnit(metres, unit);
  }

  private void tank(Tank tank) {
    size(SetupForm.TANK.key("length"), tank.length());
    size(SetupForm.TANK.key("width"), tank.width());
    if (tank.depth() > DEEP_WATER || tank.depth() < SHALLOW_WATER) {
      say(SetupForm.TANK.key("water"), shown(tank.depth()) + " is unusual for a depth of water");
    }
    if (tank.water().yellowing() > YELLOW) {
      say(
          SetupForm.TANK.key("yellowing"),
          String.format(
              Locale.ROOT, "%s 1/m is yellow as tea", Numbers.ratio(tank.water().yellowing())));
    }
  }

  private void size(SetupPath path, double size) {
    if (size > LONG_TANK || size < SHORT_TANK) {
      say(path, shown(size) + " is unusual for a tank");
    }
  }

  private void rig(Rig rig) {
    Tank tank = rig.tank();
    for (int i = 0; i < rig.hangings().size(); i++) {
      Hanging hung = rig.hangings().get(i);
      SetupPath path = SetupForm.RIGS.name(rig.name()).key("hang").at(i);
      if (hung.x() < 0 || hung.x() > tank.length()) {
        say(path.key("x"), shown(hung.x()) + " is beside the tank");
      }
      if (hung.y() < 0 || hung.y() > tank.width()) {
        say(path.key("y"), shown(hung.y()) + " is beside the tank");
      }
      if (hung.height() > HIGH || hung.height() < LOW) {
        say(path.key("height"), shown(hung.height()) + " is unusual for a mounting height");
      }
    }
  }

  private void fixture(Fixture fixture) {
    fixture
        .channels()
        .forEach(
            channel -> {
              if (channel.watts().orElse(0) > STRONG) {
                say(
                    SetupForm.FIXTURES
                        .name(fixture.name())
                        .key("channels")
                        .name(channel.name())
                        .key("watts"),
                    "more than " + Numbers.ppfd(STRONG) + " W is much for one channel");
              }
            });
  }

  private void meter(Meter meter) {
    if (meter.scaleError() > UNSURE) {
      say(
          SetupForm.METERS.name(meter.name()).key("scale error"),
          Numbers.percent(meter.scaleError()) + " % is a doubtful meter");
    }
    if (meter.repeatError() > UNSURE) {
      say(
          SetupForm.METERS.name(meter.name()).key("repeat error"),
          Numbers.percent(meter.repeatError()) + " % is a restless meter");
    }
  }

  private void band(Band band) {
    if (band.to() > BRIGHT) {
      say(
          SetupForm.BANDS.name(band.name()).key("to"),
          Numbers.ppfd(band.to()) + " is about full sun");
    }
  }
}
