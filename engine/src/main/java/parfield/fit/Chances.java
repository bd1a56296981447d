package parfield.fit;

import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Standard normal deviations of many draws, one column a name: the same name, the same column,
 * whatever else is drawn.
 *
 * <p>Each column is shifted and stretched to mean 0 and variance 1, so that few draws already have
 * the spread that is stated. For one thread.
 */
final class Chances {
  private static final long SEED = 0x7a4e5fe2L;
  private static final long SPREAD = 0x9e3779b97f4a7c15L;

  private final int draws;
  private final Map<String, double[]> columns = new HashMap<>();

  Chances(int draws) {
    this.draws = draws;
  }

  /** The deviation of one draw in one column. */
  double of(String name, int draw) {
    return columns.computeIfAbsent(name, this::column)[draw];
  }

  private double[] column(String name) {
    SplittableRandom random = new SplittableRandom(SEED + SPREAD * name.hashCode());
    double[] values = new double[draws];
    double sum = 0;
    for (int d = 0; d < draws; d++) {
      values[d] = random.nextGaussian();
      sum += values[d];
    }
    double squares = 0;
    for (int d = 0; d < draws; d++) {
      values[d] -= sum / draws;
      squares += values[d] * values[d];
    }
    double stretch = squares > 0 ? Math.sqrt(draws / squares) : 1;
    for (int d = 0; d < draws; d++) {
      values[d] *= stretch;
    }
    return values;
  }
}
