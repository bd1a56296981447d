package parfield.web.measure;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A PPFD as a person types or pastes it: decimal point or comma, with or without its unit.
 *
 * @param value what the meter showed [µmol m⁻² s⁻¹], 0 to {@link #MOST}; empty if the text is no
 *     such number
 * @param problem why it is none, with what to do; empty if there is a value
 * @param remark what is odd but possible about the value; empty if nothing is
 */
public record TypedNumber(OptionalDouble value, Optional<String> problem, Optional<String> remark) {
  /** The largest reading that the files take [µmol m⁻² s⁻¹]. */
  public static final double MOST = 100_000;

  /** The sun at noon gives about this much [µmol m⁻² s⁻¹]; common practice, no source. */
  private static final double SUN = 2_000;

  private static final int LONGEST = 40;

  private static final Pattern NUMBER =
      Pattern.compile(
          "([+-]?)(\\d+(?:[.,]\\d*)?|[.,]\\d+)\\s*"
              + "((?:[µμu]mol|micromol|umols|ppfd|par)[\\p{L}\\p{N}µμ/·*^ ⁻⁰¹²³.-]*)?",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern GROUPED = Pattern.compile("[1-9]\\d{0,2},\\d{3}");

  public TypedNumber {
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(problem, "problem");
    Objects.requireNonNull(remark, "remark");
    if (value.isPresent() == problem.isPresent()) {
      throw new IllegalArgumentException("a typed number is a value or has a problem");
    }
  }

  /** Reads what was typed; never guesses. */
  public static TypedNumber read(String typed) {
    String text = typed.strip();
    if (text.isEmpty()) {
      return none("type the number that the meter shows");
    }
    Matcher matcher = NUMBER.matcher(text);
    if (text.length() > LONGEST || !matcher.matches()) {
      return none(
          String.format(
              Locale.ROOT,
              "%s is no number: type one as in 71.5 or 71,5",
              text.length() > LONGEST ? text.substring(0, LONGEST) + "…" : text));
    }
    String digits = matcher.group(2);
    if (GROUPED.matcher(digits).matches()) {
      return none(
          String.format(
              Locale.ROOT,
              "%s may mean %s or %s: type the one you mean",
              digits,
              digits.replace(",", ""),
              digits.replace(',', '.')));
    }
    double value = Double.parseDouble(digits.replace(',', '.'));
    if (matcher.group(1).equals("-") && value > 0) {
      return none(
          String.format(
              Locale.ROOT,
              "%s is below 0, which no light is: if the meter shows it in the dark, type 0",
              text));
    }
    if (!(value <= MOST)) {
      return none(
          String.format(
              Locale.ROOT, "%s is above %.0f, the most that is taken: look again", digits, MOST));
    }
    return new TypedNumber(OptionalDouble.of(value), Optional.empty(), remark(digits, value));
  }

  private static Optional<String> remark(String digits, double value) {
    if (value > SUN) {
      return Optional.of(
          String.format(
              Locale.ROOT, "%s is more than the sun at noon gives (about %.0f)", digits, SUN));
    }
    if (value == 0) {
      return Optional.of("0: is the light on and the sensor's cap off?");
    }
    return Optional.empty();
  }

  private static TypedNumber none(String problem) {
    return new TypedNumber(OptionalDouble.empty(), Optional.of(problem), Optional.empty());
  }
}
