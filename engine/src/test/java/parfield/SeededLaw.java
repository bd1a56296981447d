package parfield;

import java.util.SplittableRandom;
import java.util.function.Consumer;

/**
 * A law held against many random cases; a failure names the seed of its case, and {@code
 * -Dseed=SEED} runs that case alone.
 */
public final class SeededLaw {
  private static final long FIRST_SEED = 20_260;

  private SeededLaw() {}

  /**
   * Holds a law against cases.
   *
   * @param cases how many
   * @param law draws its case from the generator and asserts
   */
  public static void holds(int cases, Consumer<SplittableRandom> law) {
    Long only = Long.getLong("seed");
    for (int i = 0; i < (only == null ? cases : 1); i++) {
      long seed = only == null ? FIRST_SEED + i : only;
      try {
        law.accept(new SplittableRandom(seed));
      } catch (AssertionError | RuntimeException e) {
        throw new AssertionError(
            "case " + (i + 1) + " of " + cases + " breaks the law; replay it with -Dseed=" + seed,
            e);
      }
    }
  }
}
