package parfield.web.explore;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import parfield.answer.Refusal;
import parfield.formats.Setup;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.rig.Hanging;
import parfield.rig.Rig;

/** A rig as a page asks for it: JSON, every number checked, lengths in metres. */
final class AskedRig {
  /** More fixtures than this are no rig over a tank. */
  private static final int MOST = 16;

  /** Farther than this from the tank's corner nothing hangs [m]. */
  private static final double FARTHEST = 20;

  private AskedRig() {}

  /**
   * Reads {@code {name, hangings: [{fixture, x, y, height, tilt, yaw}], dials: {fixture: {dial:
   * percent}}}}.
   *
   * @throws Refusal if it is no rig; the message names the number
   */
  static Rig read(JsonNode json, Setup setup) {
    JsonNode hangings = json.path("hangings");
    if (!hangings.isArray() || hangings.isEmpty() || hangings.size() > MOST) {
      throw Refusal.of(
          String.format(Locale.ROOT, "a rig hangs 1 to %d fixtures; got %d", MOST, hangings.size()),
          "hang fewer fixtures, or one at least");
    }
    List<Hanging> hung = new ArrayList<>();
    for (JsonNode hanging : hangings) {
      Fixture fixture = setup.fixtures().get(hanging.path("fixture").asText());
      if (fixture == null) {
        throw Refusal.of(
            "the setup states no fixture named " + hanging.path("fixture").asText(),
            "its fixtures are " + String.join(", ", setup.fixtures().keySet()));
      }
      hung.add(
          new Hanging(
              fixture,
              number(hanging, "x", -FARTHEST, FARTHEST),
              number(hanging, "y", -FARTHEST, FARTHEST),
              number(hanging, "height", 0.005, FARTHEST),
              hanging.has("tilt") ? number(hanging, "tilt", -Math.PI / 2, Math.PI / 2) : 0,
              hanging.has("yaw") ? number(hanging, "yaw", -2 * Math.PI, 2 * Math.PI) : 0,
              setting(json.path("dials").path(fixture.name()), fixture)));
    }
    try {
      return new Rig(json.path("name").asText("the rig explored"), setup.tank(), hung);
    } catch (IllegalArgumentException e) {
      throw Refusal.of(e.getMessage(), "move the fixtures");
    }
  }

  private static Setting setting(JsonNode dials, Fixture fixture) {
    Map<String, Double> setting = new LinkedHashMap<>();
    for (String dial : fixture.dials()) {
      if (dials.has(dial)) {
        setting.put(dial, number(dials, dial, 0, 100));
      }
    }
    return new Setting(setting);
  }

  /** A number within limits. */
  static double number(JsonNode of, String name, double low, double high) {
    JsonNode value = of.path(name);
    double number = value.asDouble(Double.NaN);
    if (!value.isNumber() || !(number >= low && number <= high)) {
      throw Refusal.of(
          String.format(
              Locale.ROOT,
              "%s: got %s, allowed %s to %s",
              name,
              value.isMissingNode() ? "nothing" : value,
              low,
              high),
          "type a number within the limits");
    }
    return number;
  }
}
