package parfield.spectrum;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The method of test colours, CIE 13.3-1995.
 *
 * <p>The reference is a black body below 5000 K and CIE daylight above, of the light's own
 * correlated colour temperature, summed at 5 nm.
 */
final class TestColours {
  private static final double DAYLIGHT_FROM_KELVIN = 5000;
  private static final double DAYLIGHT_TO_KELVIN = 25_000;

  private static final List<SpectralWeight> SAMPLES =
      PublishedTable.read("tcs01_14_5nm.csv", SpectralWeight.Between.SPRAGUE).columns();

  private static final Wavelengths REFERENCE_GRID =
      Wavelengths.even(StandardObserver.FROM_NM, StandardObserver.TO_NM, 5);
  private static final WeightMatrix REFERENCE = new WeightMatrix(rows(REFERENCE_GRID));
  private static final double[][] DAYLIGHT = daylight();
  private static final double[] FIFTH_POWERS = fifthPowers();

  private TestColours() {}

  /**
   * What each sample counts for in X, Y and Z of the light itself and of the 14 test colours in
   * turn: the weights whose sums {@link #rendering} takes.
   */
  static List<double[]> rows(Wavelengths wavelengths) {
    List<double[]> rows = new ArrayList<>();
    for (SpectralWeight matching : StandardObserver.matchingFunctions()) {
      rows.add(matching.on(wavelengths, StandardObserver.FROM_NM, StandardObserver.TO_NM));
    }
    for (SpectralWeight sample : SAMPLES) {
      for (int axis = 0; axis < 3; axis++) {
        double[] seen = rows.get(axis).clone();
        for (int i = 0; i < seen.length; i++) {
          seen[i] *= seen[i] == 0 ? 0 : sample.at(wavelengths.nm(i));
        }
        rows.add(seen);
      }
    }
    return rows;
  }

  /** The sums of each component of daylight. */
  private static double[][] daylight() {
    double[][] sums = new double[3][];
    for (int c = 0; c < 3; c++) {
      double[] power = new double[REFERENCE_GRID.size()];
      for (int i = 0; i < power.length; i++) {
        power[i] = Daylight.COMPONENTS.get(c).at(REFERENCE_GRID.nm(i));
      }
      sums[c] = REFERENCE.sums(new Samples(REFERENCE_GRID, power));
    }
    return sums;
  }

  private static double[] fifthPowers() {
    double[] powers = new double[REFERENCE_GRID.size()];
    for (int i = 0; i < powers.length; i++) {
      powers[i] = Math.pow(560 / REFERENCE_GRID.nm(i), 5);
    }
    return powers;
  }

  /** The sums of the reference, in a unit of its own. */
  private static double[] reference(double kelvin) {
    if (kelvin < DAYLIGHT_FROM_KELVIN) {
      double[] power = new double[REFERENCE_GRID.size()];
      for (int i = 0; i < power.length; i++) {
        double metres = REFERENCE_GRID.nm(i) * 1e-9;
        power[i] = FIFTH_POWERS[i] / (Math.exp(PlanckianLocus.C2 / (metres * kelvin)) - 1);
      }
      return REFERENCE.sums(new Samples(REFERENCE_GRID, power));
    }
    double[] shares = Daylight.shares(kelvin);
    double[] sums = new double[DAYLIGHT[0].length];
    for (int k = 0; k < sums.length; k++) {
      sums[k] =
          shares[0] * DAYLIGHT[0][k] + shares[1] * DAYLIGHT[1][k] + shares[2] * DAYLIGHT[2][k];
    }
    return sums;
  }

  /**
   * The indices of a light.
   *
   * @param test the sums of the light with {@link #rows}; further sums behind them are not looked
   *     at
   */
  static Finding<ColourRendering> rendering(double[] test, Finding<ColourTemperature> temperature) {
    if (temperature instanceof Finding.NotDefined<ColourTemperature> none) {
      return Finding.notDefined("there is no correlated colour temperature: " + none.reason());
    }
    double kelvin = temperature.toOptional().orElseThrow().kelvin();
    if (kelvin > DAYLIGHT_TO_KELVIN) {
      return Finding.notDefined(
          String.format(
              Locale.ROOT,
              "there is no daylight of %.0f K to compare with; the D series ends at %.0f K",
              kelvin,
              DAYLIGHT_TO_KELVIN));
    }
    double[] reference = reference(kelvin);
    double distance = Math.hypot(u(test, 0) - u(reference, 0), v(test, 0) - v(reference, 0));
    if (!(distance <= ColourRendering.FARTHEST_DISTANCE)) {
      return Finding.notDefined(
          String.format(
              Locale.ROOT,
              "the light is %.4f from its reference in u, v; the indices are given up to %.4f",
              distance,
              ColourRendering.FARTHEST_DISTANCE));
    }
    return Finding.of(indices(test, reference, distance));
  }

  private static ColourRendering indices(double[] test, double[] reference, double distance) {
    double u0 = u(reference, 0);
    double v0 = v(reference, 0);
    double turnC = c(u0, v0) / c(u(test, 0), v(test, 0));
    double turnD = d(u0, v0) / d(u(test, 0), v(test, 0));
    List<Double> special = new ArrayList<>();
    double sum = 0;
    for (int s = 1; s <= SAMPLES.size(); s++) {
      // Adaptation of the test colour to the reference, CIE 13.3 section 5.7.
      double cs = turnC * c(u(test, s), v(test, s));
      double ds = turnD * d(u(test, s), v(test, s));
      double below = 16.518 + 1.481 * cs - ds;
      double u = (10.872 + 0.404 * cs - 4 * ds) / below;
      double v = 5.520 / below;
      double w = lightness(test, s);
      double wReference = lightness(reference, s);
      double dU = 13 * (w * (u - u0) - wReference * (u(reference, s) - u0));
      double dV = 13 * (w * (v - v0) - wReference * (v(reference, s) - v0));
      double dW = w - wReference;
      double index = 100 - 4.6 * Math.sqrt(dU * dU + dV * dV + dW * dW);
      special.add(index);
      sum += s <= 8 ? index : 0;
    }
    return new ColourRendering(sum / 8, special, distance);
  }

  /** W* of a test colour, the light's own Y being 100. */
  private static double lightness(double[] sums, int s) {
    return 25 * Math.cbrt(100 * sums[3 * s + 1] / sums[1]) - 17;
  }

  private static double u(double[] sums, int s) {
    return 4 * sums[3 * s] / (sums[3 * s] + 15 * sums[3 * s + 1] + 3 * sums[3 * s + 2]);
  }

  private static double v(double[] sums, int s) {
    return 6 * sums[3 * s + 1] / (sums[3 * s] + 15 * sums[3 * s + 1] + 3 * sums[3 * s + 2]);
  }

  private static double c(double u, double v) {
    return (4 - u - 10 * v) / v;
  }

  private static double d(double u, double v) {
    return (1.708 * v + 0.404 - 1.481 * u) / v;
  }
}
