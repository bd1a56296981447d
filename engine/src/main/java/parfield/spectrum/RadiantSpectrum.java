package parfield.spectrum;

import java.util.Objects;

/**
 * A radiant spectrum: radiant power per nanometre, joined by straight lines between its samples,
 * dark outside them.
 *
 * <p>Immutable. What a sum of power is measured in stands in its {@link Scale}; where that is
 * unknown only ratios are meaningful. Negative noise is kept. Photons per nanometre are another
 * type, {@link PhotonSpectrum}.
 */
public final class RadiantSpectrum {
  private final Samples samples;
  private final Scale scale;

  /**
   * Makes a relative spectrum from samples.
   *
   * @param wavelengthsNm wavelengths [nm], strictly ascending, at least two, copied
   * @param power relative power per nm at each wavelength, finite, copied
   * @throws IllegalArgumentException if the arrays differ in length, are too short, not ascending,
   *     not finite, or hold no power
   */
  public RadiantSpectrum(double[] wavelengthsNm, double[] power) {
    this(Samples.checked(wavelengthsNm, power, "power", "power"), Scale.RELATIVE);
  }

  /**
   * Makes a spectrum from samples.
   *
   * @param wavelengths the wavelengths
   * @param power radiant power per nm at each wavelength, in the unit of {@code scale} per nm;
   *     finite, copied; small negative noise is kept
   * @param scale what a sum of power is measured in
   * @throws IllegalArgumentException if the number of values differs, one is not finite, or they
   *     hold no power
   */
  public RadiantSpectrum(Wavelengths wavelengths, double[] power, Scale scale) {
    this(Samples.checked(wavelengths, power, "power", "power"), scale);
  }

  RadiantSpectrum(Samples samples, Scale scale) {
    this.samples = samples;
    this.scale = Objects.requireNonNull(scale, "scale");
  }

  /** What a sum of power is measured in. */
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

  /** Returns the power per nm at sample {@code i}. */
  public double power(int i) {
    return samples.value(i);
  }

  /** Returns the power per nm of all samples as a new array. */
  public double[] powers() {
    return samples.toArray();
  }

  /**
   * Power per nm, linear between samples and zero outside them.
   *
   * @param wavelengthNm wavelength [nm]
   */
  public double at(double wavelengthNm) {
    return samples.at(wavelengthNm);
  }

  /**
   * Power between two wavelengths: the exact integral of the piecewise linear spectrum, in the unit
   * of {@link #scale()}.
   *
   * @param fromNm lower end [nm]
   * @param toNm upper end [nm], not below {@code fromNm}
   */
  public double power(double fromNm, double toNm) {
    return samples.integral(fromNm, toNm);
  }

  /** Power over all samples. */
  public double power() {
    return power(wavelengths().first(), wavelengths().last());
  }

  /**
   * This spectrum with all power multiplied, its scale kept.
   *
   * @param factor above 0
   */
  public RadiantSpectrum times(double factor) {
    return new RadiantSpectrum(samples.times(factor), scale);
  }

  /** The same values with their scale forgotten. */
  public RadiantSpectrum relative() {
    return scale == Scale.RELATIVE ? this : new RadiantSpectrum(samples, Scale.RELATIVE);
  }

  /**
   * This spectrum on other wavelengths: energy over each new step is kept to rounding; light
   * outside the new range is left out.
   *
   * @param target the new wavelengths
   * @throws IllegalArgumentException if no power lies within the new range
   */
  public RadiantSpectrum onto(Wavelengths target) {
    Samples there = samples.onto(target);
    if (!(there.integral(target.first(), target.last()) > 0)) {
      throw new IllegalArgumentException(
          "no power of this spectrum lies within "
              + target.first()
              + " to "
              + target.last()
              + " nm");
    }
    return new RadiantSpectrum(there, scale);
  }

  /**
   * The photon spectrum of the same light: each sample times λ/(hcN_A), so λ/119.626566 µmol per J.
   *
   * <p>Exact at the samples, where it also returns by {@link PhotonSpectrum#toRadiant()}; steps
   * wider than 5 nm are divided first, as there.
   */
  public PhotonSpectrum toPhotons() {
    return new PhotonSpectrum(PhotonEnergy.times(samples, 1), scale);
  }

  /** The samples, for work within this package. */
  Samples samples() {
    return samples;
  }

  /** The samples for weighted sums: no step wider than 5 nm. */
  Samples fine() {
    return samples.divided(PhotonEnergy.WIDEST_STEP_NM, PhotonEnergy.FINEST_STEP_NM);
  }
}
