package parfield.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Spectra that a person names on the command line: a file, or one of the spectra in it, as in
 * {@code channels.csv#blue}.
 *
 * @param path the file
 * @param name of the spectrum; empty for all of the file
 */
record SpectrumArgument(Path path, Optional<String> name) {
  SpectrumArgument {
    Objects.requireNonNull(path, "path");
    Objects.requireNonNull(name, "name");
  }

  /** Reads {@code FILE} and {@code FILE#NAME}. */
  static final class Converter implements ITypeConverter<SpectrumArgument> {
    @Override
    public SpectrumArgument convert(String text) {
      int at = text.lastIndexOf('#');
      try {
        return at > 0 && at < text.length() - 1
            ? new SpectrumArgument(
                Path.of(text.substring(0, at)), Optional.of(text.substring(at + 1)))
            : new SpectrumArgument(Path.of(text), Optional.empty());
      } catch (InvalidPathException e) {
        throw new TypeConversionException("this names no file: " + text);
      }
    }
  }
}
