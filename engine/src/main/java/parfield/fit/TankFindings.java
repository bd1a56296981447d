package parfield.fit;

import java.util.ArrayList;
import java.util.List;
import parfield.tank.Side;
import parfield.units.Estimate;

/** The conditions of a tank with their intervals, out of a sample of truths. */
final class TankFindings {
  private TankFindings() {}

  /**
   * One finding a condition: panes, yellowing, bottom, where the fixtures hang.
   *
   * @param conditions of the tank, as stated
   * @param best the most plausible truth
   * @param draws at least one
   */
  static List<FitReport.Finding> of(Conditions conditions, Truth best, List<Truth> draws) {
    List<FitReport.Finding> findings = new ArrayList<>();
    for (int k = 0; k <= Conditions.PLACE_Y; k++) {
      int index = k;
      double[] sample = draws.stream().mapToDouble(draw -> value(draw, index)).toArray();
      findings.add(
          new FitReport.Finding(
              conditions.name(k), conditions.stated(k), Estimate.ofSample(value(best, k), sample)));
    }
    return findings;
  }

  /** The value of one condition, in the unit of its name. */
  private static double value(Truth truth, int condition) {
    if (condition < Side.values().length) {
      return truth.clear().get(condition);
    }
    return switch (condition) {
      case Conditions.YELLOWING -> truth.yellowing();
      case Conditions.BOTTOM -> truth.bottomReflectance();
      case Conditions.HEIGHT -> 100 * truth.heightOffset();
      case Conditions.PLACE_X -> 100 * truth.offsetX();
      default -> 100 * truth.offsetY();
    };
  }
}
