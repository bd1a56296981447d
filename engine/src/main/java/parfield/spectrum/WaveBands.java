package parfield.spectrum;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Wavebands in ascending order that do not overlap: how a bench divides light into colours.
 *
 * @param bands at least one, ascending, none overlapping another; gaps are allowed
 */
public record WaveBands(List<WaveBand> bands) {
  /** The division where none is stated; common practice, no source. */
  public static final WaveBands COMMON = edges(380, 400, 430, 480, 510, 600, 700);

  public WaveBands {
    bands = List.copyOf(bands);
    if (bands.isEmpty()) {
      throw new IllegalArgumentException("a division into wavebands needs one band or more; got 0");
    }
    for (int i = 1; i < bands.size(); i++) {
      if (!(bands.get(i).fromNm() >= bands.get(i - 1).toNm())) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "wavebands must ascend without overlap; %s begins at %s nm, before %s ends at %s nm",
                bands.get(i).name(),
                bands.get(i).fromNm(),
                bands.get(i - 1).name(),
                bands.get(i - 1).toNm()));
      }
    }
  }

  /**
   * Bands without gaps between them.
   *
   * @param edgesNm two or more wavelengths [nm], ascending
   */
  public static WaveBands edges(double... edgesNm) {
    List<WaveBand> bands = new ArrayList<>();
    for (int i = 1; i < edgesNm.length; i++) {
      bands.add(WaveBand.of(edgesNm[i - 1], edgesNm[i]));
    }
    return new WaveBands(bands);
  }

  /** Where the first band begins [nm]. */
  public double fromNm() {
    return bands.get(0).fromNm();
  }

  /** Where the last band ends [nm]. */
  public double toNm() {
    return bands.get(bands.size() - 1).toNm();
  }

  /**
   * Share of photons in each band, of all photons from the first band's beginning to the last one's
   * end (380–700 nm in {@link #COMMON}).
   *
   * @return as many shares as bands, in their order; not defined where that range holds no photons
   */
  public Finding<List<Double>> shares(PhotonSpectrum spectrum) {
    double whole = spectrum.photons(fromNm(), toNm());
    if (!(whole > 0)) {
      return noPhotons();
    }
    return Finding.of(bands.stream().map(band -> band.photons(spectrum) / whole).toList());
  }

  /** That a light has no photons to share. */
  <T> Finding<T> noPhotons() {
    return Finding.notDefined(
        "no photons within " + WaveBand.shown(fromNm()) + " to " + WaveBand.shown(toNm()) + " nm");
  }
}
