package parfield.web.meter;

import java.util.Locale;

/**
 * What counts as holding still. Immutable; the figures are ours, found by trying.
 *
 * @param share spread of the readings that is allowed, relative to their median
 * @param window time over which they must hold still, at least [ms]
 * @param count readings that must be looked at, at least
 */
record Steadiness(double share, long window, int count) {
  /** Still water: 3 % over two seconds. */
  static final Steadiness CALM = new Steadiness(0.03, 2000, 5);

  /** A surface that ripples, so that light flickers: 10 % over five seconds. */
  static final Steadiness RIPPLED = new Steadiness(0.10, 5000, 10);

  /** No reading spreads by less than this, however dark [µmol m⁻² s⁻¹]. */
  static final double FLOOR = 0.5;

  Steadiness {
    if (!(share > 0) || window <= 0 || count < 2) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "share %s, window %d ms, count %d is no steadiness",
              share,
              window,
              count));
    }
  }

  /**
   * The spread that is allowed about a value [µmol m⁻² s⁻¹]: the share of it, but never less than
   * two steps of the last digit that the meter shows, nor than {@link #FLOOR}.
   */
  double limit(double value, double step) {
    return Math.max(share * value, Math.max(2 * step, FLOOR));
  }
}
