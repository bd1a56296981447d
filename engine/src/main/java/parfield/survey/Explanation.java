package parfield.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import parfield.survey.Suspicion.Kind;

/**
 * One way in which readings may have gone wrong.
 *
 * @param kind what happened
 * @param readings which, by index
 * @param repaired what the meter then showed at each, in the same order; empty if that is lost
 */
record Explanation(Kind kind, List<Integer> readings, List<Double> repaired) {
  /** Fewer equal numbers in succession are chance. */
  private static final int LEAST_RUN = 3;

  Explanation {
    readings = List.copyOf(readings);
    repaired = List.copyOf(repaired);
  }

  /** The number is wrong, and what it should be is lost. */
  static Explanation unexplained(int reading) {
    return new Explanation(Kind.UNEXPLAINED, List.of(reading), List.of());
  }

  /** Slips of typing that turn another number into {@code shown}. */
  static List<Explanation> slips(int reading, double shown) {
    List<Explanation> slips = new ArrayList<>();
    if (shown > 0) {
      slips.add(slip(Kind.DECIMAL_SLIP, reading, shown / 10));
      slips.add(slip(Kind.DECIMAL_SLIP, reading, shown * 10));
    }
    for (double other : Digits.swapped(shown)) {
      slips.add(slip(Kind.DIGITS_SWAPPED, reading, other));
    }
    return slips;
  }

  private static Explanation slip(Kind kind, int reading, double repaired) {
    return new Explanation(kind, List.of(reading), List.of(repaired));
  }

  /** The readings of two places, rows or columns were written at each other's. */
  static Explanation exchanged(Kind kind, GridLines.Pair pair, double[] shown) {
    List<Integer> readings = new ArrayList<>(pair.first());
    readings.addAll(pair.second());
    List<Double> repaired = new ArrayList<>();
    pair.second().forEach(i -> repaired.add(shown[i]));
    pair.first().forEach(i -> repaired.add(shown[i]));
    return new Explanation(kind, readings, repaired);
  }

  /**
   * The meter stuck: equal numbers in succession, the first of which may be right.
   *
   * @param readings indices of the readings to look at, ascending
   * @param shown by index
   * @param order where each reading stands in the survey, by index
   */
  static List<Explanation> stuck(List<Integer> readings, double[] shown, int[] order) {
    List<Explanation> stuck = new ArrayList<>();
    int from = 0;
    for (int k = 1; k <= readings.size(); k++) {
      boolean goesOn =
          k < readings.size()
              && shown[readings.get(k)] == shown[readings.get(from)]
              && order[readings.get(k)] == order[readings.get(k - 1)] + 1;
      if (!goesOn) {
        if (k - from >= LEAST_RUN) {
          stuck.add(
              new Explanation(
                  Kind.STUCK,
                  IntStream.range(from + 1, k).mapToObj(readings::get).toList(),
                  List.of()));
        }
        from = k;
      }
    }
    return stuck;
  }
}
