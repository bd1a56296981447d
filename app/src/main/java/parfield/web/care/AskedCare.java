package parfield.web.care;

import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parfield.answer.AskedDay;
import parfield.answer.Bench;
import parfield.answer.Numbers;
import parfield.answer.Problem;
import parfield.answer.Refusal;
import parfield.care.CoralGroup;
import parfield.care.HadLight;
import parfield.care.Livestock;
import parfield.care.Pace;
import parfield.rig.Rig;
import parfield.tank.Place;
import parfield.units.LengthUnit;
import parfield.web.measure.TypedNumber;

/**
 * What the page's form says, as it was typed: it stands in the address, so that nothing is lost.
 *
 * @param typed texts by the names of the fields
 */
public record AskedCare(Map<String, String> typed) {
  /** Letters in a field. */
  public static final int LONGEST = 400;

  /** Fields in the order of the form. */
  private static final List<String> FIELDS =
      List.of(
          "rig",
          "lit",
          "ramp",
          "channels",
          "x",
          "y",
          "depth",
          "maps",
          "group",
          "had",
          "known",
          "first",
          "tariff",
          "currency",
          "revision");

  /** What must be known before there is any light to tell of. */
  private static final Set<String> DAY_FIELDS =
      Set.of("rig", "lit", "ramp", "channels", "x", "y", "depth", "maps", "group");

  /** What numbers are, in words. */
  private static final Map<String, String> WORDS =
      Map.of(
          "x", "x of the place",
          "y", "y of the place",
          "depth", "the depth of the place",
          "maps", "the depth of the maps",
          "tariff", "the price of a kWh",
          "revision", "the revision");

  /** A day in which every ramp has room. */
  private static final String WHOLE_DAY = "00:00-00:00";

  private static final String NUMBER = "(\\d{1,9}(?:[.,]\\d{0,9})?|[.,]\\d{1,9})";

  public AskedCare {
    typed = Map.copyOf(typed);
  }

