package parfield.optics;

/**
 * A flat boundary between two clear media: Snell's law and Fresnel's equations for unpolarised
 * light (Born and Wolf, Principles of Optics, §1.5).
 *
 * <p>All angles are from the normal [rad], 0 to π/2.
 */
public final class Interface {
  private Interface() {}

  /**
   * Sine of the refracted angle; above 1 where reflection is total.
   *
   * @param sine of the angle of incidence, 0 to 1
   * @param from refractive index on the side of incidence, 1 or more
   * @param to refractive index beyond, 1 or more
   */
  public static double refractedSine(double sine, double from, double to) {
    return sine * from / to;
  }

  /**
   * Fresnel reflectance of unpolarised light.
   *
   * @param cosine of the angle of incidence, 0 to 1
   * @param from refractive index on the side of incidence, 1 or more
   * @param to refractive index beyond, 1 or more
   * @return share of flux that is reflected, 0 to 1; exactly 1 past the critical angle
   */
  public static double reflectance(double cosine, double from, double to) {
    double sine = Math.sqrt(Math.max(0, 1 - cosine * cosine));
    double refracted = refractedSine(sine, from, to);
    if (refracted >= 1) {
      return 1;
    }
    double refractedCosine = Math.sqrt(1 - refracted * refracted);
    double perpendicular =
        (from * cosine - to * refractedCosine) / (from * cosine + to * refractedCosine);
    double parallel =
        (to * cosine - from * refractedCosine) / (to * cosine + from * refractedCosine);
    return (perpendicular * perpendicular + parallel * parallel) / 2;
  }

  /**
   * Reflectance for perfectly diffuse light: ∫ R(μ) 2μ dμ over the hemisphere.
   *
   * @param from refractive index on the side of incidence
   * @param to refractive index beyond
   * @return share of flux that is reflected; 0.4807 from water of index 1.34 to air
   */
  public static double diffuseReflectance(double from, double to) {
    double criticalCosine = from > to ? Math.sqrt(1 - (to / from) * (to / from)) : 0;
    // Below the critical cosine everything is reflected: ∫ 2μ dμ = cosine².
    double sum = criticalCosine * criticalCosine;
    // The rest has a square-root onset at the critical angle: substitute μ = c + (1 - c) t².
    int steps = 2000;
    double span = 1 - criticalCosine;
    for (int i = 0; i < steps; i++) {
      double t = (i + 0.5) / steps;
      double cosine = criticalCosine + span * t * t;
      sum += reflectance(cosine, from, to) * 2 * cosine * 2 * span * t / steps;
    }
    return sum;
  }
}
