package parfield.plan;

import java.util.Locale;
import parfield.survey.Band;
import parfield.units.Estimate;

/** How numbers read in this room's sentences. */
final class Wording {
  /** Unit of PPFD as written for people. */
  static final String PPFD = "µmol m⁻² s⁻¹";

  private Wording() {}

  /** A number with at most {@code digits} digits after the point, no trailing zeros. */
  static String number(double value, int digits) {
    String text = String.format(Locale.ROOT, "%." + digits + "f", value);
    if (text.indexOf('.') >= 0) {
      text = text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }
    return text.equals("-0") ? "0" : text;
  }

  /** A share as a percentage, such as "70 %". */
  static String percent(double share) {
    return number(100 * share, 1) + " %";
  }

  /** A demanded figure with its interval, such as "71 % (66–75 %)". */
  static String figure(Demand demand, Estimate value) {
    if (demand instanceof Demand.Coverage || demand instanceof Demand.Retention) {
      return String.format(
          Locale.ROOT,
          "%.1f %% (%.1f–%.1f %%)",
          100 * value.value(),
          100 * value.low(),
          100 * value.high());
    }
    if (demand instanceof Demand.HotSpot || demand instanceof Demand.MeanPpfd) {
      return String.format(
          Locale.ROOT, "%.0f (%.0f–%.0f) %s", value.value(), value.low(), value.high(), PPFD);
    }
    return String.format(Locale.ROOT, "%.2f (%.2f–%.2f)", value.value(), value.low(), value.high());
  }

  /** An amount of a demanded figure, such as "9 points". */
  static String amount(Demand demand, double amount) {
    if (demand instanceof Demand.Coverage || demand instanceof Demand.Retention) {
      return number(100 * amount, 1) + " points";
    }
    if (demand instanceof Demand.HotSpot || demand instanceof Demand.MeanPpfd) {
      return number(amount, 0) + " " + PPFD;
    }
    return number(amount, 2);
  }

  /** A sentence with a capital at its start. */
  static String capital(String sentence) {
    return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
  }

  /** A band, such as "soft (75–150 µmol m⁻² s⁻¹)". */
  static String band(Band band) {
    return String.format(
        Locale.ROOT,
        "%s (%s–%s %s)",
        band.name(),
        number(band.from(), 1),
        number(band.to(), 1),
        PPFD);
  }
}
