package parfield.cli;

import parfield.plot.Scale;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a scale of PPFD, as in {@code 0:500}. */
final class ScaleConverter implements ITypeConverter<Scale> {
  @Override
  public Scale convert(String text) {
    String[] ends = text.split(":", -1);
    if (ends.length == 2 && ends[0].matches("[0-9.]+") && ends[1].matches("[0-9.]+")) {
      try {
        return new Scale(Double.parseDouble(ends[0]), Double.parseDouble(ends[1]));
      } catch (IllegalArgumentException e) {
        throw fault(text);
      }
    }
    throw fault(text);
  }

  private static TypeConversionException fault(String text) {
    return new TypeConversionException(
        "a scale runs upward between two numbers of 0 or more, as in 0:500; got " + text);
  }
}
