package parfield.formats;

import java.util.List;
import java.util.Optional;
import parfield.lamp.CosinePower;
import parfield.lamp.IntensityDistribution;
import parfield.spectrum.PhotonSpectrum;

/**
 * An intensity distribution: {@code fitted}, a beam angle or a lobe's exponent with a peak
 * intensity or a photon flux, a table in a file, or a photometric file.
 */
final class DistributionEntry {
  private static final String HOW =
      "write fitted, {beam: 90, photon flux: 120}, {lobe: 2, peak: 60}, {table: pendant.csv} or"
          + " {file: pendant.ies}";

  private static final Limit FLUX = Limit.between(0, 1e6, "µmol/s");
  private static final Limit PEAK = Limit.between(0, 1e6, "µmol/s/sr");

  private DistributionEntry() {}

  /** What an entry states, once it is known for which channel. */
  interface Stated {
    /** The distribution of one emitter at full output; empty if fitted, or with a fault. */
    Optional<IntensityDistribution> in(ChannelLight channel);
  }

  /**
   * The channel that a distribution is wanted for.
   *
   * @param name of it
   * @param spectrum of it, if known
   * @param emitters of its fixture
   * @param alone whether the entry speaks of this channel only
   */
  record ChannelLight(
      String name, Optional<PhotonSpectrum> spectrum, int emitters, boolean alone) {}

  /** Reads an entry; faults of it are noted at once, those of a channel when it is asked for. */
  static Stated read(Entry entry, Sources sources) {
    if (entry.isMap()) {
      Section section =
          entry.section("beam", "lobe", "peak", "photon flux", "table", "file").orElseThrow();
      if (section.has("file") && KINDS.stream().filter(section::has).count() == 1) {
        return file(entry, section, sources);
      }
      Optional<IntensityDistribution> plain = plain(entry, section, sources);
      return channel -> plain;
    }
    if (!entry.shown().equals("fitted")) {
      entry.fault(entry.shown(), "fitted, or a map of beam, lobe, table or file", HOW);
    }
    return channel -> Optional.empty();
  }

  private static final List<String> KINDS = List.of("beam", "lobe", "table", "file");

  private static Stated file(Entry entry, Section section, Sources sources) {
    double flux =
        section
            .optional("photon flux")
            .map(value -> value.number(FLUX, "state the photon flux of one emitter"))
            .orElse(Double.NaN);
    if (section.has("peak")) {
      entry.fault("a file with a peak", "a file, with or without a photon flux", "delete peak");
    }
    Entry named = section.optional("file").orElseThrow();
    Optional<PhotometricFile> read = sources.photometric(named);
    boolean scaled = section.has("photon flux");
    return channel ->
        read.flatMap(file -> new FileLight(named, file).emitter(channel, scaled, flux));
  }

  private static Optional<IntensityDistribution> plain(
      Entry entry, Section section, Sources sources) {
    if (KINDS.stream().filter(section::has).count() != 1) {
      entry.fault(
          KINDS.stream().anyMatch(section::has) ? "several kinds" : "no kind",
          "one of beam, lobe, table, file",
          HOW);
      return Optional.empty();
    }
    if (section.has("table")) {
      if (section.has("peak") || section.has("photon flux")) {
        entry.fault("a table with a peak or photon flux", "a table alone", "delete the other key");
      }
      return sources.intensity(section.optional("table").orElseThrow()).map(table -> table);
    }
    double exponent = exponent(section);
    if (section.has("peak") == section.has("photon flux")) {
      entry.fault(
          section.has("peak") ? "peak and photon flux" : "neither peak nor photon flux",
          "one of them",
          "state the photon flux of one emitter in this channel [µmol/s], or its peak intensity"
              + " [µmol/s/sr]");
      return Optional.empty();
    }
    double peak =
        section.has("peak")
            ? section.number("peak", PEAK, "state the peak intensity of one emitter")
            // The flux of a cosine-power lobe is 2π I(0) / (m + 1).
            : section.number("photon flux", FLUX, "state the photon flux of one emitter")
                * (exponent + 1)
                / (2 * Math.PI);
    return Double.isNaN(exponent) || Double.isNaN(peak)
        ? Optional.empty()
        : Optional.of(new CosinePower(peak, exponent));
  }

  private static double exponent(Section section) {
    if (section.has("lobe")) {
      return section.number(
          "lobe", Limit.between(0, 1000), "state the power of the cosine: 1 is Lambert's law");
    }
    double beam =
        section.number(
            "beam",
            Limit.between(2, 175, "degrees"),
            "state the full angle between the directions of half the peak intensity");
    return Double.isNaN(beam)
        ? Double.NaN
        : CosinePower.ofBeamAngle(1, Math.toRadians(beam)).exponent();
  }
}
