package parfield.validation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parfield.photon.Watch;

/**
 * Computes the published cases anew.
 *
 * @param precision greatest standard error relative to a value at which a figure counts as known;
 *     0.003 is full precision; above 0, at most 0.1
 * @param seed of all chance; the same seed gives the same findings, whatever the number of threads
 * @param threads that work at once, 1 or more
 */
public record Validation(double precision, long seed, int threads) {
  /** Full precision. */
  public static final double FULL = 0.003;

  /** The coarsest precision that still tells anything. */
  public static final double COARSEST = 0.1;

  /** Fewer packets do not show their own spread. */
  static final long FEWEST = 131_072;

  public Validation {
    if (!(precision > 0 && precision <= COARSEST)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "the precision of a validation lies above 0 and at most at %s; got %s",
              COARSEST,
              precision));
    }
    if (threads < 1) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "at least one thread must work; got %d", threads));
    }
  }

  /** Looks on while cases are computed, and may have enough. */
  @FunctionalInterface
  public interface Progress {
    /**
     * Told now and then how far the work has come.
     *
     * @param done cases that are done
     * @param of cases that there are
     * @param name of the present case
     * @return whether to go on
     */
    boolean goOn(int done, int of, String name);
  }

  /** Number of published values. */
  public static int values() {
    return PublishedValues.all().size();
  }

  /**
   * Computes the cases, until all are done or the progress has enough.
   *
   * @param progress told of it
   * @return the findings of all cases that were begun
   */
  public List<Finding> run(Progress progress) {
    List<PublishedCase> cases = PublishedCases.all();
    List<Finding> findings = new ArrayList<>();
    for (int i = 0; i < cases.size(); i++) {
      PublishedCase present = cases.get(i);
      int done = i;
      if (!progress.goOn(done, cases.size(), present.name())) {
        break;
      }
      Watch watch = (packets, error) -> progress.goOn(done, cases.size(), present.name());
      findings.addAll(present.findings(precision, seed, threads, watch));
    }
    return findings;
  }
}
