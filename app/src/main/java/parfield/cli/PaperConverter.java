package parfield.cli;

import java.util.Locale;
import parfield.report.Paper;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads {@code a4} and {@code letter}. */
final class PaperConverter implements ITypeConverter<Paper> {
  @Override
  public Paper convert(String text) {
    for (Paper paper : Paper.values()) {
      if (paper.name().toLowerCase(Locale.ROOT).equals(text.toLowerCase(Locale.ROOT))) {
        return paper;
      }
    }
    throw new TypeConversionException("a paper is a4 or letter; got " + text);
  }
}
