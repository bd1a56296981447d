package parfield.formats;

import java.util.Optional;
import java.util.stream.Stream;
import parfield.lamp.CosinePower;
import parfield.lamp.IntensityDistribution;

/**
 * An intensity distribution: {@code fitted}, a beam angle or a lobe's exponent with a peak
 * intensity or a photon flux, or a table in a file.
 */
final class DistributionEntry {
  private static final String HOW =
      "write fitted, {beam: 90, photon flux: 120}, {lobe: 2, peak: 60} or {table: pendant.csv}";

  private static final Limit FLUX = Limit.between(0, 1e6, "µmol/s");
  private static final Limit PEAK = Limit.between(0, 1e6, "µmol/s/sr");

  private DistributionEntry() {}

  /** The distribution of one emitter at full output; empty if fitted, or with a fault. */
  static Optional<IntensityDistribution> read(Entry entry, Sources sources) {
    if (!entry.isMap()) {
      if (!entry.shown().equals("fitted")) {
        entry.fault(entry.shown(), "fitted, or a map of beam, lobe or table", HOW);
      }
      return Optional.empty();
    }
    Section section = entry.section("beam", "lobe", "peak", "photon flux", "table").orElseThrow();
    if (Stream.of("beam", "lobe", "table").filter(section::has).count() != 1) {
      entry.fault(
          section.has("beam") || section.has("lobe") ? "several kinds" : "no kind",
          "one of beam, lobe, table",
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
