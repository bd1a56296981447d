package parfield.web.page;

import io.javalin.http.Context;
import java.util.Optional;
import parfield.units.LengthUnit;

/**
 * What a person chose to see, kept in the browser's cookies.
 *
 * @param length unit of lengths, if one was chosen; else the bench's
 * @param theme {@code light} or {@code dark}, empty where the system decides
 */
public record Display(Optional<LengthUnit> length, String theme) {
  /** Cookie of the unit of length: {@code cm} or {@code in}. */
  public static final String LENGTH = "parfield-length";

  /** Cookie of the theme: {@code light} or {@code dark}. */
  public static final String THEME = "parfield-theme";

  /** What the browser that asks chose. */
  public static Display of(Context context) {
    String theme = context.cookie(THEME);
    return new Display(
        length(context.cookie(LENGTH)), "light".equals(theme) || "dark".equals(theme) ? theme : "");
  }

  private static Optional<LengthUnit> length(String cookie) {
    if ("cm".equals(cookie)) {
      return Optional.of(LengthUnit.CM);
    }
    return "in".equals(cookie) ? Optional.of(LengthUnit.INCH) : Optional.empty();
  }

  /** The unit to show, where a bench has its own. */
  public LengthUnit unit(LengthUnit ofBench) {
    return length.orElse(ofBench);
  }
}
