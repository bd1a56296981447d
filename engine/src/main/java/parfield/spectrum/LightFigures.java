package parfield.spectrum;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The figures of a light: what {@link LightAnalysis} finds in its spectrum.
 *
 * <p>Sums are in the unit of {@code scale}: {@link Scale#photonUnit} for photons, {@link
 * #photometricUnit} for {@code luminous}.
 *
 * @param scale what sums are measured in
 * @param parPhotons photons of 400–700 nm: PPFD or PPF where the scale is known
 * @param ultravioletPhotons photons of 280–400 nm
 * @param farRedPhotons photons of 700–800 nm
 * @param ultravioletShare the same over all photons of 280–800 nm
 * @param farRedShare the same over all photons of 280–800 nm
 * @param bands the division into wavebands
 * @param bandShares shares of photons by waveband, of all in {@code bands}
 * @param peaks of power per nm, the highest first
 * @param centroidNm mean wavelength, weighted with power [nm]
 * @param luminous luminous flux or illuminance
 * @param luxPerPpfd lux per µmol m⁻² s⁻¹ of this light, the same as lm per µmol s⁻¹
 * @param luminousEfficacy luminous efficacy of radiation, over 380–780 nm [lm W⁻¹]
 * @param micromolesPerJoule photons over power, both of 400–700 nm [µmol J⁻¹]
 * @param chromaticity colour
 * @param colourTemperature correlated colour temperature and Duv
 * @param colourRendering R_a and R₁ to R₁₄
 * @param usableShare photosynthetically usable share, see {@link SymbiontAbsorption}
 * @param blueLightPerLumen K_B,v [W lm⁻¹], see {@link EyeExposure#blueLightPerLumen}
 */
public record LightFigures(
    Scale scale,
    double parPhotons,
    double ultravioletPhotons,
    double farRedPhotons,
    Finding<Double> ultravioletShare,
    Finding<Double> farRedShare,
    WaveBands bands,
    Finding<List<Double>> bandShares,
    List<Peak> peaks,
    double centroidNm,
    double luminous,
    Finding<Double> luxPerPpfd,
    Finding<Double> luminousEfficacy,
    Finding<Double> micromolesPerJoule,
    Finding<Chromaticity> chromaticity,
    Finding<ColourTemperature> colourTemperature,
    Finding<ColourRendering> colourRendering,
    Finding<Double> usableShare,
    Finding<Double> blueLightPerLumen) {
  public LightFigures {
    Objects.requireNonNull(scale, "scale");
    peaks = List.copyOf(peaks);
  }

  /** The unit of {@code luminous}; empty where the scale is unknown. */
  public Optional<String> photometricUnit() {
    return switch (scale) {
      case RELATIVE -> Optional.empty();
      case FLUX -> Optional.of("lm");
      case IRRADIANCE -> Optional.of("lx");
    };
  }
}
