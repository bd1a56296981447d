package parfield.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parfield.units.LengthUnit;

/** Round numbers along an axis, and how they are written. */
final class Ticks {
  private static final double[] ROUND = {1, 2, 2.5, 5, 10};

  /** Divisions of a foot rule: an inch scale is not read in tens. */
  private static final double[] INCHES = {1, 2, 3, 4, 6, 12, 24};

  private Ticks() {}

  /** The smallest round step that divides {@code span} into at most {@code most} parts. */
  static double step(double span, int most) {
    double least = span / most;
    double decade = Math.pow(10, Math.floor(Math.log10(least)));
    for (double round : ROUND) {
      if (round * decade >= least * (1 - 1e-9)) {
        return round * decade;
      }
    }
    return 10 * decade;
  }

  /** A step in the displayed unit that divides a length [m] into at most {@code most} parts. */
  static double lengthStep(double metres, LengthUnit unit, int most) {
    double span = unit.fromMetres(metres);
    if (unit == LengthUnit.INCH) {
      for (double inches : INCHES) {
        if (span / inches <= most) {
          return inches;
        }
      }
    }
    return step(span, most);
  }

  /** All multiples of {@code step} from {@code low} to {@code high}, ends included. */
  static List<Double> within(double low, double high, double step) {
    List<Double> ticks = new ArrayList<>();
    long last = (long) Math.floor(high / step + 1e-9);
    for (long i = (long) Math.ceil(low / step - 1e-9); i <= last; i++) {
      ticks.add(round(i * step));
    }
    return List.copyOf(ticks);
  }

  /** A number as short as its value allows, at most three decimals, with a true minus sign. */
  static String text(double value) {
    String text = String.format(Locale.ROOT, "%.3f", value);
    text = text.replaceFirst("\\.?0+$", "");
    return text.equals("-0") ? "0" : text.replace('-', '\u2212');
  }

  /** A multiple of a step without the last bits that multiplication leaves, and never −0. */
  static double round(double value) {
    return Math.rint(value * 1e9) / 1e9 + 0.0;
  }
}
