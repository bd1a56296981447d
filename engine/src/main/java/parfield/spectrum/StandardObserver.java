package parfield.spectrum;

import java.util.List;

/**
 * The CIE 1931 standard observer (2°), ready for spectra on given wavelengths.
 *
 * <p>Sums run over the spectrum's own samples within 380–780 nm, each weighted with the
 * colour-matching function there and the width it stands for, as CIE 15 sums tables; a spectrum
 * with steps wider than 5 nm is given more samples on its lines first. The colour-matching
 * functions are tabulated every 5 nm; between, by Sprague's interpolation. Immutable.
 */
public final class StandardObserver {
  /** Maximum luminous efficacy of photopic vision K_m [lm W⁻¹]: 683/V(555.016 nm), CIE 018:2019. */
  public static final double LUMENS_PER_WATT = 683.002;

  /** Where sums of colour and efficacy begin [nm]. */
  public static final double FROM_NM = 380;

  /** Where sums of colour and efficacy end [nm]. */
  public static final double TO_NM = 780;

  private static final List<SpectralWeight> MATCHING =
      PublishedTable.read("cie1931_2deg_5nm.csv", SpectralWeight.Between.SPRAGUE).columns();

  private final double[] x;
  private final double[] y;
  private final double[] z;

  private StandardObserver(Wavelengths wavelengths) {
    this.x = MATCHING.get(0).on(wavelengths, FROM_NM, TO_NM);
    this.y = MATCHING.get(1).on(wavelengths, FROM_NM, TO_NM);
    this.z = MATCHING.get(2).on(wavelengths, FROM_NM, TO_NM);
  }

  /** The observer for spectra whose samples stand at {@code wavelengths}. */
  static StandardObserver on(Wavelengths wavelengths) {
    return new StandardObserver(wavelengths);
  }

  /** The colour-matching functions x̄, ȳ, z̄, 360–830 nm; ȳ is V(λ). */
  public static List<SpectralWeight> matchingFunctions() {
    return MATCHING;
  }

  /** V(λ), the luminous efficiency of photopic vision, 360–830 nm. */
  public static SpectralWeight luminousEfficiency() {
    return MATCHING.get(1);
  }

  /** The tristimulus values of a light. */
  public static Tristimulus tristimulusOf(RadiantSpectrum spectrum) {
    Samples samples = spectrum.fine();
    return on(samples.wavelengths()).tristimulus(samples);
  }

  /** The tristimulus values of samples at this observer's wavelengths. */
  Tristimulus tristimulus(Samples samples) {
    double sumX = 0;
    double sumY = 0;
    double sumZ = 0;
    for (int i = 0; i < x.length; i++) {
      double power = samples.value(i);
      sumX += x[i] * power;
      sumY += y[i] * power;
      sumZ += z[i] * power;
    }
    return new Tristimulus(sumX, sumY, sumZ);
  }
}
