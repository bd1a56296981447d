package parfield.optics;

import java.util.Locale;
import java.util.Objects;

/**
 * Clear sea water: a refractive index and absorption by pure water plus yellow substance.
 *
 * <p>a(λ) = a_w(λ) + a₄₄₀ exp(−S (λ − 440)) with the pure-water table of {@link PureWater} and the
 * exponential law of yellow substance (Bricaud, Morel and Prieur 1981, Limnol. Oceanogr. 26:43).
 * Scattering by particles is apart: 0 in clear water.
 *
 * @param refractiveIndex above 1; sea water 1.34
 * @param yellowing absorption of yellow substance at 440 nm [m⁻¹], 0 or more
 * @param spectralSlope S of yellow substance [nm⁻¹], 0 or more; 0.014 to 0.018 is common
 * @param scattering by fine particles
 */
public record Water(
    double refractiveIndex, double yellowing, double spectralSlope, Scattering scattering) {
  /**
   * Refractive index of sea water over 400–700 nm, within 0.7 % (Quan and Fry 1995: 1.336–1.349).
   */
  public static final double SEA_WATER_INDEX = 1.34;

  /** Spectral slope of yellow substance where none is stated [nm⁻¹]. */
  public static final double DEFAULT_SPECTRAL_SLOPE = 0.015;

  public Water {
    Objects.requireNonNull(scattering, "scattering");
    if (!(refractiveIndex > 1 && refractiveIndex < 2)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "water's refractive index lies between 1 and 2; got %s",
              refractiveIndex));
    }
    if (!(yellowing >= 0) || !(spectralSlope >= 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "yellowing and its spectral slope must be 0 or more; got %s 1/m and %s 1/nm",
              yellowing,
              spectralSlope));
    }
  }

  /** Water that scatters nothing. */
  public Water(double refractiveIndex, double yellowing, double spectralSlope) {
    this(refractiveIndex, yellowing, spectralSlope, Scattering.none());
  }

  /** Sea water of index 1.34 with some yellow substance [m⁻¹ at 440 nm]. */
  public static Water seaWater(double yellowing) {
    return new Water(SEA_WATER_INDEX, yellowing, DEFAULT_SPECTRAL_SLOPE);
  }

  /** This water with another yellowing [m⁻¹ at 440 nm]. */
  public Water withYellowing(double newYellowing) {
    return new Water(refractiveIndex, newYellowing, spectralSlope, scattering);
  }

  /** This water with other particles in it. */
  public Water withScattering(Scattering newScattering) {
    return new Water(refractiveIndex, yellowing, spectralSlope, newScattering);
  }

  /**
   * Absorption coefficient a(λ) [m⁻¹].
   *
   * @param wavelengthNm 380 to 750 nm; outside that the table's end value is used
   */
  public double absorption(double wavelengthNm) {
    return PureWater.absorption(wavelengthNm)
        + yellowing * Math.exp(-spectralSlope * (wavelengthNm - 440));
  }
}
