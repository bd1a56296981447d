package parfield.web.setup;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parfield.answer.Refusal;
import parfield.formats.SetupPath;
import parfield.formats.SetupText;
import parfield.formats.SetupValue;
import parfield.units.LengthUnit;

/** What the form adds to a setup: something whole, near what stands there, to be changed. */
final class Additions {
  private final SetupText text;
  private final LengthUnit unit;

  private Additions(SetupText text) {
    this.text = text;
    this.unit = SetupForm.stored(text);
  }

  /**
   * The text with one more of what a group holds.
   *
   * @param text of the setup
   * @param group a section or a list of the form
   * @throws Refusal if what it would name is not there yet
   */
  static SetupText to(SetupText text, FormGroup group) {
    Additions additions = new Additions(text);
    SetupPath path = group.path();
    return switch (group.adds()) {
      case "rig" -> additions.named(path, "rig", additions.rig());
      case "meter" -> additions.named(path, "meter", fields("applied", figure("true")));
      case "survey" -> additions.named(path, "survey", additions.survey());
      case "band" ->
          additions.named(path, "band", fields("from", figure("100"), "to", figure("200")));
      case "channel" -> additions.named(path, "channel", new SetupValue.Fields(Map.of()));
      case "master" -> additions.named(path, "master", additions.master(path));
      case "rock" -> additions.named(path, "rock", additions.rock());
      case "emitter" -> text.with(path.at(text.size(path)), additions.emitter(path));
      case "brace" ->
          text.with(
              path.at(text.size(path)),
              fields(
                  "from", additions.share("length", 0.48), "to", additions.share("length", 0.52)));
      case "opaque part" ->
          text.with(
              path.at(text.size(path)),
              fields(
                  "x", additions.span("length", 0.1),
                  "y", additions.span("width", 0.1)));
      case "fixture" ->
          path.equals(SetupForm.FIXTURES)
              ? additions.named(path, "fixture", newFixture())
              : text.with(path.at(text.size(path)), additions.hung(path));
      default -> throw Refusal.of("nothing can be added there", "load the page again");
    };
  }

  /** A map of keys and values, one after the other. */
  private static SetupValue fields(Object... entries) {
    Map<String, SetupValue> map = new LinkedHashMap<>();
    for (int i = 0; i < entries.length; i += 2) {
      map.put((String) entries[i], (SetupValue) entries[i + 1]);
    }
    return new SetupValue.Fields(map);
  }

  private static SetupValue figure(String digits) {
    return new SetupValue.Figure(digits);
  }

  private static SetupValue name(String name) {
    return new SetupValue.Text(name);
  }

  private static SetupValue list(SetupValue... values) {
    return new SetupValue.Items(List.of(values));
  }

  private SetupText named(SetupPath path, String kind, SetupValue value) {
    return text.with(path.name(free(text.names(path), kind)), value);
  }

  /** The first name of a kind that is not taken: {@code rig}, {@code rig 2} … */
  static String free(List<String> taken, String kind) {
    String name = kind;
    for (int i = 2; taken.contains(name); i++) {
      name = kind + " " + i;
    }
    return name;
  }

  private static SetupValue newFixture() {
    return fields(
        "emitters", list(fields("x", figure("0"), "y", figure("0"))),
        "channels", fields("all", new SetupValue.Fields(Map.of())),
        "distribution", name("fitted"));
  }

  private SetupValue rock() {
    return fields(
        "box",
            fields(
                "length", share("length", 0.2),
                "width", share("width", 0.3),
                "height", share("water", 0.3)),
        "x", share("length", 0.5),
        "y", share("width", 0.5));
  }

  private SetupValue emitter(SetupPath path) {
    SetupValue last = last(path).orElse(new SetupValue.Nothing());
    return last instanceof SetupValue.Fields ? last : fields("x", figure("0"), "y", figure("0"));
  }

  private Optional<SetupValue> last(SetupPath list) {
    int size = text.size(list);
    return size == 0 ? Optional.empty() : text.value(list.at(size - 1));
  }

  private SetupValue rig() {
    List<String> rigs = text.names(SetupForm.RIGS);
    if (!rigs.isEmpty()) {
      return text.value(SetupForm.RIGS.name(rigs.get(rigs.size() - 1))).orElseThrow();
    }
    return fields("hang", list(newHung()));
  }

  private SetupValue hung(SetupPath path) {
    return last(path).filter(SetupValue.Fields.class::isInstance).orElseGet(this::newHung);
  }

  private SetupValue newHung() {
    return fields(
        "fixture", name(first(SetupForm.FIXTURES, "fixture")),
        "x", share("length", 0.5),
        "y", share("width", 0.5),
        "height", figure(unit == LengthUnit.INCH ? "8" : "20"));
  }

  private SetupValue survey() {
    return fields(
        "rig", name(first(SetupForm.RIGS, "rig")),
        "meter", name(first(SetupForm.METERS, "meter")),
        "grid", fields("depths", list(share("water", 0.3))));
  }

  private String first(SetupPath path, String kind) {
    List<String> names = text.names(path);
    if (names.isEmpty()) {
      throw Refusal.of("this needs a " + kind + ", and there is none", "add a " + kind + " first");
    }
    return names.get(0);
  }

  private SetupValue master(SetupPath dials) {
    List<SetupValue> channels = new ArrayList<>();
    text.names(dials.parent().key("channels")).forEach(channel -> channels.add(name(channel)));
    return fields("scales", new SetupValue.Items(channels));
  }

  private SetupValue span(String size, double end) {
    return list(figure("0"), share(size, end));
  }

  /** A share of a size of the tank, to a whole unit or a tenth; 10 where the size is no number. */
  private SetupValue share(String size, double share) {
    String stated = text.value(SetupForm.TANK.key(size)).map(SetupValue::plain).orElse("");
    double value = stated.matches("\\d{1,6}(\\.\\d{1,6})?") ? Double.parseDouble(stated) : 20;
    return figure(
        BigDecimal.valueOf(Math.max(1, Math.round(10 * value * share)), 1)
            .stripTrailingZeros()
            .toPlainString());
  }
}
