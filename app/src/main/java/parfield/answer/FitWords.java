package parfield.answer;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parfield.fit.FitReport;
import parfield.units.Estimate;
import parfield.units.LengthUnit;

/** What the report of a fit says of lengths, which it keeps in centimetres, in another unit. */
public final class FitWords {
  private static final Pattern CENTIMETRES = Pattern.compile("(\\d+(?:\\.\\d+)?) cm\\b");
  private static final String IN_CENTIMETRES = " (cm)";

  private FitWords() {}

  /** What was held out, in words. */
  public static String heldOut(FitReport.CrossValidation held, LengthUnit unit) {
    return unit == LengthUnit.CM
        ? held.heldOut()
        : CENTIMETRES
            .matcher(held.heldOut())
            .replaceAll(
                length ->
                    Matcher.quoteReplacement(
                        Numbers.withUnit(
                            LengthUnit.CM.toMetres(Double.parseDouble(length.group(1))), unit)));
  }

  /** A finding; one that is a length in a unit of length. */
  public static FitReport.Finding finding(FitReport.Finding found, LengthUnit unit) {
    if (unit == LengthUnit.CM || !found.name().endsWith(IN_CENTIMETRES)) {
      return found;
    }
    String name = found.name().substring(0, found.name().length() - IN_CENTIMETRES.length());
    return new FitReport.Finding(
        name + " (" + unit.symbol() + ")",
        in(found.stated(), unit),
        new Estimate(
            in(found.fitted().value(), unit),
            in(found.fitted().low(), unit),
            in(found.fitted().high(), unit)));
  }

  private static double in(double centimetres, LengthUnit unit) {
    return unit.fromMetres(LengthUnit.CM.toMetres(centimetres));
  }
}
