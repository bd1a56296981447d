package parfield.web.setup;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parfield.formats.SetupValue;
import parfield.units.LengthUnit;

/**
 * What a person types into a field of the setup: decimal point or comma, with or without its unit.
 *
 * @param value for the setup; empty if the field is empty, or there is a problem
 * @param problem why it is none, with what to do
 */
record TypedValue(Optional<SetupValue> value, Optional<String> problem) {
  private static final int LONGEST = 60;

  /** Decimals of a length that was typed in another unit than the setup's: 2.5 µm at most. */
  private static final int CONVERTED = 4;

  /** Decimals of a length that is shown in another unit than the setup's. */
  private static final int SHOWN = 3;

  private static final Pattern NUMBER =
      Pattern.compile("([+−-]?(?:\\d{1,9}(?:[.,]\\d{0,12})?|[.,]\\d{1,12}))\\s*(\\D.{0,24})?");

  private static final Pattern GROUPED = Pattern.compile("[+−-]?[1-9]\\d{0,2},\\d{3}");

  private static final Map<String, BigDecimal> LENGTHS =
      Map.of(
          "mm", new BigDecimal("0.001"),
          "cm", new BigDecimal("0.01"),
          "m", BigDecimal.ONE,
          "in", new BigDecimal("0.0254"),
          "inch", new BigDecimal("0.0254"),
          "inches", new BigDecimal("0.0254"),
          "\"", new BigDecimal("0.0254"),
          "″", new BigDecimal("0.0254"),
          "ft", new BigDecimal("0.3048"));

  private static TypedValue of(SetupValue value) {
    return new TypedValue(Optional.of(value), Optional.empty());
  }

  private static TypedValue none(String problem) {
    return new TypedValue(Optional.empty(), Optional.of(problem));
  }

  /**
   * Reads what was typed into a field.
   *
   * @param field that it was typed into
   * @param typed as typed
   * @param shown unit of lengths on the page
   * @param stored unit of lengths in the setup
   */
  static TypedValue read(FormField field, String typed, LengthUnit shown, LengthUnit stored) {
    String text = typed.strip();
    if (text.isEmpty()) {
      return new TypedValue(Optional.empty(), Optional.empty());
    }
    return switch (field.kind()) {
      case LENGTH -> length(text, shown, stored);
      case LENGTHS -> lengths(text, shown, stored);
      case NUMBER -> number(text, field.unit());
      case CURVE -> curve(text);
      case NAMES -> names(text);
      case TRUTH, WORD, CHOICE -> of(SetupValue.of(text));
      case TEXT, FILE, SHAPE, NAME -> of(new SetupValue.Text(text));
    };
  }

  private static TypedValue length(String text, LengthUnit shown, LengthUnit stored) {
    Matcher matcher = NUMBER.matcher(text);
    if (!matcher.matches()) {
      return noNumber(text);
    }
    Optional<TypedValue> grouped = grouped(matcher.group(1));
    if (grouped.isPresent()) {
      return grouped.get();
    }
    String unit = matcher.group(2) == null ? shown.symbol() : matcher.group(2).strip();
    BigDecimal metres = LENGTHS.get(unit.toLowerCase(Locale.ROOT));
    if (metres == null) {
      return none(
          String.format(
              Locale.ROOT,
              "%s: %s is no unit of length here: type the number alone for %s, or mm, cm, m, in or ft"
                  + " behind it",
              shown(text),
              shown(unit),
              shown.symbol()));
    }
    BigDecimal number = decimal(matcher.group(1));
    if (unit.equals(stored.symbol())) {
      return of(figure(number));
    }
    return of(
        figure(
            number
                .multiply(metres)
                .divide(LENGTHS.get(stored.symbol()), CONVERTED, RoundingMode.HALF_UP)));
  }

  private static TypedValue lengths(String text, LengthUnit shown, LengthUnit stored) {
    List<SetupValue> values = new ArrayList<>();
    for (String part : text.split(text.contains(";") ? ";" : ",?\\s+", -1)) {
      if (!part.isBlank()) {
        TypedValue one = length(part.strip(), shown, stored);
        if (one.problem.isPresent()) {
          return one;
        }
        values.add(one.value.orElseThrow());
      }
    }
    return of(new SetupValue.Items(values));
  }

  private static TypedValue number(String text, String unit) {
    Matcher matcher = NUMBER.matcher(text);
    if (!matcher.matches()) {
      return noNumber(text);
    }
    Optional<TypedValue> grouped = grouped(matcher.group(1));
    if (grouped.isPresent()) {
      return grouped.get();
    }
    BigDecimal number = decimal(matcher.group(1));
    String behind = matcher.group(2) == null ? "" : plainUnit(matcher.group(2));
    if (behind.isEmpty() || behind.equals(plainUnit(unit))) {
      return of(figure(number));
    }
    if (behind.equals("%") && unit.isEmpty()) {
      return of(figure(number.movePointLeft(2)));
    }
    if (unit.equals("degrees") && (behind.equals("°") || behind.equals("deg"))) {
      return of(figure(number));
    }
    return none(
        String.format(
            Locale.ROOT,
            "%s: %s is not the unit of this field%s: type the number alone",
            shown(text),
            shown(matcher.group(2).strip()),
            unit.isEmpty() ? ", which has none" : ", which is " + unit));
  }

