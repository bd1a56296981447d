package parfield.answer;

import java.util.Locale;
import java.util.OptionalDouble;
import parfield.spectrum.WaveBand;
import parfield.tank.Place;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/** Numbers as a person reads them: rounded to what they mean; the unit stands beside them. */
public final class Numbers {
  /** Unit of PPFD. */
  public static final String PPFD = "µmol m⁻² s⁻¹";

  /** Where there is no number. */
  public static final String NONE = "–";

  private Numbers() {}

  /** How many there are, as in {@code 1 reading} or {@code 16 readings}. */
  public static String count(int number, String one) {
    return number + " " + one + (number == 1 ? "" : "s");
  }

  /** How many there are, where more than one has a word of its own. */
  public static String count(int number, String one, String more) {
    return number + " " + (number == 1 ? one : more);
  }

  /** A PPFD without its unit, as in {@code 392}. */
  public static String ppfd(double ppfd) {
    return decimals(ppfd, 0);
  }

  /** A PPFD with its interval, as in {@code 392 (371–415)}. */
  public static String ppfd(Estimate ppfd) {
    return interval(ppfd, 1, 0);
  }

  /** A share in percent without its sign, as in {@code 71}. */
  public static String percent(double share) {
    return decimals(100 * share, 0);
  }

  /** A share in percent with its interval, as in {@code 71 (66–75)}. */
  public static String percent(Estimate share) {
    return interval(share, 100, 0);
  }

  /** A small share in percent with one decimal, as in {@code 2.4}. */
  public static String finePercent(double share) {
    return decimals(100 * share, 1);
  }

  /** A ratio, as in {@code 0.87}. */
  public static String ratio(double ratio) {
    return decimals(ratio, 2);
  }

  /** A ratio, or a dash. */
  public static String ratio(OptionalDouble ratio) {
    return ratio.isPresent() ? ratio(ratio.getAsDouble()) : NONE;
  }

  /** A ratio with its interval, as in {@code 0.87 (0.84–0.90)}. */
  public static String ratio(Estimate ratio) {
    return interval(ratio, 1, 2);
  }

  /** A length [m] without its unit: to the millimetre or the hundredth of an inch. */
  public static String length(double metres, LengthUnit unit) {
    return plain(unit.fromMetres(metres), unit == LengthUnit.CM ? 1 : 2);
  }

  /** A length [m] with its unit, as in {@code 15 cm}. */
  public static String withUnit(double metres, LengthUnit unit) {
    return length(metres, unit) + " " + unit.symbol();
  }

  /** x and y of a place without their unit, as in {@code 7.5, 30}. */
  public static String spot(Place place, LengthUnit unit) {
    return length(place.x(), unit) + ", " + length(place.y(), unit);
  }

  /** A number with at most {@code digits} decimals and no trailing zeros. */
  public static String plain(double value, int digits) {
    String text = decimals(value, digits);
    if (text.indexOf('.') >= 0) {
      text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }
    return text;
  }

  /** A number with exactly {@code digits} decimals. */
  public static String fixed(double value, int digits) {
    return decimals(value, digits);
  }

  /** A number to three digits, as in {@code 0.0123}, {@code 4.56}, {@code 1234}. */
  public static String significant(double value) {
    if (value == 0 || Double.isNaN(value)) {
      return "0";
    }
    int digits = 2 - (int) Math.floor(Math.log10(Math.abs(value)));
    return decimals(value, Math.max(0, Math.min(12, digits)));
  }

  /** A number with its sign, as in {@code +2.4} or {@code −2.4}; 0 has none. */
  public static String signed(double value, int digits) {
    String text = decimals(value, digits);
    if (text.startsWith("-")) {
      return text.replace('-', '\u2212');
    }
    return text.matches("0(\\.0*)?") ? text : "+" + text;
  }

  /** A waveband without its unit, as in {@code 430–480}. */
  public static String nm(WaveBand band) {
    return plain(band.fromNm(), 1) + "–" + plain(band.toNm(), 1);
  }

  private static String decimals(double value, int digits) {
    String text = String.format(Locale.ROOT, "%." + digits + "f", value);
    return text.matches("-0(\\.0*)?") ? text.substring(1) : text;
  }

  /** A number with its interval, each with at most {@code digits} decimals. */
  public static String plain(Estimate estimate, int digits) {
    return interval(
        plain(estimate.value(), digits),
        plain(estimate.low(), digits),
        plain(estimate.high(), digits));
  }

  private static String interval(Estimate estimate, double factor, int digits) {
    return interval(
        decimals(factor * estimate.value(), digits),
        decimals(factor * estimate.low(), digits),
        decimals(factor * estimate.high(), digits));
  }

  private static String interval(String value, String low, String high) {
    return value + " (" + low + (low.startsWith("-") ? " to " : "–") + high + ")";
  }
}
