package parfield.spectrum;

import java.util.Arrays;
import java.util.Locale;

/**
 * A relative photon spectrum: photon flux per nanometre, piecewise linear between its samples.
 *
 * <p>Immutable. The scale is arbitrary: only shares of photons are meaningful.
 */
public final class PhotonSpectrum {
  /** Lower end of the waveband that PPFD counts [nm]; the definition of PAR (McCree 1972). */
  public static final double PAR_FROM_NM = 400;

  /** Upper end of the waveband that PPFD counts [nm]; the definition of PAR (McCree 1972). */
  public static final double PAR_TO_NM = 700;

  private final double[] wavelengthsNm;
  private final double[] photonFlux;

  /**
   * Makes a spectrum from samples.
   *
   * @param wavelengthsNm wavelengths [nm], strictly ascending, at least two, copied
   * @param photonFlux relative photon flux per nm at each wavelength, finite, copied; small
   *     negative noise is kept
   * @throws IllegalArgumentException if the arrays differ in length, are too short, not ascending,
   *     not finite, or hold no photons within 400–700 nm
   */
  public PhotonSpectrum(double[] wavelengthsNm, double[] photonFlux) {
    if (wavelengthsNm.length != photonFlux.length || wavelengthsNm.length < 2) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a spectrum needs two or more pairs of wavelength and photon flux; got %d wavelengths"
                  + " and %d values",
              wavelengthsNm.length,
              photonFlux.length));
    }
    for (int i = 0; i < wavelengthsNm.length; i++) {
      if (!Double.isFinite(wavelengthsNm[i]) || !Double.isFinite(photonFlux[i])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "sample %d of a spectrum must be finite; got %s at %s nm",
                i + 1,
                photonFlux[i],
                wavelengthsNm[i]));
      }
      if (i > 0 && !(wavelengthsNm[i] > wavelengthsNm[i - 1])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "wavelengths must ascend; sample %d is %s nm after %s nm",
                i + 1,
                wavelengthsNm[i],
                wavelengthsNm[i - 1]));
      }
    }
    this.wavelengthsNm = wavelengthsNm.clone();
    this.photonFlux = photonFlux.clone();
    if (!(photons(PAR_FROM_NM, PAR_TO_NM) > 0)) {
      throw new IllegalArgumentException(
          "a spectrum must hold photons within 400-700 nm; this one holds none there");
    }
  }

  private static final PhotonSpectrum FLAT =
      new PhotonSpectrum(new double[] {PAR_FROM_NM, PAR_TO_NM}, new double[] {1, 1});

  /** The same photon flux at every wavelength of 400–700 nm; always the same object. */
  public static PhotonSpectrum flat() {
    return FLAT;
  }

  /** Returns the number of samples. */
  public int size() {
    return wavelengthsNm.length;
  }

  /** Returns the wavelength of sample {@code i} [nm]. */
  public double wavelengthNm(int i) {
    return wavelengthsNm[i];
  }

  /** Returns the relative photon flux per nm at sample {@code i}. */
  public double photonFlux(int i) {
    return photonFlux[i];
  }

  /**
   * Relative photon flux per nm, linear between samples and zero outside them.
   *
   * @param wavelengthNm wavelength [nm]
   */
  public double at(double wavelengthNm) {
    int last = wavelengthsNm.length - 1;
    if (!(wavelengthNm >= wavelengthsNm[0] && wavelengthNm <= wavelengthsNm[last])) {
      return 0;
    }
    int found = Arrays.binarySearch(wavelengthsNm, wavelengthNm);
    if (found >= 0) {
      return photonFlux[found];
    }
    int above = -found - 1;
    double share =
        (wavelengthNm - wavelengthsNm[above - 1])
            / (wavelengthsNm[above] - wavelengthsNm[above - 1]);
    return photonFlux[above - 1] * (1 - share) + photonFlux[above] * share;
  }

  /**
   * Photons between two wavelengths: the exact integral of the piecewise linear spectrum.
   *
   * @param fromNm lower end [nm]
   * @param toNm upper end [nm], not below {@code fromNm}
   */
  public double photons(double fromNm, double toNm) {
    double sum = 0;
    int found = Arrays.binarySearch(wavelengthsNm, fromNm);
    int first = Math.max(1, found >= 0 ? found + 1 : -found - 1);
    for (int i = first; i < wavelengthsNm.length && wavelengthsNm[i - 1] < toNm; i++) {
      double a = Math.max(fromNm, wavelengthsNm[i - 1]);
      double b = Math.min(toNm, wavelengthsNm[i]);
      if (b > a) {
        sum += (b - a) * (at(a) + at(b)) / 2;
      }
    }
    return sum;
  }
}
