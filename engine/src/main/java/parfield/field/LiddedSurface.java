package parfield.field;

import parfield.optics.Interface;
import parfield.optics.Pane;
import parfield.tank.Lid;

/**
 * The water surface and the lid over it, as one boundary: light goes back and forth between the
 * two.
 *
 * <p>A mesh only takes its share of what comes down; what goes up past its wires is lost.
 * Immutable.
 *
 * @param index refractive index of the water
 * @param lid what lies over the water
 */
record LiddedSurface(double index, Lid lid) {

  /**
   * Share of flux that gets from above the lid into the water.
   *
   * @param cosine of the zenith angle in air, 0 to 1
   */
  double transmittance(double cosine) {
    double surface = Interface.reflectance(cosine, 1, index);
    if (lid instanceof Lid.Mesh mesh) {
      return mesh.openFraction() * (1 - surface);
    }
    double cover = covered(cosine);
    return cover < 1 ? (1 - cover) * (1 - surface) / (1 - cover * surface) : 0;
  }

  /**
   * Share of flux from below that comes back into the water.
   *
   * @param cosine of the zenith angle in water, 0 to 1
   */
  double internalReflectance(double cosine) {
    double surface = Interface.reflectance(cosine, index, 1);
    double sineAir = Interface.refractedSine(Math.sqrt(Math.max(0, 1 - cosine * cosine)), index, 1);
    if (!(lid instanceof Lid.Clear) || sineAir >= 1) {
      return surface;
    }
    double cover = covered(Math.sqrt(1 - sineAir * sineAir));
    return surface + (1 - surface) * (1 - surface) * cover / (1 - cover * surface);
  }

  /** Reflectance of a clear lid, from either side; 0 where there is none. */
  private double covered(double cosine) {
    return lid instanceof Lid.Clear clear
        ? Pane.reflectance(cosine, 1, clear.refractiveIndex(), 1)
        : 0;
  }
}
