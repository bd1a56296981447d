package parfield.optics;

/** A pane of glass between two media: incoherent sum over the reflections inside the slab. */
public final class Pane {
  /** Refractive index of soda-lime float glass; common practice, handbook value 1.52 at 589 nm. */
  public static final double GLASS = 1.52;

  private Pane() {}

  /**
   * Reflectance of a clear slab.
   *
   * @param cosine of the angle of incidence in the first medium, 0 to 1
   * @param from refractive index of the first medium
   * @param slab refractive index of the slab
   * @param to refractive index beyond the slab
   * @return share of flux reflected, 0 to 1; exactly 1 where the far medium reflects totally
   */
  public static double reflectance(double cosine, double from, double slab, double to) {
    double sine = Math.sqrt(Math.max(0, 1 - cosine * cosine));
    double slabSine = Interface.refractedSine(sine, from, slab);
    if (slabSine >= 1) {
      return 1;
    }
    double near = Interface.reflectance(cosine, from, slab);
    double far = Interface.reflectance(Math.sqrt(1 - slabSine * slabSine), slab, to);
    if (far == 1) {
      // All comes back in the end; the series below has no sum where both faces reflect all.
      return 1;
    }
    // r + t² R / (1 - r R), t = 1 - r: the geometric series of passes through the slab.
    return near + (1 - near) * (1 - near) * far / (1 - near * far);
  }
}
