package parfield.formats;

import java.util.Locale;

/** Decimal numbers as people write them, read strictly: digits, one point, an exponent. */
final class NumberText {
  private NumberText() {}

  /**
   * Parses a decimal number.
   *
   * @param text the number without blanks around it
   * @param point the decimal separator, {@code .} or {@code ,}
   * @return the number, or NaN if it is none or too big for a double
   */
  static double parse(String text, char point) {
    int length = text.length();
    int at = 0;
    if (at < length && (text.charAt(at) == '-' || text.charAt(at) == '+')) {
      at++;
    }
    int digits = 0;
    while (at < length && isDigit(text.charAt(at))) {
      at++;
      digits++;
    }
    if (at < length && text.charAt(at) == point) {
      at++;
      while (at < length && isDigit(text.charAt(at))) {
        at++;
        digits++;
      }
    }
    if (digits == 0) {
      return Double.NaN;
    }
    if (at < length && (text.charAt(at) == 'e' || text.charAt(at) == 'E')) {
      at++;
      if (at < length && (text.charAt(at) == '-' || text.charAt(at) == '+')) {
        at++;
      }
      int exponent = at;
      while (at < length && isDigit(text.charAt(at))) {
        at++;
      }
      if (at == exponent) {
        return Double.NaN;
      }
    }
    if (at < length) {
      return Double.NaN;
    }
    double value = Double.parseDouble(point == '.' ? text : text.replace(point, '.'));
    return Double.isInfinite(value) ? Double.NaN : value;
  }

  static double parse(String text) {
    return parse(text, '.');
  }

  static boolean isNumber(String text) {
    return !Double.isNaN(parse(text, '.'));
  }

  /** A number as a message shows it: no more than six digits, no empty decimals. */
  static String shown(double value) {
    if (value == Math.rint(value) && Math.abs(value) < 1e9) {
      return String.format(Locale.ROOT, "%d", (long) value);
    }
    String text = String.format(Locale.ROOT, "%.6g", value);
    if (text.contains("e")) {
      return text;
    }
    return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
  }

  private static boolean isDigit(char c) {
    return c >= '0' && c <= '9';
  }
}
