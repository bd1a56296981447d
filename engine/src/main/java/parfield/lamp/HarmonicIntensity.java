package parfield.lamp;

import java.util.Arrays;
import java.util.Locale;

/**
 * A smooth distribution given by its logarithm: a Fourier series in azimuth whose coefficients run
 * smoothly in γ.
 *
 * <p>ln I(γ, C) = Σ_k cosine[k](γ) cos kC + Σ_k sine[k](γ) sin kC, each coefficient known on
 * equally spaced γ from 0 to 90° and joined by cubic Hermite pieces with central-difference slopes
 * (Catmull–Rom). Nothing is emitted above the horizon. Immutable.
 */
public final class HarmonicIntensity implements IntensityDistribution {
  private static final double HORIZON = Math.PI / 2;

  private final double[][] cosine;
  private final double[][] sine;

  /**
   * Makes a distribution from its log-coefficients.
   *
   * @param cosine coefficients of cos kC, [k][node], k = 0, 1, …; at least one row of two or more
   *     nodes at γ = 0 … 90°, intensities in µmol s⁻¹ sr⁻¹ before the logarithm; copied
   * @param sine coefficients of sin kC, [k][node], row 0 unused and zero; none, or as many rows as
   *     {@code cosine}; copied
   * @throws IllegalArgumentException if rows differ in length or a value is not finite
   */
  public HarmonicIntensity(double[][] cosine, double[][] sine) {
    if (cosine.length == 0 || cosine[0].length < 2) {
      throw new IllegalArgumentException(
          "a harmonic distribution needs at least one row of two coefficients");
    }
    if (sine.length != 0 && sine.length != cosine.length) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "sine rows must be none or as many as cosine rows; got %d and %d",
              sine.length,
              cosine.length));
    }
    this.cosine = copy(cosine, cosine[0].length);
    this.sine = copy(sine, cosine[0].length);
  }

  private static double[][] copy(double[][] rows, int nodes) {
    double[][] copy = new double[rows.length][];
    for (int k = 0; k < rows.length; k++) {
      if (rows[k].length != nodes) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT, "row %d has %d coefficients, expected %d", k, rows[k].length, nodes));
      }
      for (double value : rows[k]) {
        if (!Double.isFinite(value)) {
          throw new IllegalArgumentException(
              String.format(Locale.ROOT, "row %d holds %s; coefficients must be finite", k, value));
        }
      }
      copy[k] = rows[k].clone();
    }
    return copy;
  }

  /** Returns a copy of the cosine coefficients [k][node]. */
  public double[][] cosine() {
    return copy(cosine, cosine[0].length);
  }

  /** Returns a copy of the sine coefficients [k][node], or no rows. */
  public double[][] sine() {
    return copy(sine, cosine[0].length);
  }

  @Override
  public double intensity(double gamma, double azimuth) {
    return around(gamma, new double[] {azimuth})[0];
  }

  @Override
  public double[] around(double gamma, double[] azimuths) {
    double[] intensities = new double[azimuths.length];
    if (!(gamma <= HORIZON)) {
      return intensities;
    }
    Arrays.fill(intensities, at(cosine[0], gamma));
    double[] a = new double[cosine.length];
    double[] b = new double[cosine.length];
    int highest = 0;
    for (int k = 1; k < cosine.length; k++) {
      a[k] = at(cosine[k], gamma);
      b[k] = sine.length == 0 ? 0 : at(sine[k], gamma);
      highest = a[k] == 0 && b[k] == 0 ? highest : k;
    }
    for (int i = 0; i < azimuths.length && highest > 0; i++) {
      // cos kC and sin kC by the addition theorem, one step at a time.
      double stepCosine = Math.cos(azimuths[i]);
      double stepSine = Math.sin(azimuths[i]);
      double cos = stepCosine;
      double sin = stepSine;
      for (int k = 1; k <= highest; k++) {
        intensities[i] += a[k] * cos + b[k] * sin;
        double next = cos * stepCosine - sin * stepSine;
        sin = sin * stepCosine + cos * stepSine;
        cos = next;
      }
    }
    for (int i = 0; i < azimuths.length; i++) {
      intensities[i] = Math.exp(intensities[i]);
    }
    return intensities;
  }

  @Override
  public boolean axiallySymmetric() {
    return allZero(cosine, k -> k > 0) && allZero(sine, k -> true);
  }

  @Override
  public boolean quadrantSymmetric() {
    return allZero(cosine, k -> k % 2 == 1) && allZero(sine, k -> true);
  }

  private static boolean allZero(double[][] rows, java.util.function.IntPredicate which) {
    for (int k = 0; k < rows.length; k++) {
      if (which.test(k) && Arrays.stream(rows[k]).anyMatch(value -> value != 0)) {
        return false;
      }
    }
    return true;
  }

  private static double at(double[] nodes, double gamma) {
    int last = nodes.length - 1;
    double position = Math.max(0, gamma) / HORIZON * last;
    int i = Math.min((int) position, last - 1);
    double t = position - i;
    // Symmetric about nadir, straight beyond the horizon.
    double before = i == 0 ? nodes[1] : nodes[i - 1];
    double after = i + 2 > last ? 2 * nodes[last] - nodes[last - 1] : nodes[i + 2];
    double slope0 = (nodes[i + 1] - before) / 2;
    double slope1 = (after - nodes[i]) / 2;
    double u = 1 - t;
    return u * u * (1 + 2 * t) * nodes[i]
        + t * t * (3 - 2 * t) * nodes[i + 1]
        + t * u * (u * slope0 - t * slope1);
  }
}
