package parfield.lamp;

import java.util.Locale;

/**
 * Output of a channel by its dial: monotone through measured settings, since half on the dial is
 * seldom half the light.
 *
 * <p>Interpolates with the monotone piecewise cubic of Fritsch and Carlson (1980, SIAM J. Numer.
 * Anal. 17:238), which keeps every measured point and never overshoots. Immutable.
 */
public final class OutputCurve {
  private static final OutputCurve PROPORTIONAL =
      new OutputCurve(new double[] {0, 100}, new double[] {0, 1});

  private final double[] dials;
  private final double[] outputs;
  private final double[] slopes;

  /**
   * Makes a curve through measured points.
   *
   * @param dials dial settings [%], strictly ascending, first 0, last 100, copied
   * @param outputs output fraction at each, never falling, from 0 or more to exactly 1, copied
   * @throws IllegalArgumentException if these rules are broken; the message names the point
   */
  public OutputCurve(double[] dials, double[] outputs) {
    check(dials, outputs);
    this.dials = dials.clone();
    this.outputs = outputs.clone();
    this.slopes = monotoneSlopes(this.dials, this.outputs);
  }

  /** The curve of a dial that is proportional: 50 % on the dial is half the light. */
  public static OutputCurve proportional() {
    return PROPORTIONAL;
  }

  /** Returns the number of measured points. */
  public int size() {
    return dials.length;
  }

  /** Returns the dial setting of point {@code i} [%]. */
  public double dial(int i) {
    return dials[i];
  }

  /** Returns the output fraction at point {@code i}. */
  public double output(int i) {
    return outputs[i];
  }

  /**
   * Output fraction at a dial setting.
   *
   * @param dial setting [%], 0 to 100
   * @return fraction of full output, 0 to 1
   * @throws IllegalArgumentException if the setting lies outside 0–100
   */
  public double outputAt(double dial) {
    if (!(dial >= 0 && dial <= 100)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "a dial runs from 0 to 100 %%; got %s", dial));
    }
    int above = 1;
    while (above < dials.length - 1 && dials[above] < dial) {
      above++;
    }
    double h = dials[above] - dials[above - 1];
    double t = (dial - dials[above - 1]) / h;
    double u = 1 - t;
    return u * u * (1 + 2 * t) * outputs[above - 1]
        + t * t * (3 - 2 * t) * outputs[above]
        + h * t * u * (u * slopes[above - 1] - t * slopes[above]);
  }

  /**
   * The lowest dial setting that gives an output fraction.
   *
   * @param output wanted fraction of full output, 0 to 1
   * @return dial setting [%], 0 to 100
   * @throws IllegalArgumentException if the fraction lies outside 0–1
   */
  public double dialFor(double output) {
    if (!(output >= 0 && output <= 1)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "an output fraction runs from 0 to 1; got %s", output));
    }
    double low = 0;
    double high = 100;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (outputAt(middle) < output) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high;
  }

  /**
   * The integral of the output over the dial, exact: what a steady ramp of the dial gives, times
   * its duration over the difference of its ends.
   *
   * @param from dial setting [%], 0 to 100
   * @param to dial setting [%], 0 to 100; below {@code from}, the integral is negative
   * @return output fraction times percent
   * @throws IllegalArgumentException if a setting lies outside 0–100
   */
  public double integral(double from, double to) {
    if (!(from >= 0 && from <= 100 && to >= 0 && to <= 100)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "a dial runs from 0 to 100 %%; got %s to %s", from, to));
    }
    if (from > to) {
      return -integral(to, from);
    }
    double sum = 0;
    double at = from;
    for (int i = 1; i < dials.length && at < to; i++) {
      double end = Math.min(to, dials[i]);
      if (end > at) {
        // Simpson's rule has no error on a cubic.
        sum += (end - at) / 6 * (outputAt(at) + 4 * outputAt((at + end) / 2) + outputAt(end));
        at = end;
      }
    }
    return sum;
  }

  private static void check(double[] dials, double[] outputs) {
    if (dials.length != outputs.length || dials.length < 2) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "an output curve needs two or more pairs of dial and output; got %d and %d",
              dials.length,
              outputs.length));
    }
    int last = dials.length - 1;
    if (dials[0] != 0 || dials[last] != 100) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "an output curve must run from dial 0 to dial 100; got %s to %s",
              dials[0],
              dials[last]));
    }
    if (Math.abs(outputs[last] - 1) > 1e-9) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "an output curve must reach 1 at dial 100 (divide by the output there); got %s",
              outputs[last]));
    }
    if (!(outputs[0] >= 0)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "an output must be 0 or more; got %s at dial 0", outputs[0]));
    }
    for (int i = 1; i <= last; i++) {
      if (!(dials[i] > dials[i - 1]) || !(outputs[i] >= outputs[i - 1])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "an output curve must never fall; dial %s gives %s after dial %s gave %s",
                dials[i],
                outputs[i],
                dials[i - 1],
                outputs[i - 1]));
      }
    }
  }

  private static double[] monotoneSlopes(double[] x, double[] y) {
    int n = x.length;
    double[] secant = new double[n - 1];
    for (int i = 0; i < n - 1; i++) {
      secant[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
    }
    double[] slope = new double[n];
    slope[0] = secant[0];
    slope[n - 1] = secant[n - 2];
    for (int i = 1; i < n - 1; i++) {
      slope[i] = secant[i - 1] * secant[i] <= 0 ? 0 : (secant[i - 1] + secant[i]) / 2;
    }
    for (int i = 0; i < n - 1; i++) {
      if (secant[i] == 0) {
        slope[i] = 0;
        slope[i + 1] = 0;
        continue;
      }
      double a = slope[i] / secant[i];
      double b = slope[i + 1] / secant[i];
      double radius = a * a + b * b;
      if (radius > 9) {
        double shrink = 3 / Math.sqrt(radius);
        slope[i] = shrink * a * secant[i];
        slope[i + 1] = shrink * b * secant[i];
      }
    }
    return slope;
  }
}
