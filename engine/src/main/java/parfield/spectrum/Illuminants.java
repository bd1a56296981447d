package parfield.spectrum;

import java.util.function.DoubleUnaryOperator;

/** CIE standard illuminants: the lights that instruments are calibrated under, 360–830 nm. */
public final class Illuminants {
  /** Shares of the components of daylight in the published D65 (from memory; the table agrees). */
  private static final double[] D65_SHARES = {1, -0.295, -0.689};

  private static final Wavelengths WAVELENGTHS = Wavelengths.even(360, 830, 5);
  private static final PhotonSpectrum A = photons(Illuminants::incandescent);
  private static final PhotonSpectrum D65 = photons(Illuminants::daylight);

  private Illuminants() {}

  /** Illuminant A, an incandescent lamp of 2856 K; always the same object. */
  public static PhotonSpectrum a() {
    return A;
  }

  /** Illuminant D65, average daylight; always the same object. */
  public static PhotonSpectrum d65() {
    return D65;
  }

  /** CIE 15: S_A = 100 (560/λ)⁵ [exp(1.435e7/(2848·560)) − 1] / [exp(1.435e7/(2848 λ)) − 1]. */
  private static double incandescent(double nm) {
    return 100
        * Math.pow(560 / nm, 5)
        * Math.expm1(1.435e7 / (2848 * 560))
        / Math.expm1(1.435e7 / (2848 * nm));
  }

  private static double daylight(double nm) {
    double power = 0;
    for (int k = 0; k < D65_SHARES.length; k++) {
      power += D65_SHARES[k] * Daylight.COMPONENTS.get(k).at(nm);
    }
    return power;
  }

  private static PhotonSpectrum photons(DoubleUnaryOperator power) {
    double[] values = new double[WAVELENGTHS.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = power.applyAsDouble(WAVELENGTHS.nm(i));
    }
    return new RadiantSpectrum(WAVELENGTHS, values, Scale.RELATIVE).toPhotons();
  }
}
