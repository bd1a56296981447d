package parfield.rig;

import java.util.List;
import java.util.Objects;
import java.util.function.UnaryOperator;
import parfield.lamp.Setting;
import parfield.tank.Tank;

/**
 * Fixtures hung over a tank, at settings: one scene.
 *
 * @param name what the bench calls it
 * @param tank what they hang over
 * @param hangings the fixtures, at least one
 */
public record Rig(String name, Tank tank, List<Hanging> hangings) {
  public Rig {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(tank, "tank");
    hangings = List.copyOf(hangings);
    if (hangings.isEmpty()) {
      throw new IllegalArgumentException(
          String.format("rig %s needs at least one fixture; got none", name));
    }
  }

  /** This rig over another tank. */
  public Rig withTank(Tank newTank) {
    return new Rig(name, newTank, hangings);
  }

  /** This rig with each hanging replaced. */
  public Rig withHangings(UnaryOperator<Hanging> change) {
    return new Rig(name, tank, hangings.stream().map(change).toList());
  }

  /** This rig with every fixture at one setting. */
  public Rig withSetting(Setting setting) {
    return withHangings(hanging -> hanging.withSetting(setting));
  }

  /** Mean mounting height of the fixtures [m]. */
  public double meanHeight() {
    return hangings.stream().mapToDouble(Hanging::height).average().orElseThrow();
  }
}
