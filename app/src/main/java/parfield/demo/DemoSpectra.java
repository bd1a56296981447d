package parfield.demo;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import parfield.spectrum.PhotonSpectrum;

/** Invented spectra of the bar's channels, a reference and ten places: sums of Gaussian peaks. */
final class DemoSpectra {
  private static final double FROM_NM = 380;
  private static final double TO_NM = 720;
  private static final double STEP_NM = 5;
  private static final int PLACES = 10;

  /**
   * One peak.
   *
   * @param at its wavelength [nm]
   * @param width its standard deviation [nm]
   * @param height relative photon flux per nm
   */
  record Peak(double at, double width, double height) {}

  /** Peaks by the name of the channel, in the order of the setup. */
  static final Map<String, List<Peak>> BY_CHANNEL = byChannel();

  private DemoSpectra() {}

  private static Map<String, List<Peak>> byChannel() {
    Map<String, List<Peak>> peaks = new LinkedHashMap<>();
    peaks.put("blue", List.of(new Peak(452, 10, 1)));
    peaks.put("white", List.of(new Peak(446, 9, 0.55), new Peak(555, 48, 1)));
    peaks.put("violet", List.of(new Peak(412, 8, 1)));
    return peaks;
  }

  static PhotonSpectrum spectrum(List<Peak> peaks) {
    int n = (int) Math.round((TO_NM - FROM_NM) / STEP_NM) + 1;
    double[] wavelengths = new double[n];
    double[] flux = new double[n];
    for (int i = 0; i < n; i++) {
      wavelengths[i] = FROM_NM + i * STEP_NM;
      flux[i] = rounded(at(peaks, wavelengths[i]));
    }
    return new PhotonSpectrum(wavelengths, flux);
  }

  /** The spectrum as a file. */
  static String file(List<Peak> peaks) {
    PhotonSpectrum spectrum = spectrum(peaks);
    StringBuilder text =
        new StringBuilder("# Invented spectrum: relative photon flux per nm, not measured.\n");
    text.append("wavelength_nm,relative_photon_flux\n");
    for (int i = 0; i < spectrum.size(); i++) {
      text.append(
          String.format(
              Locale.ROOT, "%.0f,%.4f\n", spectrum.wavelengthNm(i), spectrum.photonFlux(i)));
    }
    return text.toString();
  }

  /** The light of a lamp that stands for a trusted one, as a file. */
  static String reference() {
    return file(
        List.of(
            new Peak(450, 12, 1),
            new Peak(482, 22, 0.45),
            new Peak(535, 45, 0.3),
            new Peak(625, 38, 0.1)));
  }

  /**
   * Ten places under the bars, 25 cm deep, as one file. Blue comes from the outer emitters and
   * white from the inner ones, so that the ends are bluer; violet leans to the back.
   */
  static String places() {
    StringBuilder text =
        new StringBuilder(
            "# Invented spectra of ten places, two rows of five: made up, not measured.\n"
                + "# Unit: umol/m2/s/nm\nwavelength_nm");
    for (int p = 0; p < PLACES; p++) {
      text.append(',').append(p < PLACES / 2 ? "front-" : "back-").append(1 + p % (PLACES / 2));
    }
    text.append('\n');
    List<Double> sums = BY_CHANNEL.values().stream().map(DemoSpectra::par).toList();
    for (double nm = FROM_NM; nm <= TO_NM; nm += STEP_NM) {
      text.append(String.format(Locale.ROOT, "%.0f", nm));
      for (int p = 0; p < PLACES; p++) {
        double fromMiddle = Math.abs(p % (PLACES / 2) - 2) / 2.0;
        double[] ppfd = {
          105 - 30 * fromMiddle, 95 - 52 * fromMiddle, p < PLACES / 2 ? 21 : 24 - 4 * fromMiddle
        };
        double flux = 0;
        int channel = 0;
        for (List<Peak> peaks : BY_CHANNEL.values()) {
          flux += ppfd[channel] / sums.get(channel) * at(peaks, nm);
          channel++;
        }
        text.append(String.format(Locale.ROOT, ",%.4f", flux));
      }
      text.append('\n');
    }
    return text.toString();
  }

  private static double par(List<Peak> peaks) {
    return spectrum(peaks).parPhotons();
  }

  private static double at(List<Peak> peaks, double wavelengthNm) {
    double sum = 0;
    for (Peak peak : peaks) {
      double deviations = (wavelengthNm - peak.at()) / peak.width();
      sum += peak.height() * Math.exp(-deviations * deviations / 2);
    }
    return sum;
  }

  private static double rounded(double flux) {
    return Math.rint(1e4 * flux) / 1e4;
  }
}
