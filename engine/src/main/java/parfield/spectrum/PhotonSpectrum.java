package parfield.spectrum;

import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * A photon spectrum: photons per nanometre, joined by straight lines between its samples, dark
 * outside them.
 *
 * <p>Immutable. What a sum of photons is measured in stands in its {@link Scale}; where that is
 * unknown only shares are meaningful. Negative noise is kept, as it averages out in sums. Radiant
 * power per nanometre is another type, {@link RadiantSpectrum}.
 */
public final class PhotonSpectrum {
  /** Lower end of the waveband that PPFD counts [nm]; the definition of PAR (McCree 1972). */
  public static final double PAR_FROM_NM = 400;

  /** Upper end of the waveband that PPFD counts [nm]; the definition of PAR (McCree 1972). */
  public static final double PAR_TO_NM = 700;

  private final Samples samples;
  private final Scale scale;

  /**
   * Makes a relative spectrum from samples.
   *
   * @param wavelengthsNm wavelengths [nm], strictly ascending, at least two, copied
   * @param photonFlux relative photon flux per nm at each wavelength, finite, copied; small
   *     negative noise is kept
   * @throws IllegalArgumentException if the arrays differ in length, are too short, not ascending,
   *     not finite, or hold no photons
   */
  public PhotonSpectrum(double[] wavelengthsNm, double[] photonFlux) {
    this(Samples.checked(wavelengthsNm, photonFlux, "photon flux", "photons"), Scale.RELATIVE);
  }

  /**
   * Makes a spectrum from samples.
   *
   * @param wavelengths the wavelengths
   * @param photonFlux photons per nm at each wavelength, in the unit of {@code scale} per nm;
   *     finite, copied; small negative noise is kept
   * @param scale what a sum of photons is measured in
   * @throws IllegalArgumentException if the number of values differs, one is not finite, or they
   *     hold no photons
   */
  public PhotonSpectrum(Wavelengths wavelengths, double[] photonFlux, Scale scale) {
    this(Samples.checked(wavelengths, photonFlux, "photon flux", "photons"), scale);
  }

  PhotonSpectrum(Samples samples, Scale scale) {
    this.samples = samples;
    this.scale = Objects.requireNonNull(scale, "scale");
  }

  private static final PhotonSpectrum FLAT =
      new PhotonSpectrum(new double[] {PAR_FROM_NM, PAR_TO_NM}, new double[] {1, 1});

  /** The same photon flux at every wavelength of 400–700 nm; always the same object. */
  public static PhotonSpectrum flat() {
    return FLAT;
  }

  /** What a sum of photons is measured in. */
  public Scale scale() {
    return scale;
  }

  /** The wavelengths of the samples. */
  public Wavelengths wavelengths() {
    return samples.wavelengths();
  }

  /** Returns the number of samples. */
  public int size() {
    return samples.wavelengths().size();
  }

  /** Returns the wavelength of sample {@code i} [nm]. */
  public double wavelengthNm(int i) {
    return samples.wavelengths().nm(i);
  }

  /** Returns the photon flux per nm at sample {@code i}. */
  public double photonFlux(int i) {
    return samples.value(i);
  }

  /** Returns the photon flux per nm of all samples as a new array. */
  public double[] photonFluxes() {
    return samples.toArray();
  }

  /**
   * Photon flux per nm, linear between samples and zero outside them.
   *
   * @param wavelengthNm wavelength [nm]
   */
  public double at(double wavelengthNm) {
    return samples.at(wavelengthNm);
  }

  /**
   * Photons between two wavelengths: the exact integral of the piecewise linear spectrum, in the
   * unit of {@link #scale()}.
   *
   * @param fromNm lower end [nm]
   * @param toNm upper end [nm], not below {@code fromNm}
   */
  public double photons(double fromNm, double toNm) {
    return samples.integral(fromNm, toNm);
  }

  /** Photons over all samples. */
  public double photons() {
    return photons(wavelengths().first(), wavelengths().last());
  }

  /** Photons of PAR, 400–700 nm; zero or less where there are none but noise. */
  public double parPhotons() {
    return photons(PAR_FROM_NM, PAR_TO_NM);
  }

  /** The PPFD [µmol m⁻² s⁻¹]; empty unless this is a spectrum of {@link Scale#IRRADIANCE}. */
  public OptionalDouble ppfd() {
    return scale == Scale.IRRADIANCE ? OptionalDouble.of(parPhotons()) : OptionalDouble.empty();
  }

  /**
   * This spectrum with all photons multiplied, its scale kept.
   *
   * @param factor above 0
   */
  public PhotonSpectrum times(double factor) {
    return new PhotonSpectrum(samples.times(factor), scale);
  }

  /**
   * This spectrum, scaled so that its PPFD is known.
   *
   * @param ppfd [µmol m⁻² s⁻¹], above 0
   * @return a spectrum of {@link Scale#IRRADIANCE}
   * @throws IllegalArgumentException if {@code ppfd} is not above 0 or this spectrum holds no PAR
   */
  public PhotonSpectrum atPpfd(double ppfd) {
    double par = parPhotons();
    if (!(par > 0)) {
      throw new IllegalArgumentException(
          "a spectrum without photons within 400-700 nm cannot be scaled to a PPFD");
    }
    return new PhotonSpectrum(samples.times(ppfd / par), Scale.IRRADIANCE);
  }

  /** The same values with their scale forgotten. */
  public PhotonSpectrum relative() {
    return scale == Scale.RELATIVE ? this : new PhotonSpectrum(samples, Scale.RELATIVE);
  }

  /**
   * This spectrum on other wavelengths: photons over each new step are kept to rounding; light
   * outside the new range is left out.
   *
   * @param target the new wavelengths
   * @throws IllegalArgumentException if no photons lie within the new range
   */
  public PhotonSpectrum onto(Wavelengths target) {
    Samples there = samples.onto(target);
    if (!(there.integral(target.first(), target.last()) > 0)) {
      throw new IllegalArgumentException(
          "no photons of this spectrum lie within "
              + target.first()
              + " to "
              + target.last()
              + " nm");
    }
    return new PhotonSpectrum(there, scale);
  }

  /**
   * What is left of this light where a share of every wavelength passes, its scale kept.
   *
   * <p>Steps wider than 5 nm are divided first, as the share is no straight line.
   *
   * @param transmittance share that passes, by wavelength [nm]; 0 to 1
   * @throws IllegalArgumentException if no photons are left
   */
  public PhotonSpectrum through(DoubleUnaryOperator transmittance) {
    Samples fine = samples.divided(PhotonEnergy.WIDEST_STEP_NM, PhotonEnergy.FINEST_STEP_NM);
    double[] left = fine.toArray();
    for (int i = 0; i < left.length; i++) {
      left[i] *= transmittance.applyAsDouble(fine.wavelengths().nm(i));
    }
    return new PhotonSpectrum(fine.wavelengths(), left, scale);
  }

  /**
   * The radiant spectrum of the same light: each sample times hcN_A/λ.
   *
   * <p>Exact at the samples, where it also returns by {@link RadiantSpectrum#toPhotons()}. Between
   * them a line that is straight in photons is a curve in watts: steps wider than 5 nm are divided
   * first, so that sums differ by less than 3e-5 of the light (tested).
   */
  public RadiantSpectrum toRadiant() {
    return new RadiantSpectrum(PhotonEnergy.times(samples, -1), scale);
  }

  /** The samples, for work within this package. */
  Samples samples() {
    return samples;
  }
}
