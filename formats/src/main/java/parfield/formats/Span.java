package parfield.formats;

import java.util.List;

/** A pair of numbers, the smaller first, as in {@code x: [10, 20]}. */
final class Span {
  private Span() {}

  /** Two ascending numbers in the file's unit; NaN with a fault where anything is wrong. */
  static double[] read(Section section, String key, Limit limit) {
    double[] none = {Double.NaN, Double.NaN};
    String cure = "write two numbers, as in " + key + ": [10, 20]";
    var entry = section.required(key, cure);
    if (entry.isEmpty()) {
      return none;
    }
    List<Entry> ends = entry.get().list(cure);
    if (ends.size() != 2) {
      if (entry.get().isList()) {
        entry.get().fault(ends.size() + " values", "two", cure);
      }
      return none;
    }
    double from = ends.get(0).number(limit, cure);
    double to = ends.get(1).number(limit, cure);
    if (from >= to) {
      entry
          .get()
          .fault(
              NumberText.shown(from) + " to " + NumberText.shown(to),
              "from below to",
              "write the smaller first");
      return none;
    }
    return Double.isNaN(from) || Double.isNaN(to) ? none : new double[] {from, to};
  }
}
