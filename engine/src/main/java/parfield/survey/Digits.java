package parfield.survey;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** Numbers as a person types them. */
final class Digits {
  private Digits() {}

  /** The number as typed: no exponent, no needless zeros behind the point. */
  static String typed(double value) {
    BigDecimal exact = BigDecimal.valueOf(value);
    return exact.signum() == 0 ? "0" : exact.stripTrailingZeros().toPlainString();
  }

  /**
   * Every number that becomes {@code value} when two neighbouring digits change places; none of
   * them begins with a superfluous zero.
   */
  static List<Double> swapped(double value) {
    char[] typed = typed(value).toCharArray();
    List<Double> numbers = new ArrayList<>();
    for (int i = 0; i < typed.length; i++) {
      int j = i + 1 < typed.length && typed[i + 1] == '.' ? i + 2 : i + 1;
      if (typed[i] == '.' || j >= typed.length || typed[i] == typed[j]) {
        continue;
      }
      char[] other = typed.clone();
      other[i] = typed[j];
      other[j] = typed[i];
      if (other[0] != '0' || other[1] == '.') {
        numbers.add(Double.parseDouble(new String(other)));
      }
    }
    return numbers;
  }

  /** The largest of 100, 10, 5, 1, 0.1, 0.01, … that every value is a multiple of. */
  static double step(double[] values) {
    for (double step : new double[] {100, 10, 5, 1, 0.1, 0.01}) {
      boolean all = true;
      for (double value : values) {
        double multiples = value / step;
        all &= Math.abs(multiples - Math.rint(multiples)) < 1e-6;
      }
      if (all) {
        return step;
      }
    }
    return 0.001;
  }
}
