package parfield.spectrum;

import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;

/**
 * Places and weights at which integrals of products of two spectra are exact.
 *
 * <p>Between two neighbouring samples of all spectra together, each is a straight line; a product
 * of two is a parabola, which two Gauss–Legendre points integrate without error. Spectra of
 * different wavelengths are thus compared without resampling either.
 */
final class GaussNodes {
  /** Distance of the two points of an interval from its middle, in half widths. */
  private static final double OFFSET = 1 / Math.sqrt(3);

  private final double[] nm;
  private final double[] weights;

  private GaussNodes(double[] nm, double[] weights) {
    this.nm = nm;
    this.weights = weights;
  }

  /**
   * The nodes of a range.
   *
   * @param fromNm lower end [nm]
   * @param toNm upper end [nm], above {@code fromNm}
   * @param samples wavelengths at which some factor may bend or jump
   */
  static GaussNodes of(double fromNm, double toNm, List<Wavelengths> samples) {
    TreeSet<Double> knots = new TreeSet<>(List.of(fromNm, toNm));
    for (Wavelengths wavelengths : samples) {
      for (int i = 0; i < wavelengths.size(); i++) {
        if (wavelengths.nm(i) > fromNm && wavelengths.nm(i) < toNm) {
          knots.add(wavelengths.nm(i));
        }
      }
    }
    int intervals = knots.size() - 1;
    double[] nm = new double[2 * intervals];
    double[] weights = new double[2 * intervals];
    double below = fromNm;
    int at = 0;
    for (double above : knots.tailSet(fromNm, false)) {
      double middle = (below + above) / 2;
      double half = (above - below) / 2;
      nm[at] = middle - half * OFFSET;
      weights[at++] = half;
      nm[at] = middle + half * OFFSET;
      weights[at++] = half;
      below = above;
    }
    return new GaussNodes(nm, weights);
  }

  int size() {
    return nm.length;
  }

  double nm(int i) {
    return nm[i];
  }

  double weight(int i) {
    return weights[i];
  }

  /** Values of a function of wavelength at the nodes. */
  double[] values(DoubleUnaryOperator function) {
    return Arrays.stream(nm).map(function).toArray();
  }

  /** Integral of the product of two functions given at the nodes. */
  double product(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < weights.length; i++) {
      sum += weights[i] * a[i] * b[i];
    }
    return sum;
  }

  /**
   * The angle between two functions given at the nodes [rad], 0 where they are proportional: 2
   * atan(‖u − v‖ / ‖u + v‖) of their unit vectors, which keeps its digits for small angles.
   */
  double angle(double[] a, double[] b) {
    double lengthA = Math.sqrt(product(a, a));
    double lengthB = Math.sqrt(product(b, b));
    double apart = 0;
    double together = 0;
    for (int i = 0; i < weights.length; i++) {
      double u = a[i] / lengthA;
      double v = b[i] / lengthB;
      apart += weights[i] * (u - v) * (u - v);
      together += weights[i] * (u + v) * (u + v);
    }
    return 2 * Math.atan2(Math.sqrt(apart), Math.sqrt(together));
  }
}