  private static String plainUnit(String unit) {
    return unit.strip()
        .toLowerCase(Locale.ROOT)
        .replace('μ', 'µ')
        .replace("⁻²", "-2")
        .replace("⁻¹", "-1")
        .replaceAll("[ ·*]", "")
        .replace("m-2s-1", "/m²/s")
        .replace("/m2/s", "/m²/s");
  }

  private static TypedValue curve(String text) {
    Map<String, SetupValue> points = new LinkedHashMap<>();
    for (String part :
        text.split(text.contains(";") ? ";" : ",\\s+|\\s{2,}|,(?=\\s*\\d+\\s*:)", -1)) {
      if (part.isBlank()) {
        continue;
      }
      String[] sides = part.split(":", -1);
      if (sides.length != 2) {
        return none(
            "type pairs of dial and share of full output, as in 0: 0; 50: 0.4; 100: 1; got "
                + shown(part.strip()));
      }
      TypedValue dial = number(sides[0].strip(), "%");
      TypedValue share = number(sides[1].strip(), "");
      if (dial.value.isEmpty() || share.value.isEmpty()) {
        return none(
            dial.problem
                .or(share::problem)
                .orElse("a pair is missing its number: type 50: 0.4, a dial and its share"));
      }
      points.put(dial.value.get().plain(), share.value.get());
    }
    return of(new SetupValue.Fields(points));
  }

  private static TypedValue names(String text) {
    List<SetupValue> names = new ArrayList<>();
    for (String part : text.split(text.contains(";") ? ";" : ",", -1)) {
      if (!part.isBlank()) {
        names.add(new SetupValue.Text(part.strip()));
      }
    }
    return of(new SetupValue.Items(names));
  }

  private static TypedValue noNumber(String text) {
    return none(shown(text) + " is no number: type one as in 71.5 or 71,5");
  }

  private static Optional<TypedValue> grouped(String digits) {
    return GROUPED.matcher(digits).matches()
        ? Optional.of(
            none(
                String.format(
                    Locale.ROOT,
                    "%s may mean %s or %s: type the one you mean",
                    digits,
                    digits.replace(",", ""),
                    digits.replace(',', '.'))))
        : Optional.empty();
  }

  private static BigDecimal decimal(String digits) {
    return new BigDecimal(digits.replace(',', '.').replace('−', '-'));
  }

  private static SetupValue figure(BigDecimal number) {
    BigDecimal plain = number.signum() == 0 ? BigDecimal.ZERO : number.stripTrailingZeros();
    return new SetupValue.Figure(plain.toPlainString());
  }

  private static String shown(String text) {
    return text.length() > LONGEST ? text.substring(0, LONGEST) + "…" : text;
  }

  /**
   * A stored value as a field shows it.
   *
   * @param kind of the field
   * @param value in the setup
   * @param shown unit of lengths on the page
   * @param stored unit of lengths in the setup
   */
  static String shown(FormField.Kind kind, SetupValue value, LengthUnit shown, LengthUnit stored) {
    return switch (kind) {
      case LENGTH -> shownLength(value, shown, stored);
      case LENGTHS -> joined(value, "; ", element -> shownLength(element, shown, stored));
      case NAMES -> {
        String separator = joined(value, "", SetupValue::plain).contains(",") ? "; " : ", ";
        yield joined(value, separator, SetupValue::plain);
      }
      case CURVE ->
          value instanceof SetupValue.Fields curve
              ? curve.entries().entrySet().stream()
                  .map(point -> point.getKey() + ": " + point.getValue().plain())
                  .collect(java.util.stream.Collectors.joining("; "))
              : value.plain();
      default -> value.plain();
    };
  }

  private static String joined(
      SetupValue value, String separator, java.util.function.Function<SetupValue, String> each) {
    return value instanceof SetupValue.Items items
        ? items.elements().stream()
            .map(each)
            .collect(java.util.stream.Collectors.joining(separator))
        : value.plain();
  }

  private static String shownLength(SetupValue value, LengthUnit shown, LengthUnit stored) {
    String text = value.plain();
    if (shown == stored || !(value instanceof SetupValue.Figure) || !text.matches(".*\\d.*")) {
      return text;
    }
    BigDecimal converted =
        new BigDecimal(text)
            .multiply(LENGTHS.get(stored.symbol()))
            .divide(LENGTHS.get(shown.symbol()), SHOWN, RoundingMode.HALF_UP);
    return figure(converted).plain();
  }
}
