package parfield.web.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.units.LengthUnit;

/** Entries of a setup, as lines of its text. */
public final class SetupLines {
  private SetupLines() {}

  /**
   * A rig.
   *
   * @param name of it
   * @param rig what hangs; fixtures of one kind dialled alike
   * @param unit of the setup's lengths
   */
  public static List<String> rig(String name, Rig rig, LengthUnit unit) {
    List<String> lines = new ArrayList<>();
    lines.add(YamlText.quoted(name) + ":");
    lines.add("  hang:");
    hangings(rig, unit).forEach(hanging -> lines.add("    - " + hanging));
    return lines;
  }

  /** The same on one line, for a map in braces. */
  public static String rigInLine(String name, Rig rig, LengthUnit unit) {
    return YamlText.quoted(name) + ": {hang: [" + String.join(", ", hangings(rig, unit)) + "]}";
  }

  private static List<String> hangings(Rig rig, LengthUnit unit) {
    List<String> lines = new ArrayList<>();
    for (Hanging hanging : rig.hangings()) {
      String turned =
          (hanging.tilt() == 0 ? "" : ", tilt: " + fine(Math.toDegrees(hanging.tilt())))
              + (hanging.yaw() == 0 ? "" : ", yaw: " + fine(Math.toDegrees(hanging.yaw())));
      lines.add(
          String.format(
              Locale.ROOT,
              "{fixture: %s, x: %s, y: %s, height: %s%s, dials: %s}",
              YamlText.quoted(hanging.fixture().name()),
              fine(unit.fromMetres(hanging.x())),
              fine(unit.fromMetres(hanging.y())),
              fine(unit.fromMetres(hanging.height())),
              turned,
              dials(hanging)));
    }
    return lines;
  }

  private static String dials(Hanging hanging) {
    Map<String, Double> all = new TreeMap<>();
    hanging.fixture().dials().forEach(dial -> all.put(dial, hanging.setting().percent(dial)));
    return all.entrySet().stream()
        .map(dial -> YamlText.quoted(dial.getKey()) + ": " + fine(dial.getValue()))
        .collect(Collectors.joining(", ", "{", "}"));
  }

  private static String fine(double value) {
    double rounded = Math.round(value * 1e4) / 1e4;
    return rounded == Math.rint(rounded)
        ? String.format(Locale.ROOT, "%.0f", rounded)
        : String.valueOf(rounded);
  }
}
