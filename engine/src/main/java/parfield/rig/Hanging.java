package parfield.rig;

import java.util.Locale;
import java.util.Objects;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;

/**
 * One fixture as it hangs.
 *
 * @param fixture what hangs
 * @param x of its centre along the tank's length [m]
 * @param y of its centre from front to back [m]
 * @param height of its emitters above the still water surface: the mounting height [m], above 0
 * @param tilt rotation about its own length axis, positive turns the light toward +y [rad]
 * @param yaw rotation about the vertical, from +x toward +y [rad]
 * @param setting its dials
 */
public record Hanging(
    Fixture fixture, double x, double y, double height, double tilt, double yaw, Setting setting) {
  public Hanging {
    Objects.requireNonNull(fixture, "fixture");
    Objects.requireNonNull(setting, "setting");
    if (!(height > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "fixture %s: mounting height must be above 0 m, its emitters over the water; got %s m",
              fixture.name(),
              height));
    }
    if (!Double.isFinite(x) || !Double.isFinite(y) || !Double.isFinite(yaw)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "fixture %s: position and yaw must be finite; got %s, %s m, %s rad",
              fixture.name(),
              x,
              y,
              yaw));
    }
    if (!(Math.abs(tilt) <= Math.PI / 2)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "fixture %s: tilt runs from -90 to 90 degrees; got %s",
              fixture.name(),
              Math.toDegrees(tilt)));
    }
  }

  /** A fixture hung level and square to the tank, all dials at 100. */
  public static Hanging level(Fixture fixture, double x, double y, double height) {
    return new Hanging(fixture, x, y, height, 0, 0, Setting.full());
  }

  /** This hanging with another fixture in its place. */
  public Hanging withFixture(Fixture newFixture) {
    return new Hanging(newFixture, x, y, height, tilt, yaw, setting);
  }

  /** This hanging at another place. */
  public Hanging at(double newX, double newY, double newHeight) {
    return new Hanging(fixture, newX, newY, newHeight, tilt, yaw, setting);
  }

  /** This hanging at another setting. */
  public Hanging withSetting(Setting newSetting) {
    return new Hanging(fixture, x, y, height, tilt, yaw, newSetting);
  }
}
