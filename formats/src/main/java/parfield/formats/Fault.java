package parfield.formats;

import java.util.Locale;
import java.util.Objects;

/**
 * One thing wrong with a file: where, what, the value found, the limit and the cure.
 *
 * @param file name of the file
 * @param line 1-based; 0 where the fault is the whole file's
 * @param column 1-based; 0 where the fault is the whole line's
 * @param what the thing that is wrong, in the file's own words
 * @param value what was found; empty where there is nothing to show
 * @param limit what is allowed; empty where nothing would be
 * @param cure what to do
 */
public record Fault(
    String file, int line, int column, String what, String value, String limit, String cure) {
  public Fault {
    Objects.requireNonNull(file, "file");
    Objects.requireNonNull(what, "what");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(limit, "limit");
    Objects.requireNonNull(cure, "cure");
    if (line < 0 || column < 0) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a fault's line and column must be 0 or more; got %d and %d",
              line,
              column));
    }
  }

  /**
   * The fault in one line, as in {@code setup.yaml:12:7: tank.bottom.reflectance: got 1.4, allowed
   * 0 to below 1; write the share of light that the bottom reflects}.
   */
  public String message() {
    StringBuilder text = new StringBuilder(file);
    if (line > 0) {
      text.append(':').append(line);
      if (column > 0) {
        text.append(':').append(column);
      }
    }
    text.append(": ").append(what);
    String separator = ": ";
    if (!value.isEmpty()) {
      text.append(separator).append("got ").append(value);
      separator = ", ";
    }
    if (!limit.isEmpty()) {
      text.append(separator).append("allowed ").append(limit);
    }
    if (!cure.isEmpty()) {
      text.append(value.isEmpty() && limit.isEmpty() ? ": " : "; ").append(cure);
    }
    return text.toString();
  }
}
