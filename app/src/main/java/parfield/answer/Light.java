package parfield.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import parfield.formats.MeasuredSpectrum;
import parfield.formats.SpectralUnit;
import parfield.spectrum.PhotonSpectrum;

/**
 * A light that a command is asked about.
 *
 * @param name as the person knows it
 * @param photons its photon spectrum
 * @param cautions what the spectrum may suffer from, one plain sentence each
 */
public record Light(String name, PhotonSpectrum photons, List<String> cautions) {
  public Light {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(photons, "photons");
    cautions = List.copyOf(cautions);
  }

  /** A light as it was read. */
  public static Light of(MeasuredSpectrum spectrum) {
    List<String> cautions = new ArrayList<>(spectrum.cautions());
    if (spectrum.unit().quantity() == SpectralUnit.Quantity.COUNTS) {
      cautions.add(
          "its counts are taken as photons, the spectrometer's own response in them: shares and"
              + " colours are rough");
    }
    return new Light(spectrum.name(), spectrum.photons(), cautions);
  }

  /** What the spectra of several lights may suffer from, each with its name. */
  static List<String> cautions(List<Light> lights) {
    return lights.stream()
        .flatMap(light -> light.cautions().stream().map(caution -> light.name() + ": " + caution))
        .distinct()
        .toList();
  }
}
