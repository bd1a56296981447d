package parfield.spectrum;

import java.util.List;

/**
 * What the symbionts of corals (Symbiodiniaceae) absorb, relative to their strongest absorption: a
 * model weight for comparing lights, never a replacement for PPFD.
 *
 * <p>Sum of Gaussian bands of the pigments that harvest light, after Hoepffner and Sathyendranath
 * 1991 (Mar. Ecol. Prog. Ser. 73:11), in whose way the absorption of living algae is taken apart.
 * Chlorophyll a: centres, full widths and heights of that paper as read in a public copy.
 * Peridinin: its two carotenoid bands at 490 and 532 nm, widths and heights of photosynthetic
 * carotenoids as read in a public copy; peridinin in its protein absorbs 470–550 nm. Chlorophyll
 * c₂: centres, widths and heights from memory. Per chlorophyll a there are 0.4 of chlorophyll c₂
 * and 0.8 of peridinin by mass, as in cultures; from memory. Carotenoids that shed light as heat
 * (diadinoxanthin) are left out.
 */
public final class SymbiontAbsorption {
  /** What must be said beside every figure made with this weight. */
  public static final List<String> CAVEATS =
      List.of(
          "a model weight from pigment bands, partly from memory; not measured on any coral",
          "pigments differ between symbionts and change within weeks with the light they get;"
              + " dense tissue flattens the weight",
          "its level is uncertain by half, as another published set of pigments gives two thirds of"
              + " it; its ratios between lights are good to about 7 %",
          "absorbed is not used: under strong light most of what is absorbed is shed",
          "PPFD stays the measure of light; use this to compare lights of equal PPFD only");

  /**
   * One absorption band.
   *
   * @param centreNm where it is highest [nm]
   * @param widthNm full width at half height [nm]
   * @param height relative height, per mass of its pigment
   */
  private record AbsorptionBand(double centreNm, double widthNm, double height) {
    double at(double nm) {
      double z = (nm - centreNm) / widthNm;
      return height * Math.exp(-4 * Math.log(2) * z * z);
    }
  }

  private static final List<AbsorptionBand> CHLOROPHYLL_A =
      List.of(
          new AbsorptionBand(384, 53.8, 0.037),
          new AbsorptionBand(413, 21.3, 0.012),
          new AbsorptionBand(435, 32.1, 0.039),
          new AbsorptionBand(623, 35.0, 0.005),
          new AbsorptionBand(676, 21.6, 0.020),
          new AbsorptionBand(700, 33.5, 0.002));

  private static final List<AbsorptionBand> CHLOROPHYLL_C2 =
      List.of(
          new AbsorptionBand(461, 33, 0.072),
          new AbsorptionBand(583, 75, 0.015),
          new AbsorptionBand(640, 45, 0.017));

  private static final List<AbsorptionBand> PERIDININ =
      List.of(new AbsorptionBand(490, 40.3, 0.0313), new AbsorptionBand(532, 53.7, 0.0194));

  private static final double CHLOROPHYLL_C2_PER_A = 0.4;
  private static final double PERIDININ_PER_A = 0.8;

  private static final SpectralWeight WEIGHT = weight();

  private SymbiontAbsorption() {}

  private static SpectralWeight weight() {
    Wavelengths wavelengths =
        Wavelengths.even(PhotonSpectrum.PAR_FROM_NM, PhotonSpectrum.PAR_TO_NM, 1);
    double[] values = new double[wavelengths.size()];
    double most = 0;
    for (int i = 0; i < values.length; i++) {
      double nm = wavelengths.nm(i);
      values[i] =
          sum(CHLOROPHYLL_A, nm)
              + CHLOROPHYLL_C2_PER_A * sum(CHLOROPHYLL_C2, nm)
              + PERIDININ_PER_A * sum(PERIDININ, nm);
      most = Math.max(most, values[i]);
    }
    for (int i = 0; i < values.length; i++) {
      values[i] /= most;
    }
    return new SpectralWeight(wavelengths, values, SpectralWeight.Between.LINES);
  }

  private static double sum(List<AbsorptionBand> bands, double nm) {
    return bands.stream().mapToDouble(band -> band.at(nm)).sum();
  }

  /** The weight: absorption over the strongest absorption, 400–700 nm, 0 to 1. */
  public static SpectralWeight relative() {
    return WEIGHT;
  }

  /**
   * The photosynthetically usable share of a light's PAR: its photons weighted with {@link
   * #relative}, over its PPFD (Morel 1978, Deep-Sea Res. 25:673; from memory).
   *
   * @return 0 to 1; not defined without photons within 400–700 nm; see {@link #CAVEATS}
   */
  public static Finding<Double> usableShare(PhotonSpectrum spectrum) {
    double par = spectrum.parPhotons();
    if (!(par > 0)) {
      return Finding.notDefined("no photons within 400 to 700 nm");
    }
    Samples samples =
        spectrum.samples().divided(PhotonEnergy.WIDEST_STEP_NM, PhotonEnergy.FINEST_STEP_NM);
    return Finding.of(samples.dot(WEIGHT.on(samples.wavelengths())) / par);
  }
}
