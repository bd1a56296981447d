package parfield.cli;

import java.util.Locale;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a share as a percentage, {@code 1%}, or as a number, {@code 0.01}. */
final class ShareConverter implements ITypeConverter<Double> {
  @Override
  public Double convert(String text) {
    boolean percent = text.endsWith("%");
    String number = percent ? text.substring(0, text.length() - 1).strip() : text;
    double share;
    try {
      share = Double.parseDouble(number) / (percent ? 100 : 1);
    } catch (NumberFormatException e) {
      throw fault(text);
    }
    if (!(share > 0 && share <= 1)) {
      throw fault(text);
    }
    return share;
  }

  private static TypeConversionException fault(String text) {
    return new TypeConversionException(
        String.format(
            Locale.ROOT,
            "a share lies above 0 and at most at 100%%, as in 1%% or 0.01; got %s",
            text));
  }
}
