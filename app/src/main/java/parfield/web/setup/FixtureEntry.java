package parfield.web.setup;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import parfield.formats.SetupValue;
import parfield.units.LengthUnit;

/** A fixture's entry of a setup, to be carried into another one. */
final class FixtureEntry {
  private static final Set<String> FILES = Set.of("spectrum", "table");
  private static final Set<String> LENGTHS = Set.of("length", "width", "x", "y", "aperture");

  /** Decimals of a length that is carried into a setup of another unit. */
  private static final int DECIMALS = 4;

  private FixtureEntry() {}

  /** Names of the files that it speaks of. */
  static Set<String> files(SetupValue entry) {
    Set<String> names = new LinkedHashSet<>();
    rewritten(
        "",
        entry,
        (key, value) -> {
          if (FILES.contains(key)) {
            names.add(value.plain());
          }
          return value;
        });
    return names;
  }

  /** The entry with other names of files. */
  static SetupValue withFiles(SetupValue entry, Map<String, String> names) {
    return rewritten(
        "",
        entry,
        (key, value) ->
            FILES.contains(key)
                ? new SetupValue.Text(names.getOrDefault(value.plain(), value.plain()))
                : value);
  }

  /** The entry with its lengths in another unit. */
  static SetupValue inUnit(SetupValue entry, LengthUnit from, LengthUnit to) {
    if (from == to) {
      return entry;
    }
    return rewritten(
        "",
        entry,
        (key, value) ->
            LENGTHS.contains(key) && value instanceof SetupValue.Figure
                ? new SetupValue.Figure(
                    number(to.fromMetres(from.toMetres(Double.parseDouble(value.plain())))))
                : value);
  }

  /** A number in at most four decimals. */
  static String number(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** Every number and text in an entry, by the key that it stands under, anew. */
  private static SetupValue rewritten(
      String key, SetupValue value, BiFunction<String, SetupValue, SetupValue> anew) {
    if (value instanceof SetupValue.Fields fields) {
      Map<String, SetupValue> entries = new LinkedHashMap<>();
      fields.entries().forEach((name, below) -> entries.put(name, rewritten(name, below, anew)));
      return new SetupValue.Fields(entries);
    }
    if (value instanceof SetupValue.Items items) {
      List<SetupValue> elements = new ArrayList<>();
      items.elements().forEach(element -> elements.add(rewritten(key, element, anew)));
      return new SetupValue.Items(elements);
    }
    return value instanceof SetupValue.Nothing ? value : anew.apply(key, value);
  }
}
