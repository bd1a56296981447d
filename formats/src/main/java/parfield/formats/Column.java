package parfield.formats;

import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parfield.units.LengthUnit;

/**
 * The head of a column: a name and its unit, as in {@code x_cm}, {@code depth (in)}, {@code PPFD
 * [µmol/m²/s]}.
 *
 * @param name in lower case, words separated by single spaces
 * @param unit as written but in lower case; empty if none is stated
 */
record Column(String name, String unit) {
  private static final List<String> CM = List.of("cm", "centimetre", "centimetres", "centimeter");
  private static final List<String> INCH = List.of("in", "inch", "inches", "\"");

  /**
   * Reads a head.
   *
   * @param head as written
   * @param known names that the format knows
   * @return the longest known name that the head begins with, and the rest as its unit; the whole
   *     head as a name if it begins with none
   */
  static Column of(String head, Collection<String> known) {
    String text = head.strip().toLowerCase(Locale.ROOT).replace('_', ' ');
    String name = "";
    for (String candidate : known) {
      boolean whole =
          text.startsWith(candidate)
              && (text.length() == candidate.length()
                  || !Character.isLetterOrDigit(text.charAt(candidate.length())));
      if (whole && candidate.length() > name.length()) {
        name = candidate;
      }
    }
    if (name.isEmpty()) {
      return new Column(text, "");
    }
    String unit = text.substring(name.length());
    int from = 0;
    int to = unit.length();
    while (from < to && " ([/:".indexOf(unit.charAt(from)) >= 0) {
      from++;
    }
    while (to > from && " )]".indexOf(unit.charAt(to - 1)) >= 0) {
      to--;
    }
    return new Column(name, unit.substring(from, to));
  }

  /** The unit of length that a text names; empty if it is none that this format knows. */
  static Optional<LengthUnit> lengthUnit(String unit) {
    if (CM.contains(unit)) {
      return Optional.of(LengthUnit.CM);
    }
    return INCH.contains(unit) ? Optional.of(LengthUnit.INCH) : Optional.empty();
  }
}
