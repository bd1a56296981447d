package parfield.formats;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * A map of the setup file whose keys the format knows: an unknown key is a fault, and what is taken
 * for a key that is not stated is noted as an assumption when the section is closed.
 *
 * <p>In a key, a space, a hyphen and an underscore are the same.
 */
final class Section implements AutoCloseable {
  private final Entry at;
  private final Map<String, Entry> values = new LinkedHashMap<>();
  private final Set<String> mistyped = new HashSet<>();
  private final List<String> taken = new ArrayList<>();

  Section(Entry at, List<Entry.Keyed> entries, List<String> known) {
    this.at = at;
    for (Entry.Keyed entry : entries) {
      String key = canonical(entry.name());
      if (known.contains(key)) {
        values.put(key, entry.value());
      } else {
        unknown(entry, known);
        Nearest.of(key, known).ifPresent(mistyped::add);
      }
    }
  }

  private static void unknown(Entry.Keyed entry, List<String> known) {
    String otherwise = "delete it";
    if (NumberText.isNumber(entry.name()) && entry.value().isNothing()) {
      otherwise = "a comma separates entries: write decimals with a point";
    }
    String path = entry.key().path();
    String where = path.contains(".") ? " in " + path.substring(0, path.lastIndexOf('.')) : "";
    entry.key().unknown("unknown key" + where, entry.name(), known, otherwise);
  }

  /** A key as it is compared. */
  static String canonical(String key) {
    return key.strip().toLowerCase(Locale.ROOT).replace('_', ' ').replace('-', ' ');
  }

  Entry at() {
    return at;
  }

  /** The value of a key; empty if the key is absent or holds nothing. */
  Optional<Entry> optional(String key) {
    return Optional.ofNullable(values.get(key)).filter(entry -> !entry.isNothing());
  }

  boolean has(String key) {
    return optional(key).isPresent();
  }

  /** The value of a key, or empty with a fault if it is not stated. */
  Optional<Entry> required(String key, String cure) {
    Optional<Entry> value = optional(key);
    if (value.isEmpty()) {
      missing(key, cure);
    }
    return value;
  }

  /** Notes that a key is not stated, unless it most likely is, but mistyped. */
  void missing(String key, String cure) {
    if (mistyped.contains(key)) {
      return;
    }
    String path = at.path().isEmpty() ? key : at.path() + "." + key;
    Entry place = values.getOrDefault(key, at);
    place.fault(path, "nothing", "", cure);
  }

  /** A number that must be stated; NaN with a fault if it is not, or is wrong. */
  double number(String key, Limit limit, String cure) {
    return required(key, cure).map(entry -> entry.number(limit, cure)).orElse(Double.NaN);
  }

  /** A number, or what is taken where it is not stated; NaN with a fault if it is wrong. */
  double number(String key, double fallback, Limit limit, String cure) {
    Optional<Entry> value = optional(key);
    if (value.isEmpty()) {
      String unit = limit.unit().isEmpty() ? "" : " " + limit.unit();
      taken(key, NumberText.shown(fallback) + unit);
      return fallback;
    }
    return value.get().number(limit, cure);
  }

  /** Notes what is taken for something not stated. */
  void taken(String what, String value) {
    taken.add(what + " " + value);
  }

  /** Ends the section: tells what was taken. */
  @Override
  public void close() {
    if (!taken.isEmpty()) {
      at.notes().assume(at.path() + " does not state, so taken: " + String.join(", ", taken));
    }
  }
}
