package parfield.optics;

import java.util.Locale;
import java.util.Objects;

/**
 * What fine particles in the water do to light: b(λ) = b₅₅₀ (550 / λ)^η, spread by a phase
 * function.
 *
 * @param coefficient b at 550 nm [m⁻¹], 0 or more; 0.004 in the clearest sea water, 0.05 to 0.2 in
 *     a hazy tank (common practice, no source)
 * @param exponent η of its fall with wavelength, −1 to 5; 0 for large particles, 4.32 for molecules
 *     (Morel 1974)
 * @param phase how it spreads
 */
public record Scattering(double coefficient, double exponent, PhaseFunction phase) {
  private static final double REFERENCE_NM = 550;

  private static final Scattering NONE = new Scattering(0, 0, PhaseFunction.isotropic());

  public Scattering {
    Objects.requireNonNull(phase, "phase");
    if (!(coefficient >= 0) || Double.isInfinite(coefficient)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT, "a scattering coefficient must be 0 or more; got %s 1/m", coefficient));
    }
    if (!(exponent >= -1 && exponent <= 5)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "the exponent of scattering with wavelength runs from -1 to 5; got %s",
              exponent));
    }
  }

  /** Water that scatters nothing. */
  public static Scattering none() {
    return NONE;
  }

  /** Fine particles as the sea carries them, alike at all wavelengths [m⁻¹]. */
  public static Scattering particles(double coefficient) {
    return new Scattering(coefficient, 0, TabulatedPhase.averageParticle());
  }

  /** Scattering coefficient b(λ) [m⁻¹]. */
  public double at(double wavelengthNm) {
    return coefficient * Math.pow(REFERENCE_NM / wavelengthNm, exponent);
  }
}
