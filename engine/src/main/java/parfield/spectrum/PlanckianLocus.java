package parfield.spectrum;

/**
 * The chromaticities of black bodies, 1000 K to 100 000 K.
 *
 * <p>Planck's law with c₂ = 0.014388 m K (CIE 15), summed over the colour-matching functions' whole
 * range of 360–830 nm at 5 nm. Tabulated every 2 reciprocal megakelvins and interpolated with
 * cubics, within 1e-9 of the sums (tested).
 */
public final class PlanckianLocus {
  /** Second radiation constant [m K], as CIE 15 has it; a 2856 K lamp is told by it. */
  public static final double C2 = 1.4388e-2;

  /** The hottest black body that a light is compared with [K]. */
  public static final double HOTTEST_KELVIN = 100_000;

  /** The coolest black body that a light is compared with [K]. */
  public static final double COOLEST_KELVIN = 1_000;

  private static final double STEP = 2;
  private static final double FIRST = 1e6 / HOTTEST_KELVIN;
  private static final int NODES = (int) Math.round((1e6 / COOLEST_KELVIN - FIRST) / STEP) + 1;
  private static final double[][] TABLE = table();

  private PlanckianLocus() {}

  /**
   * Spectral exitance of a black body over that at 560 nm.
   *
   * @param wavelengthNm wavelength [nm], above 0
   * @param kelvin temperature [K], above 0
   */
  public static double exitance(double wavelengthNm, double kelvin) {
    return law(wavelengthNm, kelvin) / law(560, kelvin);
  }

  private static double law(double wavelengthNm, double kelvin) {
    double metres = wavelengthNm * 1e-9;
    return Math.pow(560 / wavelengthNm, 5) / Math.expm1(C2 / (metres * kelvin));
  }

  /**
   * Chromaticity of a black body, by summation.
   *
   * @param kelvin temperature [K], above 0
   */
  public static Chromaticity chromaticity(double kelvin) {
    double x = 0;
    double y = 0;
    double z = 0;
    for (double nm = 360; nm <= 830; nm += 5) {
      double power = exitance(nm, kelvin);
      x += power * StandardObserver.matchingFunctions().get(0).at(nm);
      y += power * StandardObserver.matchingFunctions().get(1).at(nm);
      z += power * StandardObserver.matchingFunctions().get(2).at(nm);
    }
    return new Chromaticity(x / (x + y + z), y / (x + y + z));
  }

  /** u, v and their slopes by reciprocal megakelvin at each node. */
  private static double[][] table() {
    double[] u = new double[NODES + 4];
    double[] v = new double[NODES + 4];
    for (int i = 0; i < u.length; i++) {
      Chromaticity place = chromaticity(1e6 / (FIRST + (i - 2) * STEP));
      u[i] = place.u();
      v[i] = place.v();
    }
    double[][] table = new double[4][NODES];
    for (int i = 0; i < NODES; i++) {
      table[0][i] = u[i + 2];
      table[1][i] = v[i + 2];
      table[2][i] = slope(u, i + 2);
      table[3][i] = slope(v, i + 2);
    }
    return table;
  }

  private static double slope(double[] values, int i) {
    return (values[i - 2] - 8 * values[i - 1] + 8 * values[i + 1] - values[i + 2]) / (12 * STEP);
  }

  /** The nearest black body of a light's colour in the CIE 1960 diagram. */
  static Nearest nearest(double u, double v) {
    int best = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < NODES; i++) {
      double du = u - TABLE[0][i];
      double dv = v - TABLE[1][i];
      double square = du * du + dv * dv;
      if (square < least) {
        least = square;
        best = i;
      }
    }
    double low = Math.max(0, best - 1);
    double high = Math.min(NODES - 1, best + 1);
    // The distance is least where the line to the locus stands at right angles to it.
    while (high - low > 1e-9) {
      double middle = (low + high) / 2;
      if (along(u, v, middle) > 0) {
        low = middle;
      } else {
        high = middle;
      }
    }
    double place = (low + high) / 2;
    double du = u - at(0, place);
    double dv = v - at(1, place);
    return new Nearest(1e6 / (FIRST + place * STEP), Math.copySign(Math.hypot(du, dv), dv));
  }

  /** Inner product of the way to the light with the locus's direction. */
  private static double along(double u, double v, double place) {
    return (u - at(0, place)) * slopeAt(0, place) + (v - at(1, place)) * slopeAt(1, place);
  }

  private static double at(int axis, double place) {
    int i = Math.min(NODES - 2, (int) place);
    double t = place - i;
    double s = 1 - t;
    double[] value = TABLE[axis];
    double[] slope = TABLE[axis + 2];
    return s * s * (1 + 2 * t) * value[i]
        + t * t * (3 - 2 * t) * value[i + 1]
        + t * s * (s * slope[i] - t * slope[i + 1]) * STEP;
  }

  private static double slopeAt(int axis, double place) {
    int i = Math.min(NODES - 2, (int) place);
    double t = place - i;
    double[] value = TABLE[axis];
    double[] slope = TABLE[axis + 2];
    return 6 * t * (1 - t) * (value[i + 1] - value[i])
        + ((1 - t) * (1 - 3 * t) * slope[i] + t * (3 * t - 2) * slope[i + 1]) * STEP;
  }

  /**
   * The nearest black body.
   *
   * @param kelvin its temperature [K]
   * @param duv distance to it, positive above the locus
   */
  record Nearest(double kelvin, double duv) {
    boolean hotEnd() {
      return kelvin > HOTTEST_KELVIN * (1 - 1e-6);
    }

    boolean coolEnd() {
      return kelvin < COOLEST_KELVIN * (1 + 1e-6);
    }
  }
}
