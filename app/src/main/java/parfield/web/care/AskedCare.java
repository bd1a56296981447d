package parfield.web.care;

import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.answer.AskedDay;
import parfield.answer.Bench;
import parfield.answer.Numbers;
import parfield.answer.Refusal;
import parfield.care.CoralGroup;
import parfield.care.HadLight;
import parfield.care.Livestock;
import parfield.care.Pace;
import parfield.tank.Place;
import parfield.units.LengthUnit;

/**
 * What the page's form says, as it was typed: it stands in the address, so that nothing is lost.
 *
 * @param typed texts by the names of the fields
 */
public record AskedCare(Map<String, String> typed) {
  private static final int LONGEST = 400;

  public AskedCare {
    typed = Map.copyOf(typed);
  }

  /** What was typed, what is usual where nothing was. */
  static AskedCare of(Context context, Bench bench, LengthUnit unit) {
    Map<String, String> typed = new LinkedHashMap<>();
    typed.put("rig", bench.setup().rigs().keySet().iterator().next());
    typed.put("lit", AskedDay.LIT);
    typed.put("ramp", AskedDay.RAMP);
    typed.put("channels", "");
    typed.put("x", Numbers.length(bench.setup().tank().length() / 2, unit));
    typed.put("y", Numbers.length(bench.setup().tank().width() / 2, unit));
    typed.put("depth", Numbers.length(bench.usualDepth(), unit));
    typed.put("group", brightest(bench));
    typed.put("had", "");
    typed.put("known", "told");
    typed.put("first", LocalDate.now(ZoneId.systemDefault()).toString());
    typed.put("tariff", "");
    typed.put("currency", "");
    typed.put("revision", "0");
    for (String name : List.copyOf(typed.keySet())) {
      String text = context.queryParam(name);
      if (text != null) {
        if (text.length() > LONGEST) {
          throw Refusal.of("the field " + name + " is too long", "type at most 400 letters");
        }
        typed.put(name, text);
      }
    }
    return new AskedCare(typed);
  }

  /** What was typed into a field. */
  public String text(String name) {
    return typed.get(name);
  }

  /** The lines of what differs for channels. */
  List<String> channels() {
    return text("channels").lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
  }

  Place place(Bench bench, LengthUnit unit) {
    Place place =
        new Place(
            unit.toMetres(number("x", "x")),
            unit.toMetres(number("y", "y")),
            unit.toMetres(number("depth", "the depth")));
    if (!bench.setup().tank().contains(place)) {
      throw Refusal.of(
          "the place "
              + Numbers.spot(place, unit)
              + ", "
              + Numbers.withUnit(place.depth(), unit)
              + " deep, is not in the water",
          "choose a place between the panes, in no rock");
    }
    return place;
  }

  /** The group that wants most light: a plan of steps for another may have no end that suits it. */
  private static String brightest(Bench bench) {
    return groups(bench).stream()
        .max(Comparator.comparingDouble(group -> group.ppfd().from()))
        .orElseThrow()
        .name();
  }

  /** The groups: the bench's own in place of the common ones. */
  public static List<CoralGroup> groups(Bench bench) {
    return new ArrayList<>(Livestock.with(bench.setup().livestock()).values());
  }

  /** The coral's group. */
  public CoralGroup group(Bench bench) {
    CoralGroup group = Livestock.with(bench.setup().livestock()).get(text("group"));
    if (group == null) {
      throw Refusal.of(text("group") + " is no group of corals", "choose one of the list");
    }
    return group;
  }

  HadLight had(Bench bench) {
    CoralGroup group = group(bench);
    if (text("had").isBlank()) {
      return HadLight.unknown(group);
    }
    double peak = number("had", "the PPFD it had");
    try {
      return new HadLight(
          "measured".equals(text("known")) ? Pace.Known.MEASURED : Pace.Known.TOLD,
          OptionalDouble.of(peak),
          OptionalDouble.empty());
    } catch (IllegalArgumentException e) {
      throw Refusal.of(e.getMessage());
    }
  }

  LocalDate first() {
    try {
      return LocalDate.parse(text("first").strip());
    } catch (DateTimeException e) {
      throw Refusal.of("a day is written as in 2026-12-01; got " + text("first"));
    }
  }

  OptionalDouble tariff() {
    return text("tariff").isBlank()
        ? OptionalDouble.empty()
        : OptionalDouble.of(number("tariff", "the tariff"));
  }

  int revision() {
    double revision = number("revision", "the revision");
    if (revision != Math.rint(revision) || revision < 0 || revision > 1_000_000) {
      throw Refusal.of("a revision is a whole number of 0 or more; got " + text("revision"));
    }
    return (int) revision;
  }

  /** A number, with a decimal comma too and a unit behind it. */
  private double number(String name, String what) {
    String digits =
        Optional.of(text(name).strip().replace(',', '.'))
            .map(text -> text.replaceAll("[^0-9.].*$", ""))
            .orElse("");
    try {
      return Double.parseDouble(digits);
    } catch (NumberFormatException e) {
      throw Refusal.of(what + " must be a number of 0 or more; got " + text(name));
    }
  }
}
