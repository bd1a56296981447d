package parfield.plan;

import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/**
 * How probable something is, counted in draws: so many of the truths that the readings allow.
 *
 * <p>A count of draws is never certainty. What held in all of them, or in none, is put as a limit:
 * the one that would bring such a count about in 5 of 100 samples ("rule of three", Hanley and
 * Lippman-Hand 1983, JAMA 249:1743). Intervals are those of Clopper and Pearson 1934, Biometrika
 * 26:404, which hold the probability at least as often as they say, whatever it is.
 *
 * @param met truths in which it is so
 * @param truths that were looked at, at least one
 */
public record Probability(int met, int truths) implements Comparable<Probability> {
  /** What is left outside at either end of the interval, as everywhere: 5–95 %. */
  private static final double TAIL = 0.05;

  public Probability {
    if (truths < 1 || met < 0 || met > truths) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a probability counts 0 to all of one truth or more; got %d of %d",
              met,
              truths));
    }
  }

  /** The share of the truths, 0 to 1: the best estimate, and what decides a standing. */
  public double value() {
    return (double) met / truths;
  }

  /** Lower end of the interval: with a smaller one so many would be rarer than 5 in 100. */
  public double low() {
    return met == 0 ? 0 : root(p -> 1 - below(met - 1, p) - TAIL);
  }

  /** Upper end of the interval: with a greater one so few would be rarer than 5 in 100. */
  public double high() {
    return met == truths ? 1 : root(p -> TAIL - below(met, p));
  }

  /** The probability in which a rising function is 0. */
  private static double root(DoubleUnaryOperator rising) {
    double low = 0;
    double high = 1;
    while (true) {
      double middle = (low + high) / 2;
      if (middle <= low || middle >= high) {
        return middle;
      }
      if (rising.applyAsDouble(middle) > 0) {
        high = middle;
      } else {
        low = middle;
      }
    }
  }

  /** How probable at most {@code most} of the truths are, each with probability {@code p}. */
  private double below(int most, double p) {
    double sum = 0;
    double logarithm = truths * Math.log1p(-p);
    double odds = Math.log(p) - Math.log1p(-p);
    for (int k = 0; k <= most; k++) {
      sum += Math.exp(logarithm);
      logarithm += Math.log((double) (truths - k) / (k + 1)) + odds;
    }
    return sum;
  }

  /**
   * With two decimals, as in {@code 0.94}; where that would be 1.00 or 0.00, which so few truths
   * cannot tell, the limit instead, as in {@code > 0.96}.
   */
  public String inWords() {
    long percent = Math.round(100 * value());
    if (percent == 100) {
      return String.format(Locale.ROOT, "> %.2f", Math.floor(100 * low()) / 100);
    }
    return percent == 0
        ? String.format(Locale.ROOT, "< %.2f", Math.ceil(100 * high()) / 100)
        : String.format(Locale.ROOT, "%.2f", value());
  }

  /** {@link #inWords} with its interval and what was counted, for where there is room. */
  public String inFull() {
    long percent = Math.round(100 * value());
    String interval =
        percent == 0 || percent == 100
            ? ""
            : String.format(
                Locale.ROOT,
                ", %.2f–%.2f",
                Math.floor(100 * low()) / 100,
                Math.ceil(100 * high()) / 100);
    String count = met == truths ? "all" : met == 0 ? "none" : String.valueOf(met);
    return String.format(
        Locale.ROOT, "%s%s, in %s of %d truths", inWords(), interval, count, truths);
  }

  @Override
  public int compareTo(Probability other) {
    return Double.compare(value(), other.value());
  }
}
