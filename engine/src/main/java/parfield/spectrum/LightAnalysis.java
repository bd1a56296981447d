package parfield.spectrum;

import java.util.List;
import java.util.Locale;

/**
 * All figures of spectra of one instrument: the weights of its wavelengths are computed once.
 *
 * <p>Immutable.
 */
public final class LightAnalysis {
  /** Where ultraviolet begins that is summed here [nm]; shorter waves no lamp over a tank gives. */
  public static final double ULTRAVIOLET_FROM_NM = 280;

  /** Where far red ends [nm] (ANSI/ASABE S640; from memory). */
  public static final double FAR_RED_TO_NM = 800;

  /** The sums that stand behind those of the test colours, in their order. */
  private enum Sum {
    PAR_PHOTONS,
    ULTRAVIOLET,
    FAR_RED,
    ALL_PHOTONS,
    USABLE,
    BANDS,
    VISIBLE_POWER,
    PAR_POWER,
    BLUE_LIGHT,
    POWER,
    MOMENT
  }

  private static final int TEST_COLOURS = TestColours.rows(Wavelengths.of(400, 700)).size();
  private static final int BANDS = TEST_COLOURS + Sum.values().length;

  private final Wavelengths wavelengths;
  private final WaveBands bands;
  private final WeightMatrix weights;

  private LightAnalysis(Wavelengths wavelengths, WaveBands bands) {
    this.wavelengths = wavelengths;
    this.bands = bands;
    Wavelengths grid =
        wavelengths.divided(PhotonEnergy.WIDEST_STEP_NM, PhotonEnergy.FINEST_STEP_NM);
    List<double[]> rows = TestColours.rows(grid);
    for (Sum sum : Sum.values()) {
      rows.add(row(sum, grid, bands));
    }
    for (WaveBand band : bands.bands()) {
      rows.add(photons(grid, grid.integral(band.fromNm(), band.toNm())));
    }
    this.weights = new WeightMatrix(rows);
  }

  private static double[] row(Sum sum, Wavelengths grid, WaveBands bands) {
    double from = PhotonSpectrum.PAR_FROM_NM;
    double to = PhotonSpectrum.PAR_TO_NM;
    double[] power = grid.integral(grid.first(), grid.last());
    return switch (sum) {
      case PAR_PHOTONS -> photons(grid, grid.integral(from, to));
      case ULTRAVIOLET -> photons(grid, grid.integral(ULTRAVIOLET_FROM_NM, from));
      case FAR_RED -> photons(grid, grid.integral(to, FAR_RED_TO_NM));
      case ALL_PHOTONS -> photons(grid, grid.integral(ULTRAVIOLET_FROM_NM, FAR_RED_TO_NM));
      case USABLE -> photons(grid, SymbiontAbsorption.relative().on(grid));
      case BANDS -> photons(grid, grid.integral(bands.fromNm(), bands.toNm()));
      case VISIBLE_POWER -> grid.integral(StandardObserver.FROM_NM, StandardObserver.TO_NM);
      case PAR_POWER -> grid.integral(from, to);
      case BLUE_LIGHT -> EyeExposure.blueLightWeight().on(grid);
      case POWER -> power;
      case MOMENT -> times(power, grid, 1);
    };
  }

  private static double[] photons(Wavelengths grid, double[] weights) {
    return times(weights, grid, PhotonEnergy.micromolesPerJoule(1));
  }

  /** Weights times wavelength times a factor. */
  private static double[] times(double[] weights, Wavelengths grid, double factor) {
    double[] product = new double[weights.length];
    for (int i = 0; i < product.length; i++) {
      product[i] = weights[i] * grid.nm(i) * factor;
    }
    return product;
  }

  /**
   * The analysis of spectra whose samples stand at {@code wavelengths}.
   *
   * @param wavelengths those of the spectra
   * @param bands the division of which shares are told
   */
  public static LightAnalysis on(Wavelengths wavelengths, WaveBands bands) {
    return new LightAnalysis(wavelengths, bands);
  }

  /** The figures of one light, with the common wavebands. */
  public static LightFigures of(RadiantSpectrum spectrum) {
    return on(spectrum.wavelengths(), WaveBands.COMMON).figures(spectrum);
  }

  /** The figures of one light, with the common wavebands. */
  public static LightFigures of(PhotonSpectrum spectrum) {
    return of(spectrum.toRadiant());
  }

  /**
   * The figures of a light.
   *
   * @param spectrum with samples at this analysis's wavelengths
   * @throws IllegalArgumentException if its wavelengths are others
   */
  public LightFigures figures(RadiantSpectrum spectrum) {
    if (!spectrum.wavelengths().equals(wavelengths)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "this analysis is for %s; got a spectrum of %s",
              wavelengths,
              spectrum.wavelengths()));
    }
    double[] sums = weights.sums(spectrum.fine());
    double par = sum(sums, Sum.PAR_PHOTONS);
    double all = sum(sums, Sum.ALL_PHOTONS);
    Tristimulus white = new Tristimulus(sums[0], sums[1], sums[2]);
    double lumens = StandardObserver.LUMENS_PER_WATT * white.y();
    Finding<Chromaticity> chromaticity = white.chromaticity();
    Finding<ColourTemperature> temperature = chromaticity.flatMap(ColourTemperature::of);
    return new LightFigures(
        spectrum.scale(),
        par,
        sum(sums, Sum.ULTRAVIOLET),
        sum(sums, Sum.FAR_RED),
        ratio(sum(sums, Sum.ULTRAVIOLET), all, "no photons within 280 to 800 nm"),
        ratio(sum(sums, Sum.FAR_RED), all, "no photons within 280 to 800 nm"),
        bands,
        shares(sums),
        Peak.of(spectrum),
        sum(sums, Sum.MOMENT) / sum(sums, Sum.POWER),
        lumens,
        ratio(lumens, par, "no photons within 400 to 700 nm"),
        ratio(lumens, sum(sums, Sum.VISIBLE_POWER), "no power within 380 to 780 nm"),
        ratio(par, sum(sums, Sum.PAR_POWER), "no power within 400 to 700 nm"),
        chromaticity,
        temperature,
        TestColours.rendering(sums, temperature),
        ratio(sum(sums, Sum.USABLE), par, "no photons within 400 to 700 nm"),
        ratio(
            sum(sums, Sum.BLUE_LIGHT), lumens, "no light that the eye sees, within 380 to 780 nm"));
  }

  private static double sum(double[] sums, Sum sum) {
    return sums[TEST_COLOURS + sum.ordinal()];
  }

  private Finding<List<Double>> shares(double[] sums) {
    double whole = sum(sums, Sum.BANDS);
    if (!(whole > 0)) {
      return bands.noPhotons();
    }
    Double[] shares = new Double[bands.bands().size()];
    for (int i = 0; i < shares.length; i++) {
      shares[i] = sums[BANDS + i] / whole;
    }
    return Finding.of(List.of(shares));
  }

  private static Finding<Double> ratio(double part, double whole, String none) {
    return whole > 0 ? Finding.of(part / whole) : Finding.notDefined(none);
  }
}
