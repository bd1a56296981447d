package parfield.plan;

import java.util.Locale;
import parfield.survey.Band;

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
