package parfield.plot;

import java.util.Locale;
import java.util.Objects;

/**
 * A level that a curve is held against.
 *
 * @param label written along it
 * @param value in the unit of the vertical axis' values
 */
public record Threshold(String label, double value) {
  public Threshold {
    Objects.requireNonNull(label, "label");
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "threshold %s must be finite; got %s", label, value));
    }
  }
}
