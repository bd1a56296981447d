package parfield.validation;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

/** The published values, from the table beside this class. */
final class PublishedValues {
  private static final List<PublishedValue> ALL = load();

  private PublishedValues() {}

  /** Every published value, in the order of the table. */
  static List<PublishedValue> all() {
    return ALL;
  }

  /** The published values of one case. */
  static List<PublishedValue> of(String name) {
    return ALL.stream().filter(value -> value.ofCase().equals(name)).toList();
  }

  private static List<PublishedValue> load() {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                PublishedValues.class.getResourceAsStream("published.csv"),
                StandardCharsets.UTF_8))) {
      return reader
          .lines()
          .filter(line -> !line.startsWith("#"))
          .skip(1)
          .map(PublishedValues::value)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException("the published values of this program cannot be read", e);
    }
  }

  private static PublishedValue value(String row) {
    String[] cells = row.split(",", -1);
    double value = Double.parseDouble(cells[2]);
    double tolerance = Double.parseDouble(cells[3]);
    return new PublishedValue(
        cells[0],
        cells[1],
        value,
        tolerance,
        PublishedValue.Tolerance.valueOf(cells[4].toUpperCase(Locale.ROOT)),
        cells[5].isEmpty() ? tolerance / 2 : Double.parseDouble(cells[5]) * Math.abs(value),
        cells[6].replace(';', ','));
  }
}
