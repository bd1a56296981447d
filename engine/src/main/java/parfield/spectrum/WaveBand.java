package parfield.spectrum;

import java.util.Locale;
import java.util.Objects;

/**
 * A range of wavelengths.
 *
 * @param name what the bench calls it
 * @param fromNm lower end [nm], above 0
 * @param toNm upper end [nm], above {@code fromNm}
 */
public record WaveBand(String name, double fromNm, double toNm) {
  public WaveBand {
    Objects.requireNonNull(name, "name");
    if (!(fromNm > 0) || !(toNm > fromNm) || !Double.isFinite(toNm)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "waveband %s must run upward from above 0 nm; got %s to %s nm",
              name,
              fromNm,
              toNm));
    }
  }

  /** A band named after its ends, as "430–480 nm". */
  public static WaveBand of(double fromNm, double toNm) {
    return new WaveBand(shown(fromNm) + "–" + shown(toNm) + " nm", fromNm, toNm);
  }

  static String shown(double nm) {
    return nm == Math.rint(nm) ? String.format(Locale.ROOT, "%.0f", nm) : String.valueOf(nm);
  }

  /** Photons of a spectrum within this band, in the spectrum's unit. */
  public double photons(PhotonSpectrum spectrum) {
    return spectrum.photons(fromNm, toNm);
  }
}
