package parfield.spectrum;

import java.util.List;
import java.util.Locale;

/**
 * How a light renders colours beside daylight or a black body of its colour temperature (CIE 13.3).
 *
 * <p>CIE 13.3 says that the indices become less accurate where light and reference differ by more
 * than 0.0054 in u, v. Two of CIE's own lamps do and have printed indices (FL5 0.0075, FL6 0.0060),
 * so up to twice that distance the indices are given, {@link #lessAccurate}; beyond it, ours, they
 * are not defined.
 *
 * @param ra the general index R_a, mean of R₁ to R₈, at most 100
 * @param special the special indices R₁ to R₁₄, unrounded; they may be negative
 * @param referenceDistance distance of light and reference in CIE 1960 u, v
 */
public record ColourRendering(double ra, List<Double> special, double referenceDistance) {
  /** Distance from the reference up to which CIE 13.3 takes the indices as accurate. */
  public static final double ACCURATE_DISTANCE = 5.4e-3;

  /** Distance from the reference beyond which no indices are given; ours. */
  public static final double FARTHEST_DISTANCE = 2 * ACCURATE_DISTANCE;

  public ColourRendering {
    special = List.copyOf(special);
    if (special.size() != 14) {
      throw new IllegalArgumentException(
          String.format(Locale.ROOT, "CIE 13.3 has 14 special indices; got %d", special.size()));
    }
  }

  /** The colour rendering of a light; not defined off the Planckian locus. */
  public static Finding<ColourRendering> of(RadiantSpectrum spectrum) {
    Samples samples = spectrum.fine();
    double[] sums = new WeightMatrix(TestColours.rows(samples.wavelengths())).sums(samples);
    return new Tristimulus(sums[0], sums[1], sums[2])
        .chromaticity()
        .flatMap(colour -> TestColours.rendering(sums, ColourTemperature.of(colour)));
  }

  /** Whether the light is so far from its reference that CIE 13.3 takes the indices as inexact. */
  public boolean lessAccurate() {
    return referenceDistance > ACCURATE_DISTANCE;
  }

  /**
   * A special index.
   *
   * @param sample 1 to 14
   */
  public double r(int sample) {
    return special.get(sample - 1);
  }
}
