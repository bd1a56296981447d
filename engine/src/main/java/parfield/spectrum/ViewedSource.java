package parfield.spectrum;

import java.util.Locale;

/**
 * A bright rectangle seen straight on from a distance: what an eye looks at.
 *
 * @param width one side of what shines [m], above 0
 * @param height the other side [m], above 0
 * @param distance from it to the eye [m], above 0
 */
public record ViewedSource(double width, double height, double distance) {
  /** Below this angle a source counts as small (IEC 62471; Directive 2006/25/EC) [rad]. */
  public static final double SMALL_ANGLE = 0.011;

  public ViewedSource {
    if (!(width > 0) || !(height > 0) || !(distance > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a viewed source has sides and a distance above 0 m; got %s x %s m seen from %s m",
              width,
              height,
              distance));
    }
  }

  /** The angle that the source subtends, mean of its two sides' [rad]. */
  public double angle() {
    return Math.atan(width / (2 * distance)) + Math.atan(height / (2 * distance));
  }

  /** Whether the source counts as small. */
  public boolean small() {
    return angle() < SMALL_ANGLE;
  }

  /**
   * Solid angle weighted with the cosine at a surface parallel to the source [sr]: the irradiance
   * there over the radiance of an evenly bright source.
   *
   * <p>The form factor from a point to a parallel rectangle, times π.
   */
  public double projectedSolidAngle() {
    double a = width / (2 * distance);
    double b = height / (2 * distance);
    double alongA = Math.hypot(1, a);
    double alongB = Math.hypot(1, b);
    return 2 * (a / alongA * Math.atan(b / alongA) + b / alongB * Math.atan(a / alongB));
  }
}
