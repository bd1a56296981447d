package parfield.field;

import java.util.function.DoubleUnaryOperator;

/** Integrals by composite Gauss–Legendre quadrature, for tests. */
final class GaussLegendre {
  /** Five points on −1…1 (Abramowitz and Stegun 1964, table 25.4). */
  private static final double[] NODES = {
    -0.906179845938664, -0.538469310105683, 0, 0.538469310105683, 0.906179845938664
  };

  private static final double[] WEIGHTS = {
    0.236926885056189, 0.478628670499366, 0.568888888888889, 0.478628670499366, 0.236926885056189
  };

  private GaussLegendre() {}

  static double integral(double from, double to, int pieces, DoubleUnaryOperator function) {
    double half = (to - from) / pieces / 2;
    double sum = 0;
    for (int piece = 0; piece < pieces; piece++) {
      double middle = from + (2 * piece + 1) * half;
      for (int i = 0; i < NODES.length; i++) {
        sum += WEIGHTS[i] * half * function.applyAsDouble(middle + half * NODES[i]);
      }
    }
    return sum;
  }
}
