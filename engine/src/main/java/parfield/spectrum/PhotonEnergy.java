package parfield.spectrum;

/** What a photon carries. Exact SI constants of 2019 (BIPM, The International System of Units). */
public final class PhotonEnergy {
  /** Planck constant h [J s], exact. */
  public static final double PLANCK = 6.62607015e-34;

  /** Speed of light in vacuum c [m s⁻¹], exact. */
  public static final double LIGHT_SPEED = 299_792_458;

  /** Avogadro constant N_A [mol⁻¹], exact. */
  public static final double AVOGADRO = 6.02214076e23;

  /** Energy of a micromole of photons times wavelength, hcN_A [nm J µmol⁻¹]: 119.6266. */
  public static final double NM_JOULES_PER_MICROMOLE = PLANCK * LIGHT_SPEED * AVOGADRO * 1e3;

  /** Steps wider than this [nm] are divided before a conversion. */
  static final double WIDEST_STEP_NM = 5;

  /** What a step that is too wide is divided into [nm], at most. */
  static final double FINEST_STEP_NM = 1;

  private PhotonEnergy() {}

  /**
   * Photons in a joule of light of one wavelength, λ/119.6266 [µmol J⁻¹].
   *
   * @param wavelengthNm wavelength [nm], above 0
   */
  public static double micromolesPerJoule(double wavelengthNm) {
    return wavelengthNm / NM_JOULES_PER_MICROMOLE;
  }

  /** Samples times the micromoles per joule of their wavelength, to the power of 1 or −1. */
  static Samples times(Samples samples, int exponent) {
    Samples fine = samples.divided(WIDEST_STEP_NM, FINEST_STEP_NM);
    double[] converted = fine.toArray();
    for (int i = 0; i < converted.length; i++) {
      double factor = micromolesPerJoule(fine.wavelengths().nm(i));
      converted[i] = exponent > 0 ? converted[i] * factor : converted[i] / factor;
    }
    return new Samples(fine.wavelengths(), converted);
  }
}
