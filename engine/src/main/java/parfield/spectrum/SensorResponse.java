package parfield.spectrum;

import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * What a quantum sensor shows per photon, by wavelength: straight lines between samples, blind
 * outside them. Immutable; the scale is arbitrary.
 */
public final class SensorResponse {
  /** How much a response is to be believed. */
  public enum Standing {
    /** The definition of PPFD itself: every photon of 400–700 nm alike. */
    IDEAL,
    /** Measured for this sensor or its kind: a reading can be corrected with it. */
    TABLE,
    /** A made-up shape of no sensor in particular: it only says how large an error may be. */
    GENERIC
  }

  private final String name;
  private final Standing standing;
  private final Wavelengths wavelengths;
  private final double[] values;

  private SensorResponse(String name, Standing standing, Wavelengths wavelengths, double[] values) {
    this.name = Objects.requireNonNull(name, "name");
    this.standing = standing;
    this.wavelengths = wavelengths;
    this.values = values.clone();
  }

  private static final SensorResponse IDEAL_RESPONSE =
      new SensorResponse(
          "ideal",
          Standing.IDEAL,
          Wavelengths.of(PhotonSpectrum.PAR_FROM_NM, PhotonSpectrum.PAR_TO_NM),
          new double[] {1, 1});

  private static final List<SensorResponse> GENERIC_RESPONSES =
      List.of(
          generic(
              "generic blue-weak",
              new double[] {380, 400, 430, 450, 480, 510, 550, 650, 680, 700, 715},
              new double[] {0, 0.55, 0.72, 0.8, 0.88, 0.95, 1, 1, 0.97, 0.6, 0}),
          generic(
              "generic red-short",
              new double[] {370, 400, 430, 450, 600, 640, 655, 670, 690},
              new double[] {0, 0.7, 0.92, 1, 1, 0.97, 0.75, 0.3, 0}),
          generic(
              "generic even",
              new double[] {385, 405, 430, 500, 600, 690, 700, 710},
              new double[] {0, 0.93, 0.97, 1, 0.99, 1, 0.6, 0}));

  private static SensorResponse generic(String name, double[] nm, double[] values) {
    return new SensorResponse(name, Standing.GENERIC, Wavelengths.of(nm), values);
  }

  /** Counts every photon of 400–700 nm alike and no other: the definition of PAR (McCree 1972). */
  public static SensorResponse ideal() {
    return IDEAL_RESPONSE;
  }

  /**
   * Made-up shapes, invented here and taken from no sensor: one that sees blue too weakly, one that
   * goes blind in the red, one that is nearly even. They show what such a shape does to a reading.
   */
  public static List<SensorResponse> generics() {
    return GENERIC_RESPONSES;
  }

  /**
   * A measured response.
   *
   * @param name what the bench calls it
   * @param wavelengths where it was measured
   * @param perPhoton relative signal per photon at each wavelength, 0 or more, not all 0; copied
   * @throws IllegalArgumentException if a value is negative or not finite, or all are 0
   */
  public static SensorResponse table(String name, Wavelengths wavelengths, double[] perPhoton) {
    double sum = 0;
    for (int i = 0; i < perPhoton.length; i++) {
      if (!(perPhoton[i] >= 0) || Double.isInfinite(perPhoton[i])) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "sensor response %s must be 0 or more; got %s at %s nm",
                name,
                perPhoton[i],
                i < wavelengths.size() ? wavelengths.nm(i) : Double.NaN));
      }
      sum += perPhoton[i];
    }
    if (perPhoton.length != wavelengths.size() || !(sum > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "sensor response %s needs a value for each wavelength, one above 0; got %d values"
                  + " for %d wavelengths, their sum %s",
              name,
              perPhoton.length,
              wavelengths.size(),
              sum));
    }
    return new SensorResponse(name, Standing.TABLE, wavelengths, perPhoton);
  }

  /** What the bench calls it. */
  public String name() {
    return name;
  }

  /** How much it is to be believed. */
  public Standing standing() {
    return standing;
  }

  /** Where it is sampled. */
  public Wavelengths wavelengths() {
    return wavelengths;
  }

  /**
   * Relative signal per photon.
   *
   * @param wavelengthNm wavelength [nm]
   */
  public double at(double wavelengthNm) {
    if (!(wavelengthNm >= wavelengths.first() && wavelengthNm <= wavelengths.last())) {
      return 0;
    }
    int found = wavelengths.find(wavelengthNm);
    if (found >= 0) {
      return values[found];
    }
    int above = -found - 1;
    double from = wavelengths.nm(above - 1);
    double share = (wavelengthNm - from) / (wavelengths.nm(above) - from);
    return values[above - 1] * (1 - share) + values[above] * share;
  }

  /**
   * Relative signal under a light: ∫ S s dλ, exact for the straight lines of both.
   *
   * @param light photon spectrum S
   */
  public double signal(PhotonSpectrum light) {
    GaussNodes nodes =
        GaussNodes.of(
            wavelengths.first(), wavelengths.last(), List.of(wavelengths, light.wavelengths()));
    return nodes.product(nodes.values(light::at), nodes.values(this::at));
  }
}