  /** What was typed, what is usual where nothing was. */
  static AskedCare of(Context context, Bench bench, LengthUnit unit) {
    Map<String, String> typed = new LinkedHashMap<>();
    String rig = context.queryParam("rig");
    Map<String, Rig> rigs = bench.setup().rigs();
    typed.put("rig", rig == null ? rigs.keySet().iterator().next() : rig);
    typed.put("lit", AskedDay.stated(bench).lit());
    typed.put("ramp", AskedDay.stated(bench).ramp());
    typed.put("channels", "");
    if (rigs.containsKey(typed.get("rig"))) {
      typed.put(
          "channels",
          String.join("\n", AskedDay.channels(bench, rigs.get(typed.get("rig")), List.of())));
    }
    typed.put("x", Numbers.length(bench.setup().tank().length() / 2, unit));
    typed.put("y", Numbers.length(bench.setup().tank().width() / 2, unit));
    typed.put("depth", Numbers.length(bench.usualDepth(), unit));
    typed.put("maps", "");
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

  /**
   * What is wrong with it, by field in the order of the form, each with its cure; empty if all can
   * be answered.
   */
  Map<String, String> faults(Bench bench, LengthUnit unit) {
    Map<String, String> faults = new LinkedHashMap<>();
    typed.forEach(
        (name, text) -> {
          if (text.length() > LONGEST) {
            faults.put(
                name, "what is typed here is too long: " + text.length() + " letters, at most 400");
          }
        });
    if (check(faults, "rig", () -> bench.rig(text("rig")))) {
      dayFaults(bench.rig(text("rig")), faults);
    }
    boolean x = check(faults, "x", () -> within("x", bench.setup().tank().length(), unit));
    boolean y = check(faults, "y", () -> within("y", bench.setup().tank().width(), unit));
    boolean depth =
        check(faults, "depth", () -> within("depth", bench.setup().tank().depth(), unit));
    if (x && y && depth) {
      check(faults, "depth", () -> place(bench, unit));
    }
    check(faults, "maps", () -> mapDepth(bench, unit));
    check(faults, "group", () -> group(bench));
    if (!text("had").isBlank()) {
      check(faults, "had", () -> had(bench));
    }
    check(faults, "first", this::first);
    check(faults, "tariff", this::tariff);
    check(faults, "revision", this::revision);
    Map<String, String> inOrder = new LinkedHashMap<>();
    for (String name : FIELDS) {
      if (faults.containsKey(name)) {
        inOrder.put(name, faults.get(name));
      }
    }
    return inOrder;
  }

  /** Times and ramps each by itself, then together, then what differs for channels. */
  private void dayFaults(Rig rig, Map<String, String> faults) {
    boolean lit = check(faults, "lit", () -> AskedDay.program(rig, text("lit"), "0", List.of()));
    boolean ramp =
        check(faults, "ramp", () -> AskedDay.program(rig, WHOLE_DAY, text("ramp"), List.of()));
    if (lit && ramp) {
      ramp =
          check(faults, "ramp", () -> AskedDay.program(rig, text("lit"), text("ramp"), List.of()));
    }
    String from = lit && ramp ? text("lit") : WHOLE_DAY;
    String rise = lit && ramp ? text("ramp") : "0";
    check(faults, "channels", () -> AskedDay.program(rig, from, rise, channels()));
  }

  /** Reads a field; notes why it cannot be read, unless something is noted already. */
  private static boolean check(Map<String, String> faults, String field, Runnable read) {
    try {
      read.run();
      return !faults.containsKey(field);
    } catch (Refusal e) {
      List<String> all = new ArrayList<>(List.of(e.problem().title()));
      e.problem().hints().stream().map(Problem.Hint::message).forEach(all::add);
      faults.putIfAbsent(field, String.join(": ", all));
      return false;
    }
  }

  /** Whether faults leave the light of the day unknown; others leave only a part of the page. */
  static boolean hindersTheDay(Map<String, String> faults) {
    return faults.keySet().stream().anyMatch(DAY_FIELDS::contains);
  }

  /** The coral's place. */
  Place place(Bench bench, LengthUnit unit) {
    return bench.checked(
        new Place(
            within("x", bench.setup().tank().length(), unit),
            within("y", bench.setup().tank().width(), unit),
            within("depth", bench.setup().tank().depth(), unit)),
        unit);
  }

  /** Depth of the maps [m]: the place's where none is typed. */
  double mapDepth(Bench bench, LengthUnit unit) {
    String name = text("maps").isBlank() ? "depth" : "maps";
    return within(name, bench.setup().tank().depth(), unit);
  }

  /** A length of the tank [m], typed in the unit of the page. */
  private double within(String name, double most, LengthUnit unit) {
    double length = unit.toMetres(number(name, "cm|in", unit.symbol()));
    if (!(length <= most + 1e-9)) {
      throw Refusal.of(
          String.format(
              Locale.ROOT,
              "%s lies outside the tank, which ends at %s",
              Numbers.withUnit(length, unit),
              Numbers.withUnit(most, unit)),
          "type a length from 0 to that");
    }
    return Math.min(length, most);
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
    if (text("had").isBlank()) {
      return HadLight.unknown(group(bench));
    }
    TypedNumber had = TypedNumber.read(text("had"));
    if (had.problem().isPresent()) {
      throw Refusal.of(had.problem().get());
    }
    double peak = had.value().orElseThrow();
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
      throw Refusal.of(
          "the first day cannot be read; got " + text("first"), "write it as in 2026-12-01");
    }
  }

  OptionalDouble tariff() {
    return text("tariff").isBlank()
        ? OptionalDouble.empty()
        : OptionalDouble.of(number("tariff", "[^0-9]*", ""));
  }

  int revision() {
    double revision = number("revision", "", "");
    if (revision != Math.rint(revision) || revision < 0 || revision > 1_000_000) {
      throw Refusal.of(
          "a revision is a whole number from 0 to 1000000; got " + text("revision").strip(),
          "begin with 0 and count up");
    }
    return (int) revision;
  }

  /**
   * A number of 0 or more, with a decimal point or comma.
   *
   * @param known pattern of the units that may stand behind it
   * @param unit the one that must, if any does; empty where any will do
   */
  private double number(String name, String known, String unit) {
    String text = text(name).strip();
    Matcher matcher = Pattern.compile(NUMBER + "\\s*(" + known + ")?").matcher(text);
    if (!matcher.matches()) {
      throw Refusal.of(
          text.isEmpty() ? WORDS.get(name) + " is empty" : text + " is no number of 0 or more",
          "type one, as in 12.5 or 12,5");
    }
    String typed = matcher.group(2);
    if (!unit.isEmpty() && typed != null && !typed.equals(unit)) {
      throw Refusal.of(
          "lengths are in " + unit + " here; got " + text, "type the number in " + unit);
    }
    return Double.parseDouble(matcher.group(1).replace(',', '.'));
  }
}
