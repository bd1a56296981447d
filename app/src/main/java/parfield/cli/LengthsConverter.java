package parfield.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parfield.units.LengthUnit;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Lengths on the command line: a list {@code 15,20,30}, a range with its step {@code 15:40:5}, or
 * both mixed.
 */
final class LengthsConverter implements ITypeConverter<LengthsConverter.Lengths> {
  private static final int MOST = 200;

  /**
   * Lengths as typed.
   *
   * @param numbers in a unit that is not known yet
   */
  record Lengths(List<Double> numbers) {
    Lengths {
      numbers = List.copyOf(numbers);
    }

    /** The lengths in metres, if they were typed in {@code unit}. */
    List<Double> metres(LengthUnit unit) {
      // Rounded to a tenth of a millimetre's thousandth, so that 0.1 cm steps are what they say.
      return numbers.stream().map(n -> Math.rint(unit.toMetres(n) * 1e7) / 1e7).toList();
    }
  }

  @Override
  public Lengths convert(String text) {
    List<Double> numbers = new ArrayList<>();
    for (String part : text.split(",", -1)) {
      String[] ends = part.split(":", -1);
      if (ends.length == 1) {
        numbers.add(number(ends[0], text));
      } else if (ends.length == 3) {
        addRange(
            numbers, number(ends[0], text), number(ends[1], text), number(ends[2], text), text);
      } else {
        throw fault(text);
      }
    }
    return new Lengths(numbers);
  }

  private static void addRange(
      List<Double> numbers, double from, double to, double step, String text) {
    double steps = (to - from) / step;
    if (!(step > 0) || !(steps >= 0) || steps > MOST) {
      throw new TypeConversionException(
          String.format(
              Locale.ROOT,
              "a range FROM:TO:STEP runs upward in at most %d steps; got %s",
              MOST,
              text));
    }
    for (int i = 0; i <= steps + 1e-9; i++) {
      numbers.add(from + i * step);
    }
  }

  private static double number(String part, String text) {
    try {
      double number = Double.parseDouble(part.strip());
      if (Double.isFinite(number) && number >= 0 && part.strip().matches("[0-9.]+")) {
        return number;
      }
    } catch (NumberFormatException e) {
      throw fault(text);
    }
    throw fault(text);
  }

  private static TypeConversionException fault(String text) {
    return new TypeConversionException(
        String.format(
            Locale.ROOT,
            "lengths are numbers of 0 or more, as in 15,20,30 or 15:40:5; got %s",
            text));
  }
}
