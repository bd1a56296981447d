package parfield.plot;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import parfield.units.LengthUnit;

/**
 * One axis of a chart: what it shows, and how values of the engine are written along it.
 *
 * @param label what is shown
 * @param unit as written after the label; empty for a bare number
 * @param perValue how many of {@code unit} one unit of the values is, above 0: 100 for shares in
 *     percent or for metres in centimetres
 * @param length whether ticks follow a rule in this unit of length
 * @param range what it spans, in the values' own unit; empty takes round ends around the values
 */
public record Axis(
    String label,
    String unit,
    double perValue,
    Optional<LengthUnit> length,
    Optional<Scale> range) {
  public Axis {
    Objects.requireNonNull(label, "label");
    Objects.requireNonNull(unit, "unit");
    Objects.requireNonNull(length, "length");
    Objects.requireNonNull(range, "range");
    if (!(perValue > 0) || Double.isInfinite(perValue)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "an axis' unit must be a positive multiple; got %s", perValue));
    }
  }

  /** An axis of lengths that come in metres. */
  public static Axis length(String label, LengthUnit unit) {
    return new Axis(label, unit.symbol(), unit.fromMetres(1), Optional.of(unit), Optional.empty());
  }

  /** An axis of shares 0 to 1, written in percent. */
  public static Axis percent(String label) {
    return new Axis(label, "%", 100, Optional.empty(), Optional.empty());
  }

  /** An axis of PPFD. */
  public static Axis ppfd(String label) {
    return new Axis(label, "µmol m⁻² s⁻¹", 1, Optional.empty(), Optional.empty());
  }

  /** This axis over a fixed range, in the values' own unit. */
  public Axis withRange(Scale newRange) {
    return new Axis(label, unit, perValue, length, Optional.of(newRange));
  }
}
