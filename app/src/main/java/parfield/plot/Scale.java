package parfield.plot;

import java.util.Collection;
import java.util.List;
import java.util.Locale;

/**
 * The range of values that a colour bar or an axis spans. Maps that are to be compared share one.
 *
 * @param low value at its lower end
 * @param high value at its upper end, above {@code low}
 */
public record Scale(double low, double high) {
  /** The most round steps that values span; the scale around them may have two more. */
  static final int PARTS = 10;

  public Scale {
    if (!(high > low) || Double.isInfinite(high - low)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a scale must run upward between two numbers; got %s to %s", low, high));
    }
  }

  /**
   * The narrowest scale between round numbers that holds two values.
   *
   * @param from one value
   * @param to the other, in any order
   */
  public static Scale around(double from, double to) {
    double low = Math.min(from, to);
    double high = Math.max(from, to);
    if (!(high - low > 1e-9 * Math.max(1e-3, Math.abs(high)))) {
      double room = Math.max(0.5, Math.abs(high) * 0.05);
      low -= room;
      high += room;
    }
    double step = Ticks.step(high - low, PARTS);
    // A value that stands on a round number but for rounding needs no further step.
    return new Scale(
        Ticks.round(Math.floor(low / step + 1e-9) * step),
        Ticks.round(Math.ceil(high / step - 1e-9) * step));
  }

  /** The narrowest scale between round numbers that holds every value of some rasters. */
  public static Scale of(Collection<Raster> rasters) {
    return around(
        rasters.stream().mapToDouble(Raster::min).min().orElseThrow(),
        rasters.stream().mapToDouble(Raster::max).max().orElseThrow());
  }

  /** Returns round levels strictly inside, ascending: where isolines are drawn. */
  public List<Double> levels() {
    return Ticks.within(low, high, Ticks.step(high - low, 9)).stream()
        .filter(level -> level > low && level < high)
        .toList();
  }

  /** Where a value stands: 0 at the lower end, 1 at the upper, held between them. */
  double share(double value) {
    return Math.max(0, Math.min(1, (value - low) / (high - low)));
  }
}
