package parfield.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Options among which a person must choose for themselves: none is worse in every respect. */
final class TradeOff {
  /** Differences smaller than this do not make a choice: 3 points. */
  private static final double NOTHING = 0.03;

  private TradeOff() {}

  /**
   * The Pareto front over coverage, retention, evenness and number of fixtures, thinned: of options
   * that differ by nothing worth a choice the first is kept.
   *
   * @param ranked options, the better first
   * @param extent index into each option's figures, for retention and evenness
   * @return those that no other option beats, from much to little coverage
   */
  static List<Option> front(List<Option> ranked, int extent) {
    List<Option> front = new ArrayList<>();
    for (Option option : ranked) {
      boolean beaten =
          ranked.stream().anyMatch(other -> covers(other, option, extent, 0))
              || front.stream().anyMatch(kept -> covers(kept, option, extent, NOTHING));
      if (!beaten) {
        front.add(option);
      }
    }
    front.sort(Comparator.comparingDouble(Option::coverage).reversed());
    return List.copyOf(front);
  }

  /** Whether {@code a} is as good as {@code b} in all respects, give or take, and not the same. */
  private static boolean covers(Option a, Option b, int extent, double slack) {
    double[] gains = gains(a, b, extent);
    double greatest = 0;
    for (double gain : gains) {
      if (gain < -slack) {
        return false;
      }
      greatest = Math.max(greatest, gain);
    }
    return slack > 0 || greatest > 0;
  }

  private static double[] gains(Option a, Option b, int extent) {
    Figures ofA = a.figures().get(extent);
    Figures ofB = b.figures().get(extent);
    return new double[] {
      a.coverage() - b.coverage(),
      ofA.retention().value() - ofB.retention().value(),
      ofA.evenness().value() - ofB.evenness().value(),
      b.arrangement().count() - a.arrangement().count()
    };
  }
}
