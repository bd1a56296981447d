package parfield.lamp;

import java.util.Locale;

/**
 * A place on the fixture where light leaves it; all emitters of a fixture are alike.
 *
 * @param x offset from the fixture's centre along its length [m]
 * @param y offset from the fixture's centre along its width [m]
 * @param aperture side of the square that light leaves from [m]; 0 for a point, or unknown
 */
public record Emitter(double x, double y, double aperture) {
  public Emitter {
    if (!Double.isFinite(x) || !Double.isFinite(y)) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "an emitter's offset must be finite; got %s, %s m", x, y));
    }
    if (!(aperture >= 0) || Double.isInfinite(aperture)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "an emitter's aperture must be 0 m or more; got %s m", aperture));
    }
  }

  /** This emitter with another aperture [m]. */
  public Emitter withAperture(double newAperture) {
    return new Emitter(x, y, newAperture);
  }
}
