package parfield.workspace;

import java.math.BigDecimal;
import java.math.MathContext;
import parfield.units.LengthUnit;

/** Numbers as text that is read back to the last bit. */
final class Decimal {
  /** More digits than any double needs. */
  private static final int MOST_DIGITS = 17;

  private Decimal() {}

  /** A number without an exponent. */
  static String shortest(double value) {
    BigDecimal decimal = new BigDecimal(Double.toString(value)).stripTrailingZeros();
    return decimal.signum() == 0 ? "0" : decimal.toPlainString();
  }

  /** The shortest text in a unit that is read back as this length [m]. */
  static String length(double metres, LengthUnit unit) {
    double near = unit.fromMetres(metres);
    BigDecimal exact = new BigDecimal(near);
    for (int digits = 1; digits <= MOST_DIGITS; digits++) {
      double rounded = exact.round(new MathContext(digits)).doubleValue();
      if (unit.toMetres(rounded) == metres) {
        return shortest(rounded);
      }
    }
    // The conversion rounds too: a neighbour may be the one that leads back.
    for (double neighbour : new double[] {Math.nextDown(near), Math.nextUp(near)}) {
      if (unit.toMetres(neighbour) == metres) {
        return shortest(neighbour);
      }
    }
    return shortest(near);
  }
}
