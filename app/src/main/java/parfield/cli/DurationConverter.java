package parfield.cli;

import java.time.Duration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a time to take: {@code 60s}, {@code 5min}, {@code 1h}. */
final class DurationConverter implements ITypeConverter<Duration> {
  private static final Pattern TIME = Pattern.compile("([0-9]{1,6}) ?(s|min|h)");

  @Override
  public Duration convert(String text) {
    Matcher matcher = TIME.matcher(text);
    if (!matcher.matches() || Long.parseLong(matcher.group(1)) == 0) {
      throw new TypeConversionException(
          "a time is a whole number above 0 with its unit, as in 60s, 5min or 1h; got " + text);
    }
    long number = Long.parseLong(matcher.group(1));
    return switch (matcher.group(2)) {
      case "s" -> Duration.ofSeconds(number);
      case "min" -> Duration.ofMinutes(number);
      default -> Duration.ofHours(number);
    };
  }
}
