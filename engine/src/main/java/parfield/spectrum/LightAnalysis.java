package parfield.spectrum;

import java.util.ArrayList;
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

  private final Wavelengths wavelengths;
  private final WaveBands bands;
  private final StandardObserver observer;
  private final TestColours testColours;
  private final double[] visiblePower;
  private final double[] parPower;
  private final double[] parPhotons;
  private final double[] ultraviolet;
  private final double[] farRed;
  private final double[] allPhotons;
  private final double[] bandsPhotons;
  private final List<double[]> bandPhotons = new ArrayList<>();
  private final double[] usable;
  private final double[] blueLight;
  private final double[] moment;
  private final double[] power;

  private LightAnalysis(Wavelengths wavelengths, WaveBands bands) {
    Wavelengths grid =
        wavelengths.divided(PhotonEnergy.WIDEST_STEP_NM, PhotonEnergy.FINEST_STEP_NM);
    double from = PhotonSpectrum.PAR_FROM_NM;
    double to = PhotonSpectrum.PAR_TO_NM;
    this.wavelengths = wavelengths;
    this.bands = bands;
    this.observer = StandardObserver.on(grid);
    this.testColours = TestColours.on(grid);
    this.visiblePower = grid.integral(StandardObserver.FROM_NM, StandardObserver.TO_NM);
    this.parPower = grid.integral(from, to);
    this.parPhotons = photons(grid, grid.integral(from, to));
    this.ultraviolet = photons(grid, grid.integral(ULTRAVIOLET_FROM_NM, from));
    this.farRed = photons(grid, grid.integral(to, FAR_RED_TO_NM));
    this.allPhotons = photons(grid, grid.integral(ULTRAVIOLET_FROM_NM, FAR_RED_TO_NM));
    this.bandsPhotons = photons(grid, grid.integral(bands.fromNm(), bands.toNm()));
    for (WaveBand band : bands.bands()) {
      bandPhotons.add(photons(grid, grid.integral(band.fromNm(), band.toNm())));
    }
    this.usable = photons(grid, SymbiontAbsorption.relative().on(grid));
    this.blueLight = EyeExposure.blueLightWeight().on(grid);
    this.power = grid.integral(grid.first(), grid.last());
    this.moment = power.clone();
    for (int i = 0; i < moment.length; i++) {
      moment[i] *= grid.nm(i);
    }
  }

  private static double[] photons(Wavelengths grid, double[] weights) {
    for (int i = 0; i < weights.length; i++) {
      weights[i] *= PhotonEnergy.micromolesPerJoule(grid.nm(i));
    }
    return weights;
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
    Samples samples = spectrum.fine();
    double par = samples.dot(parPhotons);
    double all = samples.dot(allPhotons);
    Tristimulus white = observer.tristimulus(samples);
    double lumens = StandardObserver.LUMENS_PER_WATT * white.y();
    Finding<Chromaticity> chromaticity = white.chromaticity();
    Finding<ColourTemperature> temperature = chromaticity.flatMap(ColourTemperature::of);
    double ultravioletSum = samples.dot(ultraviolet);
    double farRedSum = samples.dot(farRed);
    return new LightFigures(
        spectrum.scale(),
        par,
        ultravioletSum,
        farRedSum,
        ratio(ultravioletSum, all, "no photons within 280 to 800 nm"),
        ratio(farRedSum, all, "no photons within 280 to 800 nm"),
        bands,
        shares(samples),
        Peak.of(spectrum),
        samples.dot(moment) / samples.dot(power),
        lumens,
        ratio(lumens, par, "no photons within 400 to 700 nm"),
        ratio(lumens, samples.dot(visiblePower), "no power within 380 to 780 nm"),
        ratio(par, samples.dot(parPower), "no power within 400 to 700 nm"),
        chromaticity,
        temperature,
        chromaticity.flatMap(colour -> testColours.rendering(samples, white, colour, temperature)),
        ratio(samples.dot(usable), par, "no photons within 400 to 700 nm"),
        ratio(samples.dot(blueLight), lumens, "no light that the eye sees, within 380 to 780 nm"));
  }

  private Finding<List<Double>> shares(Samples samples) {
    double whole = samples.dot(bandsPhotons);
    if (!(whole > 0)) {
      return bands.noPhotons();
    }
    return Finding.of(bandPhotons.stream().map(band -> samples.dot(band) / whole).toList());
  }

  private static Finding<Double> ratio(double part, double whole, String none) {
    return whole > 0 ? Finding.of(part / whole) : Finding.notDefined(none);
  }
}
