package parfield.field;

import java.util.HashMap;
import java.util.Map;
import parfield.optics.Interface;
import parfield.optics.Pane;
import parfield.tank.Side;
import parfield.tank.Wall;
import parfield.tank.Walls;

/**
 * Mirror-like reflectance of the four panes by the cosine of incidence in water, tabulated.
 *
 * <p>Clean glass in air reflects everything past the critical angle of water against air; what is
 * covered reflects nothing mirror-like, save the water–glass face where the cover is behind the
 * glass.
 */
final class PaneReflectances {
  private static final int STEPS = 1024;

  private final double[][] table = new double[Side.values().length][];
  private final double[][] gains = new double[Side.values().length][];

  private PaneReflectances() {}

  /**
   * The reflectances of a tank's panes.
   *
   * @param walls the panes
   * @param index refractive index of the water
   */
  static PaneReflectances of(Walls walls, double index) {
    PaneReflectances reflectances = new PaneReflectances();
    double[] glass = new double[STEPS + 1];
    double[] face = new double[STEPS + 1];
    for (int i = 0; i <= STEPS; i++) {
      double cosine = (double) i / STEPS;
      glass[i] = Pane.reflectance(cosine, index, Pane.GLASS, 1);
      face[i] = Interface.reflectance(cosine, index, Pane.GLASS);
    }
    // Panes alike share one table, which keeps it near the processor.
    Map<Wall, double[]> tables = new HashMap<>();
    Map<Wall, double[]> gains = new HashMap<>();
    for (Side side : Side.values()) {
      Wall wall = walls.on(side);
      reflectances.table[side.ordinal()] =
          tables.computeIfAbsent(wall, of -> mixed(of, glass, face));
      reflectances.gains[side.ordinal()] =
          gains.computeIfAbsent(wall, of -> gains(of, glass, face));
    }
    return reflectances;
  }

  /** The clear share reflects as glass in air, the rest as its cover lets it. */
  private static double[] mixed(Wall wall, double[] glass, double[] face) {
    double[] values = new double[STEPS + 1];
    for (int i = 0; i <= STEPS; i++) {
      double covered = wall.cover() == Wall.Cover.BEHIND_GLASS ? face[i] : 0;
      values[i] = wall.clear() * glass[i] + (1 - wall.clear()) * covered;
    }
    return values;
  }

  /** Relative change of {@link #mixed} per clear share; none where nothing is reflected. */
  private static double[] gains(Wall wall, double[] glass, double[] face) {
    double[] values = mixed(wall, glass, face);
    for (int i = 0; i <= STEPS; i++) {
      double covered = wall.cover() == Wall.Cover.BEHIND_GLASS ? face[i] : 0;
      values[i] = values[i] > 0 ? (glass[i] - covered) / values[i] : 0;
    }
    return values;
  }

  /** Panes that reflect everything: for checks of flux conservation. */
  static PaneReflectances perfect() {
    PaneReflectances reflectances = new PaneReflectances();
    double[] one = new double[STEPS + 1];
    java.util.Arrays.fill(one, 1);
    java.util.Arrays.fill(reflectances.table, one);
    java.util.Arrays.fill(reflectances.gains, new double[STEPS + 1]);
    return reflectances;
  }

  /**
   * Product of the reflectances along one unfolded direction.
   *
   * @param order image order along the axis; its sign says which pane comes first
   * @param low pane at the low end of the axis
   * @param high pane at the high end
   * @param cosine of incidence on both, 0 to 1
   */
  double along(int order, Side low, Side high, double cosine) {
    if (order == 0) {
      return 1;
    }
    int count = Math.abs(order);
    int first = (count + 1) / 2;
    int second = count / 2;
    double a = at(order > 0 ? high : low, cosine);
    double product = power(a, first);
    return second == 0 ? product : product * power(at(order > 0 ? low : high, cosine), second);
  }

  /** Relative change of one pane's reflectance per clear share more. */
  double gain(Side side, double cosine) {
    return at(gains[side.ordinal()], cosine);
  }

  private double at(Side side, double cosine) {
    return at(table[side.ordinal()], cosine);
  }

  private static double at(double[] values, double cosine) {
    double position = Math.min(cosine, 1) * STEPS;
    int i = Math.min((int) position, STEPS - 1);
    return values[i] + (position - i) * (values[i + 1] - values[i]);
  }

  /** By squares: images of high order are many, and this is asked for each pair of patches. */
  private static double power(double base, int exponent) {
    if (exponent == 1) {
      return base;
    }
    double product = 1;
    double square = base;
    for (int left = exponent; left > 0; left >>= 1) {
      if ((left & 1) == 1) {
        product *= square;
      }
      square *= square;
    }
    return product;
  }
}
