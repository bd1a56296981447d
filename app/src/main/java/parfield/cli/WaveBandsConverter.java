package parfield.cli;

import java.util.Locale;
import java.util.stream.Stream;
import parfield.spectrum.WaveBands;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the ends of wavebands, as in {@code 380,400,430,480,510,600,700}. */
final class WaveBandsConverter implements ITypeConverter<WaveBands> {
  private static final int MOST = 31;

  @Override
  public WaveBands convert(String text) {
    String[] parts = text.split(",", -1);
    if (parts.length < 2
        || parts.length > MOST
        || !Stream.of(parts).allMatch(part -> part.strip().matches("\\d{2,4}(\\.\\d{1,3})?"))) {
      throw fault(text);
    }
    try {
      return WaveBands.edges(
          Stream.of(parts).mapToDouble(part -> Double.parseDouble(part.strip())).toArray());
    } catch (IllegalArgumentException e) {
      throw fault(text);
    }
  }

  private static TypeConversionException fault(String text) {
    return new TypeConversionException(
        String.format(
            Locale.ROOT,
            "wavebands are told by their ends in nm, upward, 2 to %d of them, as in"
                + " 380,400,430,480,510,600,700; got %s",
            MOST,
            text));
  }
}
