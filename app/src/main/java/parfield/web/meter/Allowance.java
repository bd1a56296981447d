package parfield.web.meter;

/** How often something may happen: so often a second, and as often at once. For one thread. */
final class Allowance {
  private final double perSecond;
  private double left;
  private long last;

  /**
   * An allowance.
   *
   * @param perSecond how often
   * @param now time [ms]
   */
  Allowance(int perSecond, long now) {
    this.perSecond = perSecond;
    this.left = perSecond;
    this.last = now;
  }

  /** Whether it may happen once more at a time [ms], which does not go back. */
  boolean allows(long now) {
    left = Math.min(perSecond, left + perSecond * (now - last) / 1000.0);
    last = now;
    if (left < 1) {
      return false;
    }
    left -= 1;
    return true;
  }
}
