package parfield.spectrum;

import java.util.List;
import java.util.Locale;
import java.util.NavigableSet;
import java.util.TreeSet;

/** Light of several sources together: spectra add. */
public final class Superposition {
  private Superposition() {}

  /**
   * The sum of spectra, each times a factor, exact on all their wavelengths together.
   *
   * @param spectra at least one, all of one scale
   * @param factors one a spectrum, 0 or more, at least one above 0
   * @throws IllegalArgumentException if the numbers differ, scales differ, or a factor is negative
   */
  public static PhotonSpectrum of(List<PhotonSpectrum> spectra, List<Double> factors) {
    if (spectra.isEmpty() || spectra.size() != factors.size()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a sum of spectra needs one factor for each; got %d spectra and %d factors",
              spectra.size(),
              factors.size()));
    }
    Scale scale = spectra.get(0).scale();
    TreeSet<Double> places = new TreeSet<>();
    for (int k = 0; k < spectra.size(); k++) {
      PhotonSpectrum spectrum = spectra.get(k);
      if (!(factors.get(k) >= 0) || Double.isInfinite(factors.get(k))) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT, "a factor of a spectrum must be 0 or more; got %s", factors.get(k)));
      }
      if (spectrum.scale() != scale) {
        throw new IllegalArgumentException(
            String.format(
                "spectra of different scales do not add: %s and %s; scale them alike first",
                scale, spectrum.scale()));
      }
      if (factors.get(k) > 0) {
        for (int i = 0; i < spectrum.size(); i++) {
          places.add(spectrum.wavelengthNm(i));
        }
      }
    }
    if (places.isEmpty()) {
      throw new IllegalArgumentException(
          "a sum of spectra needs one factor above 0; all are 0: there is no light");
    }
    addDarkEnds(spectra, places);
    double[] nm = places.stream().mapToDouble(Double::doubleValue).toArray();
    double[] sum = new double[nm.length];
    for (int k = 0; k < spectra.size(); k++) {
      double factor = factors.get(k);
      if (factor > 0) {
        for (int i = 0; i < nm.length; i++) {
          sum[i] += factor * spectra.get(k).at(nm[i]);
        }
      }
    }
    return new PhotonSpectrum(Wavelengths.of(nm), sum, scale);
  }

  /** Where a spectrum ends undimmed within the others, the next number beyond, where it is dark. */
  private static void addDarkEnds(List<PhotonSpectrum> spectra, NavigableSet<Double> places) {
    double from = places.first();
    double to = places.last();
    for (PhotonSpectrum spectrum : spectra) {
      double first = spectrum.wavelengths().first();
      double last = spectrum.wavelengths().last();
      if (first > from && spectrum.photonFlux(0) != 0) {
        places.add(Math.nextDown(first));
      }
      if (last < to && spectrum.photonFlux(spectrum.size() - 1) != 0) {
        places.add(Math.nextUp(last));
      }
    }
  }
}
