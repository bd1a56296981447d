package parfield.spectrum;

import java.util.Locale;

/**
 * The colour of a light as a screen can show it, sRGB (IEC 61966-2-1), at the screen's full
 * brightness.
 *
 * <p>A screen shows no colour as pure as a single blue channel. Such a colour is moved straight
 * towards the screen's white, D65, in the chromaticity diagram until the screen can show it: {@link
 * #paled}. The eye is not taken as adapted to the light.
 *
 * @param red 0 to 1, encoded
 * @param green 0 to 1, encoded
 * @param blue 0 to 1, encoded
 * @param paled whether the light's colour lies outside what sRGB can show
 */
public record DisplayColour(double red, double green, double blue, boolean paled) {
  /** The colour matrix has four decimals: what it is off by does not count as outside. */
  private static final double ROUNDING = 1e-3;

  /** The colour of a light. */
  public static DisplayColour of(Chromaticity colour) {
    double x = colour.x() / colour.y();
    double z = (1 - colour.x() - colour.y()) / colour.y();
    // IEC 61966-2-1:1999, XYZ to linear sRGB, for Y = 1.
    double r = 3.2406 * x - 1.5372 - 0.4986 * z;
    double g = -0.9689 * x + 1.8758 + 0.0415 * z;
    double b = 0.0557 * x - 0.2040 + 1.0570 * z;
    double least = Math.min(r, Math.min(g, b));
    double white = Math.max(0, -least);
    double brightest = Math.max(r, Math.max(g, b)) + white;
    return new DisplayColour(
        encoded((r + white) / brightest),
        encoded((g + white) / brightest),
        encoded((b + white) / brightest),
        least < -ROUNDING * brightest);
  }

  private static double encoded(double linear) {
    double value = Math.max(0, Math.min(1, linear));
    return value <= 0.0031308 ? 12.92 * value : 1.055 * Math.pow(value, 1 / 2.4) - 0.055;
  }

  /** The colour as {@code #rrggbb}. */
  public String hex() {
    return String.format(
        Locale.ROOT,
        "#%02x%02x%02x",
        Math.round(255 * red),
        Math.round(255 * green),
        Math.round(255 * blue));
  }
}
