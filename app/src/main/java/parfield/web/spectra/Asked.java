package parfield.web.spectra;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import parfield.units.LengthUnit;

/**
 * What a person chose and typed, with the faults of it by field. Numbers may have a decimal comma
 * and their unit behind them. For one request.
 */
public final class Asked {
  private static final int LONGEST = 40;

  /** Names the unit in which lengths were typed. */
  private static final String UNIT = "in";

  private static final List<String> LENGTHS = List.of("depth", "distance", "width", "tall");

  private static final Pattern NUMBER =
      Pattern.compile("([+-]?(?:\\d+(?:[.,]\\d*)?|[.,]\\d+))\\s*([^\\d.,].*)?");

  private static final Pattern GROUPED = Pattern.compile("[+-]?[1-9]\\d{0,2},\\d{3}");

  private final Map<String, List<String>> values;
  private final Map<String, String> faults = new LinkedHashMap<>();

  Asked(Map<String, List<String>> values) {
    this.values = values;
  }

  static Asked of(Context context) {
    return new Asked(context.queryParamMap());
  }

  /** What a field holds, as it was typed: the last of that name; nothing where it is blank. */
  public Optional<String> text(String field) {
    List<String> all = all(field);
    return all.isEmpty()
        ? Optional.empty()
        : Optional.of(all.get(all.size() - 1).strip()).filter(text -> !text.isEmpty());
  }

  /** What a field holds, or something else where it is blank. */
  public String text(String field, String otherwise) {
    return text(field).orElse(otherwise);
  }

  /** All that fields of one name hold. */
  public List<String> all(String field) {
    return values.getOrDefault(field, List.of());
  }

  /** Whether a field was sent, blank or not. */
  public boolean has(String field) {
    return values.containsKey(field);
  }

  /** What is wrong with a field; empty if nothing is. */
  public String fault(String field) {
    return faults.getOrDefault(field, "");
  }

  /** What is wrong, by field. */
  public Map<String, String> faults() {
    return faults;
  }

  /**
   * The name of a field about one of several things: it goes with the thing's name, so that what
   * was typed never belongs to another when one is added or taken away.
   */
  public static String field(String kind, String name) {
    CRC32 check = new CRC32();
    check.update(name.getBytes(StandardCharsets.UTF_8));
    return String.format(Locale.ROOT, "%s-%08x", kind, check.getValue());
  }

  /**
   * The same with lengths in another unit, where they were typed in one that is stated: the choice
   * of unit changes what is shown, never what is meant.
   */
  Asked shownIn(LengthUnit unit) {
    Optional<LengthUnit> typed =
        text(UNIT)
            .flatMap(
                symbol ->
                    Stream.of(LengthUnit.values())
                        .filter(each -> each.symbol().equals(symbol))
                        .findFirst());
    if (typed.isEmpty() || typed.get() == unit) {
      return this;
    }
    Map<String, List<String>> shown = new LinkedHashMap<>(values);
    for (String field : LENGTHS) {
      OptionalDouble value = new Asked(values).number(field, -1e9, 1e9, "");
      if (value.isPresent()) {
        shown.put(
            field, List.of(plain(unit.fromMetres(typed.get().toMetres(value.getAsDouble())))));
      }
    }
    shown.put(UNIT, List.of(unit.symbol()));
    return new Asked(shown);
  }

  /** All of it as it stands in an address. */
  String query() {
    return values.entrySet().stream()
        .flatMap(field -> field.getValue().stream().map(value -> pair(field.getKey(), value)))
        .collect(Collectors.joining("&"));
  }

  private static String pair(String name, String value) {
    return URLEncoder.encode(name, StandardCharsets.UTF_8)
        + "="
        + URLEncoder.encode(value, StandardCharsets.UTF_8);
  }

  /** Notes what is wrong with a field. */
  void fault(String field, String message) {
    faults.putIfAbsent(field, message);
  }

  /**
   * A number, if one was typed; what is none becomes a fault.
   *
   * @param field its name
   * @param low least
   * @param high greatest
   * @param unit after the limits, empty for a pure number
   */
  OptionalDouble number(String field, double low, double high, String unit) {
    Optional<String> typed = text(field);
    if (typed.isEmpty()) {
      return OptionalDouble.empty();
    }
    Matcher matcher = NUMBER.matcher(typed.get());
    if (typed.get().length() > LONGEST || !matcher.matches()) {
      fault(field, shown(typed.get()) + " is no number: type one, as in 12.5 or 12,5");
      return OptionalDouble.empty();
    }
    String digits = matcher.group(1);
    if (GROUPED.matcher(digits).matches()) {
      fault(
          field,
          String.format(
              Locale.ROOT,
              "%s may mean %s or %s: type the one you mean",
              digits,
              digits.replace(",", ""),
              digits.replace(',', '.')));
      return OptionalDouble.empty();
    }
    double value = Double.parseDouble(digits.replace(',', '.'));
    if (!(value >= low && value <= high)) {
      fault(
          field,
          String.format(
              Locale.ROOT,
              "%s lies outside %s to %s%s: type a number within",
              digits,
              plain(low),
              plain(high),
              unit.isEmpty() ? "" : " " + unit));
      return OptionalDouble.empty();
    }
    return OptionalDouble.of(value);
  }

  /** A number, or the usual one where none was typed. */
  double number(String field, double low, double high, String unit, double usual) {
    return number(field, low, high, unit).orElse(usual);
  }

  /** A number as a field holds it. */
  public static String plain(double value) {
    double rounded = Math.rint(value * 1e4) / 1e4;
    return rounded == Math.rint(rounded) && Math.abs(rounded) < 1e15
        ? String.format(Locale.ROOT, "%d", (long) rounded)
        : String.valueOf(rounded);
  }

  private static String shown(String typed) {
    return typed.length() > LONGEST ? typed.substring(0, LONGEST) + "…" : typed;
  }

  /** All faults, a sentence each. */
  List<String> sentences() {
    return new ArrayList<>(faults.values());
  }
}
