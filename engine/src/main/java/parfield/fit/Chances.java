package parfield.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Standard normal deviations of many draws, one column a name: the same name, the same column,
 * whatever else is drawn.
 *
 * <p>Each column is shifted and stretched to mean 0 and variance 1, and those that weigh most are
 * freed of each other, so that few draws already have the spread that is stated: chance likeness of
 * two columns would make the sum of what they stand for too wide or too narrow in every tank alike.
 * For one thread.
 */
final class Chances {
  private static final long SEED = 0x7a4e5fe2L;
  private static final long SPREAD = 0x9e3779b97f4a7c15L;

  /** At most one column in so many draws is freed of the others: each takes a freedom away. */
  private static final int FREED = 3;

  private final int draws;
  private final Map<String, double[]> columns = new HashMap<>();

  /**
   * Prepares.
   *
   * @param given what differs from draw to draw already; of any mean and spread
   * @param heaviest names of the columns that weigh most, the heaviest first
   */
  Chances(double[] given, List<String> heaviest) {
    this.draws = given.length;
    List<double[]> before = new ArrayList<>();
    before.add(standard(given.clone()));
    for (String name : heaviest) {
      if (before.size() < draws / FREED) {
        double[] column = column(name);
        before.forEach(other -> free(column, other));
        before.add(standard(column));
        columns.put(name, column);
      }
    }
  }

  /** The deviation of one draw in one column. */
  double of(String name, int draw) {
    return columns.computeIfAbsent(name, this::column)[draw];
  }

  private double[] column(String name) {
    SplittableRandom random = new SplittableRandom(SEED + SPREAD * name.hashCode());
    double[] values = new double[draws];
    for (int d = 0; d < draws; d++) {
      values[d] = random.nextGaussian();
    }
    return standard(values);
  }

  /** Takes from a column what it has in common with another one. */
  private static void free(double[] column, double[] of) {
    double shared = 0;
    for (int d = 0; d < column.length; d++) {
      shared += column[d] * of[d] / column.length;
    }
    for (int d = 0; d < column.length; d++) {
      column[d] -= shared * of[d];
    }
  }

  /** The same values at mean 0 and variance 1; 0 where they do not differ. */
  private static double[] standard(double[] values) {
    double mean = Arrays.stream(values).average().orElse(0);
    double squares = 0;
    for (int d = 0; d < values.length; d++) {
      values[d] -= mean;
      squares += values[d] * values[d];
    }
    double stretch = squares > 0 ? Math.sqrt(values.length / squares) : 1;
    for (int d = 0; d < values.length; d++) {
      values[d] *= stretch;
    }
    return values;
  }
}
