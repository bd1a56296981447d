package parfield.spectrum;

import java.util.Locale;
import org.ejml.data.DMatrixRMaj;

/**
 * The nearest direction: outputs within limits whose light A x points nearest to b, whatever its
 * brightness.
 *
 * <p>Outputs within a box, scaled by any factor, form a convex cone, and so does their light. Its
 * point nearest to b is the one of smallest angle to b: with p the nearest point, ⟨b − p, p⟩ = 0
 * and ⟨b − p, y⟩ ≤ 0 for each y of the cone, hence ⟨b, y⟩ ≤ ⟨p, y⟩ ≤ ‖p‖ ‖y‖, so no y has a greater
 * cosine than p. The free scale thus costs nothing: the problem stays convex.
 */
final class Cone {
  private static final int HALVINGS = 300;

  private Cone() {}

  /**
   * The outputs nearest in direction, at the greatest scale that the limits allow.
   *
   * @param a light by output, rows × outputs
   * @param b the wanted direction
   * @param low lowest outputs, 0 or more
   * @param high highest outputs, finite, not below {@code low}
   * @return outputs; all zero if nothing within the limits points toward b at all
   */
  static double[] nearest(DMatrixRMaj a, double[] b, double[] low, double[] high) {
    BoundedLeastSquares problem = new BoundedLeastSquares(a, b);
    double[] direction =
        largest(low) > 0 ? withFloor(problem, low, high) : withoutFloor(problem, low, high);
    double scale = Double.POSITIVE_INFINITY;
    for (int j = 0; j < direction.length; j++) {
      if (direction[j] > 0) {
        scale = Math.min(scale, high[j] / direction[j]);
      }
    }
    double[] outputs = new double[direction.length];
    for (int j = 0; j < outputs.length; j++) {
      double output = direction[j] > 0 ? direction[j] * scale : 0;
      outputs[j] = Math.max(low[j], Math.min(high[j], output));
    }
    return outputs;
  }

  private static double largest(double[] values) {
    double largest = 0;
    for (double value : values) {
      largest = Math.max(largest, value);
    }
    return largest;
  }

  /** With floors of 0 the cone is that of all non-negative outputs that may be lit at all. */
  private static double[] withoutFloor(BoundedLeastSquares problem, double[] low, double[] high) {
    double[] unbounded = new double[high.length];
    for (int j = 0; j < high.length; j++) {
      unbounded[j] = high[j] > 0 ? Double.POSITIVE_INFINITY : 0;
    }
    return problem.solve(low, unbounded);
  }

  /**
   * Points of the cone are t times a point of the box; the least distance at each t is a convex
   * function of t whose derivative is known, and its root is bisected.
   */
  private static double[] withFloor(BoundedLeastSquares problem, double[] low, double[] high) {
    double above = 1;
    while (slope(problem, low, high, above) < 0) {
      above *= 2;
      requireBracketed(above);
    }
    double below = above / 2;
    while (slope(problem, low, high, below) > 0) {
      above = below;
      below /= 2;
      if (below < Double.MIN_NORMAL) {
        return new double[low.length];
      }
    }
    for (int i = 0; i < HALVINGS && above > below; i++) {
      double middle = (below + above) / 2;
      if (middle <= below || middle >= above) {
        break;
      }
      if (slope(problem, low, high, middle) > 0) {
        above = middle;
      } else {
        below = middle;
      }
    }
    return at(problem, low, high, below);
  }

  private static void requireBracketed(double scale) {
    if (Double.isInfinite(scale)) {
      throw new IllegalStateException(
          String.format(Locale.ROOT, "a mix with floors has no brightest scale; got %s", scale));
    }
  }

  private static double[] at(
      BoundedLeastSquares problem, double[] low, double[] high, double scale) {
    return problem.solve(times(low, scale), times(high, scale));
  }

  private static double[] times(double[] values, double factor) {
    double[] scaled = new double[values.length];
    for (int j = 0; j < values.length; j++) {
      scaled[j] = values[j] * factor;
    }
    return scaled;
  }

  /** ½ of the derivative by the scale of the least squared distance: by the bounds that hold. */
  private static double slope(
      BoundedLeastSquares problem, double[] low, double[] high, double scale) {
    double[] x = at(problem, low, high, scale);
    double[] gradient = problem.gradient(x);
    double slope = 0;
    for (int j = 0; j < x.length; j++) {
      if (x[j] == low[j] * scale) {
        slope += gradient[j] * low[j];
      } else if (x[j] == high[j] * scale) {
        slope += gradient[j] * high[j];
      }
    }
    return slope;
  }
}
