package parfield.photon;

import java.util.Locale;

/**
 * How hard the reference solver works.
 *
 * @param seed of all chance; the same seed gives the same answer, whatever the number of threads
 * @param threads that work at once, 1 or more
 * @param target standard error of each wanted value at which it stops, relative to the value, or to
 *     a tenth of the mean of its kind where that is more; above 0
 * @param mostPackets at which it stops in any case, 1 or more; rounded up to whole batches
 */
public record Effort(long seed, int threads, double target, long mostPackets) {
  public Effort {
    if (threads < 1) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "at least one thread must work; got %d", threads));
    }
    if (!(target > 0)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "the wanted standard error must be above 0; got %s", target));
    }
    if (mostPackets < 1) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "at least one packet must be sent; got %d", mostPackets));
    }
  }

  /** Works on all processors until each value is known to a relative standard error. */
  public static Effort until(double target, long seed) {
    return new Effort(seed, Runtime.getRuntime().availableProcessors(), target, Long.MAX_VALUE);
  }

  /** Sends so many packets on all processors. */
  public static Effort packets(long count, long seed) {
    return new Effort(seed, Runtime.getRuntime().availableProcessors(), Double.MIN_VALUE, count);
  }

  /** The same with another number of threads. */
  public Effort withThreads(int newThreads) {
    return new Effort(seed, newThreads, target, mostPackets);
  }
}
