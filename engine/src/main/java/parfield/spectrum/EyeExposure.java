package parfield.spectrum;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What a light does to eyes at a stated distance, weighted and limited as in IEC 62471:2006 and
 * Directive 2006/25/EC: an estimate, no verdict.
 *
 * <p>The source is taken as evenly bright and looked straight into, the pupil as in the standards.
 * Radiance is averaged over the whole source, so that bright points on it count too little; long
 * gazes wander, which the standards take into account by larger fields of view and this does not.
 *
 * @param source what is looked at
 * @param blueIrradiance E_B, irradiance weighted with B(λ), 300–700 nm [W m⁻²]
 * @param blueRadiance L_B, radiance weighted with B(λ), 300–700 nm [W m⁻² sr⁻¹]
 * @param actinicIrradiance E_S, irradiance weighted with S(λ), 200–400 nm [W m⁻²]
 * @param nearUltraviolet E_UVA, irradiance of 315–400 nm [W m⁻²]
 * @param fromNm where the spectrum begins [nm]; ultraviolet below is not counted
 */
public record EyeExposure(
    ViewedSource source,
    double blueIrradiance,
    double blueRadiance,
    double actinicIrradiance,
    double nearUltraviolet,
    double fromNm) {
  private static final SpectralWeight BLUE =
      PublishedTable.read("blue_light_hazard_B.csv", SpectralWeight.Between.LINES).columns().get(0);

  private static final SpectralWeight ACTINIC =
      PublishedTable.read("actinic_uv_S.csv", SpectralWeight.Between.LOG_LINES).columns().get(0);

  /** Where near ultraviolet begins [nm]. */
  private static final double NEAR_FROM_NM = 315;

  /** Where ultraviolet ends [nm]. */
  private static final double ULTRAVIOLET_TO_NM = 400;

  private static final double WORKING_DAY = 8 * 3600;

  /**
   * The exposure by a spectral irradiance at the eye.
   *
   * @param atEye spectral irradiance at the eye, facing the source [W m⁻² nm⁻¹]
   * @param source size and distance of what shines
   * @throws IllegalArgumentException if the spectrum's scale is not {@link Scale#IRRADIANCE}
   */
  public static EyeExposure of(RadiantSpectrum atEye, ViewedSource source) {
    if (atEye.scale() != Scale.IRRADIANCE) {
      throw new IllegalArgumentException(
          "exposure of eyes needs a spectrum in W m⁻² nm⁻¹ at the eye; this one's scale is "
              + (atEye.scale() == Scale.FLUX ? "that of a lamp's flux" : "unknown")
              + "; scale it with a PPFD that was measured there");
    }
    Samples samples = atEye.fine();
    double blue = samples.dot(BLUE.on(samples.wavelengths()));
    return new EyeExposure(
        source,
        blue,
        blue / source.projectedSolidAngle(),
        samples.dot(ACTINIC.on(samples.wavelengths())),
        atEye.power(NEAR_FROM_NM, ULTRAVIOLET_TO_NM),
        atEye.wavelengths().first());
  }

  /** B(λ), the weight of the retinal blue-light hazard, 300–700 nm. */
  public static SpectralWeight blueLightWeight() {
    return BLUE;
  }

  /** S(λ), the weight of the actinic ultraviolet hazard, 200–400 nm. */
  public static SpectralWeight actinicWeight() {
    return ACTINIC;
  }

  /**
   * Blue-light-weighted power over luminous flux, K_B,v [W lm⁻¹]: how much more a light's blue
   * counts than its brightness tells.
   *
   * @return not defined for light that the eye does not see
   */
  public static Finding<Double> blueLightPerLumen(RadiantSpectrum spectrum) {
    Samples samples = spectrum.fine();
    double lumens =
        StandardObserver.LUMENS_PER_WATT
            * StandardObserver.on(samples.wavelengths()).tristimulus(samples).y();
    if (!(lumens > 0)) {
      return Finding.notDefined("no light that the eye sees, within 380 to 780 nm");
    }
    return Finding.of(samples.dot(BLUE.on(samples.wavelengths())) / lumens);
  }

  /** The limits that apply, each with the longest exposure within it. */
  public List<Limit> limits() {
    List<Limit> limits = new ArrayList<>();
    if (source.small()) {
      // Directive 2006/25/EC, annex I, e and f: 100 J m⁻² up to 10 000 s, 0.01 W m⁻² beyond.
      limits.add(
          new Limit(
              "retina, blue light, small source",
              "Directive 2006/25/EC",
              longest(blueIrradiance, 100, 0.01)));
    } else {
      limits.add(
          new Limit(
              "retina, blue light",
              "IEC 62471, Directive 2006/25/EC",
              longest(blueRadiance, 1e6, 100)));
    }
    limits.add(
        new Limit(
            "eye and skin, actinic ultraviolet",
            "IEC 62471, Directive 2006/25/EC",
            longest(actinicIrradiance, 30, 30 / WORKING_DAY)));
    limits.add(new Limit("eye, near ultraviolet", "IEC 62471", longest(nearUltraviolet, 1e4, 10)));
    limits.add(
        new Limit(
            "eye, near ultraviolet, a day",
            "Directive 2006/25/EC",
            longest(nearUltraviolet, 1e4, 1e4 / WORKING_DAY)));
    return List.copyOf(limits);
  }

  /** Dose over rate, none where the rate may go on for as long as the limit counts. */
  private static OptionalDouble longest(double rate, double dose, double lasting) {
    return rate > lasting ? OptionalDouble.of(dose / rate) : OptionalDouble.empty();
  }

  /**
   * A limit of exposure.
   *
   * @param about what is at stake
   * @param source the standard
   * @param longestSeconds exposure in a day of eight hours after which the limit is reached [s];
   *     empty where it is not reached by this estimate, which is no promise
   */
  public record Limit(String about, String source, OptionalDouble longestSeconds) {}
}
