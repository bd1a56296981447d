package parfield.spectrum;

import java.util.Locale;

/**
 * Correlated colour temperature and the distance from the Planckian locus (CIE 15).
 *
 * @param kelvin temperature of the black body whose CIE 1960 u, v is nearest [K]
 * @param duv distance to it in u, v, positive above the locus (greenish), negative below (pinkish)
 */
public record ColourTemperature(double kelvin, double duv) {
  /** Beyond this distance a correlated colour temperature says nothing (CIE 15; from memory). */
  public static final double FARTHEST_DUV = 0.05;

  /**
   * The correlated colour temperature of a colour; not defined farther than 0.05 from the locus,
   * nor where the nearest point of the locus is one of its ends.
   */
  public static Finding<ColourTemperature> of(Chromaticity colour) {
    PlanckianLocus.Nearest nearest = PlanckianLocus.nearest(colour.u(), colour.v());
    if (nearest.hotEnd()) {
      return Finding.notDefined(
          String.format(
              Locale.ROOT,
              "the light is bluer than any black body: the nearest point of the Planckian locus is"
                  + " its hot end, %.3f away in u, v",
              Math.abs(nearest.duv())));
    }
    if (nearest.coolEnd()) {
      return Finding.notDefined(
          String.format(
              Locale.ROOT,
              "the light is redder than a black body of %.0f K",
              PlanckianLocus.COOLEST_KELVIN));
    }
    if (!(Math.abs(nearest.duv()) <= FARTHEST_DUV)) {
      return Finding.notDefined(
          String.format(
              Locale.ROOT,
              "the light is %.3f from the Planckian locus in u, v; CIE 15 allows %.2f",
              Math.abs(nearest.duv()),
              FARTHEST_DUV));
    }
    return Finding.of(new ColourTemperature(nearest.kelvin(), nearest.duv()));
  }

  /** The correlated colour temperature of a light. */
  public static Finding<ColourTemperature> of(RadiantSpectrum spectrum) {
    return Chromaticity.of(spectrum).flatMap(ColourTemperature::of);
  }
}
