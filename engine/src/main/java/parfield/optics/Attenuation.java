package parfield.optics;

import parfield.spectrum.PhotonSpectrum;

/**
 * What a length of water leaves of one channel's PAR photons: A(L) = ∫S e^(−aL) dλ / ∫S dλ over
 * 400–700 nm, S the photon spectrum, a the absorption.
 *
 * <p>A is smooth, so it is tabulated with its slope and interpolated once per channel and water, by
 * cubics; relative error below 1e-6 up to 4 m (tested against the integral). Immutable.
 */
public final class Attenuation {
  /** Longest path in the table [m]; beyond it light falls off evenly. */
  static final double MAX_METRES = 6;

  private static final int STEPS_PER_METRE = 32;

  /** Width of a band [nm]: the table of pure water is linear across it. */
  private static final double BAND_NM = 2.5;

  /** Distance of the two Gauss–Legendre points of a band from its middle, in half widths. */
  private static final double GAUSS = 1 / Math.sqrt(3);

  private final double[] transmittance;
  private final double[] slope;

  private Attenuation(double[] transmittance, double[] slope) {
    this.transmittance = transmittance;
    this.slope = slope;
  }

  /**
   * The attenuation of one spectrum in one water.
   *
   * @param spectrum the channel's photon spectrum
   * @param water the water
   * @throws IllegalArgumentException if the spectrum holds no photons within 400–700 nm
   */
  public static Attenuation of(PhotonSpectrum spectrum, Water water) {
    if (!(spectrum.parPhotons() > 0)) {
      throw new IllegalArgumentException(
          "the attenuation of PAR needs photons within 400-700 nm; this spectrum holds none there");
    }
    int bands = (int) ((PhotonSpectrum.PAR_TO_NM - PhotonSpectrum.PAR_FROM_NM) / BAND_NM);
    int nodes = 2 * bands;
    double[] weight = new double[nodes];
    double[] absorption = new double[nodes];
    double total = 0;
    for (int i = 0; i < bands; i++) {
      double middle = PhotonSpectrum.PAR_FROM_NM + (i + 0.5) * BAND_NM;
      double below = spectrum.photons(middle - BAND_NM / 2, middle);
      double above = spectrum.photons(middle, middle + BAND_NM / 2);
      // Two points that keep the band's photons and, where these run evenly, their mean wavelength.
      double tilt = (above - below) * 2 * GAUSS;
      for (int k = 0; k < 2; k++) {
        double side = 2 * k - 1;
        weight[2 * i + k] = Math.max(0, (below + above + side * tilt) / 2);
        absorption[2 * i + k] = water.absorption(middle + side * GAUSS * BAND_NM / 2);
        total += weight[2 * i + k];
      }
    }
    int points = (int) (MAX_METRES * STEPS_PER_METRE) + 1;
    double[] value = new double[points];
    double[] slope = new double[points];
    double[] left = weight.clone();
    double[] stepFactor = new double[nodes];
    for (int i = 0; i < nodes; i++) {
      stepFactor[i] = Math.exp(-absorption[i] / STEPS_PER_METRE);
    }
    for (int p = 0; p < points; p++) {
      double sum = 0;
      double derivative = 0;
      for (int i = 0; i < nodes; i++) {
        sum += left[i];
        derivative -= left[i] * absorption[i];
        left[i] *= stepFactor[i];
      }
      value[p] = sum / total;
      slope[p] = derivative / total / STEPS_PER_METRE;
    }
    return new Attenuation(value, slope);
  }

  /** Water that takes nothing: for checks of flux conservation. */
  public static Attenuation none() {
    return new Attenuation(new double[] {1, 1}, new double[2]);
  }

  /**
   * Share of PAR photons left after a path.
   *
   * @param metres length of the path in water [m], 0 or more
   * @return 1 at 0 m, falling toward 0
   */
  public double transmittance(double metres) {
    double position = metres * STEPS_PER_METRE;
    int last = transmittance.length - 1;
    if (position >= last) {
      return transmittance[last] * Math.exp((position - last) * slope[last] / transmittance[last]);
    }
    int i = (int) position;
    double t = position - i;
    double u = 1 - t;
    return u * u * (1 + 2 * t) * transmittance[i]
        + t * t * (3 - 2 * t) * transmittance[i + 1]
        + t * u * (u * slope[i] - t * slope[i + 1]);
  }
}
