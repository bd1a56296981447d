package parfield.field;

import java.util.Locale;
import parfield.optics.Interface;

/**
 * The one light path from a point above a flat water surface to a point below it.
 *
 * <p>Snell's law joins them: r = h tan θ_a + d tan θ_w. The factor that turns photon intensity into
 * plane irradiance follows from conservation of flux between neighbouring rays.
 *
 * @param sineAir sine of the zenith angle in air, which is the emission angle γ
 * @param cosineAir its cosine
 * @param sineWater sine of the zenith angle in water
 * @param cosineWater its cosine
 * @param crossing horizontal distance from the source to where the path meets the surface [m]
 * @param lengthInWater length of the path in water [m]
 * @param spread dΩ/dA: solid angle that leaves the source per horizontal area at the receiver
 *     [sr/m²], no transmittance or absorption
 */
record SurfacePath(
    double sineAir,
    double cosineAir,
    double sineWater,
    double cosineWater,
    double crossing,
    double lengthInWater,
    double spread) {

  /**
   * Solves for the path.
   *
   * @param height h of the source above the surface [m], above 0
   * @param depth d of the receiver below it [m], 0 or more
   * @param distance horizontal distance r between them [m], 0 or more
   * @param index refractive index of the water
   */
  static SurfacePath solve(double height, double depth, double distance, double index) {
    double tangent = tangentInAir(height, depth, distance, index);
    double cosineAir = 1 / Math.sqrt(1 + tangent * tangent);
    double sineAir = tangent * cosineAir;
    double sineWater = Interface.refractedSine(sineAir, 1, index);
    double cosineWater = Math.sqrt(1 - sineWater * sineWater);
    double lengthInWater = depth / cosineWater;
    double slope =
        height / (cosineAir * cosineAir)
            + depth / (cosineWater * cosineWater) * cosineAir / (index * cosineWater);
    double spread;
    if (tangent < 1e-9) {
      double apparent = height + depth / index;
      spread = 1 / (apparent * apparent);
    } else {
      // The offset is recomputed from the angle, so that numerator and denominator agree.
      double offset = height * tangent + depth * sineWater / cosineWater;
      spread = sineAir / (offset * slope);
    }
    return new SurfacePath(
        sineAir, cosineAir, sineWater, cosineWater, height * tangent, lengthInWater, spread);
  }

  /** Safeguarded Newton iteration on t = tan θ_a; the offset is monotone in t. */
  private static double tangentInAir(double height, double depth, double distance, double index) {
    double low = 0;
    double high = distance / height;
    double t = distance / (height + depth / index);
    for (int i = 0; i < 60; i++) {
      // tan θ_w = t / sqrt(n² + (n² - 1) t²)
      double root = Math.sqrt(index * index + (index * index - 1) * t * t);
      double offset = height * t + depth * t / root - distance;
      if (offset > 0) {
        high = t;
      } else {
        low = t;
      }
      double slope = height + depth * index * index / (root * root * root);
      double next = t - offset / slope;
      if (!(next >= low && next <= high)) {
        next = (low + high) / 2;
      }
      // Each step squares the error: after so small a one it is below rounding.
      if (Math.abs(next - t) <= 1e-9 * (1 + t)) {
        return next;
      }
      t = next;
    }
    if (high - low <= 1e-9 * (1 + high)) {
      return t;
    }
    throw new ArithmeticException(
        String.format(
            Locale.ROOT,
            "no light path found for height %s m, depth %s m, distance %s m",
            height,
            depth,
            distance));
  }
}
