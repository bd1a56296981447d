package parfield.formats;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.lamp.IntensityDistribution;
import parfield.spectrum.LightAnalysis;

/**
 * The photons of one emitter, from a photometric file that a setup names: such a file tells of a
 * whole fixture, and in candela.
 *
 * @param entry that names the file
 * @param file what it holds
 */
record FileLight(Entry entry, PhotometricFile file) {
  /**
   * The distribution of one emitter in a channel at full output: by the photon flux that the setup
   * states, else by the file's own photon keywords, else by the channel's spectrum.
   *
   * @param scaled whether the setup states the photon flux of one emitter
   * @param flux that flux [µmol s⁻¹], NaN if it is faulty
   * @return empty with a fault
   */
  Optional<IntensityDistribution> emitter(
      DistributionEntry.ChannelLight channel, boolean scaled, double flux) {
    double lumens = file.table().flux();
    if (!(lumens > 0)) {
      entry.fault("a file without light", "intensities above 0", "check that it is the right file");
      return Optional.empty();
    }
    OptionalDouble perLumen =
        scaled
            ? (Double.isNaN(flux) ? OptionalDouble.empty() : OptionalDouble.of(flux / lumens))
            : divided(
                file.photons().isPresent()
                    ? byKeywords(channel, file.photons().get(), lumens)
                    : bySpectrum(channel),
                channel.emitters());
    return perLumen.isEmpty()
        ? Optional.empty()
        : Optional.of(file.table().distribution(perLumen.getAsDouble()));
  }

  private static OptionalDouble divided(OptionalDouble value, int emitters) {
    return value.isEmpty() ? value : OptionalDouble.of(value.getAsDouble() / emitters);
  }

  private OptionalDouble byKeywords(
      DistributionEntry.ChannelLight channel, PhotonKeywords keywords, double lumens) {
    List<String> names =
        keywords.channels().stream().map(PhotonKeywords.ChannelFlux::name).toList();
    Optional<PhotonKeywords.ChannelFlux> named = keywords.channel(channel.name());
    if (named.isEmpty() && channel.alone() && names.size() == 1) {
      assume("its channel " + Notes.shown(names.get(0)) + " is taken for channel " + of(channel));
      named = Optional.of(keywords.channels().get(0));
    }
    if (named.isPresent()) {
      if (names.size() > 1) {
        assume(
            "it tells of "
                + names.size()
                + " channels together: each is taken to have the shape of their sum");
      }
      return OptionalDouble.of(named.get().ppf() / lumens);
    }
    if (names.isEmpty() && channel.alone()) {
      return OptionalDouble.of(keywords.photonsPerLumen());
    }
    entry.fault(
        names.isEmpty()
            ? "a file that tells of no channels"
            : "a file of the channels " + Notes.shown(names),
        "one that tells of channel " + of(channel),
        "name the channel as the file does, or give each channel a distribution with a file of its"
            + " own");
    return OptionalDouble.empty();
  }

  private OptionalDouble bySpectrum(DistributionEntry.ChannelLight channel) {
    String orFlux =
        "or state the photon flux of one emitter beside it: {file: …, photon flux: 120}";
    if (!channel.alone()) {
      entry.fault(
          "a file that tells the light of all channels together, in candela",
          "a file for each channel, or one with photon keywords",
          "give channel " + of(channel) + " a distribution of its own, " + orFlux);
      return OptionalDouble.empty();
    }
    if (channel.spectrum().isEmpty()) {
      entry.fault(
          "a file in candela, which count what the eye sees",
          "a channel whose spectrum is known, so that they become photons",
          "state the spectrum of channel " + of(channel) + ", " + orFlux);
      return OptionalDouble.empty();
    }
    Optional<Double> lumens = LightAnalysis.of(channel.spectrum().get()).luxPerPpfd().toOptional();
    if (lumens.isEmpty() || !(lumens.get() > 0)) {
      entry.fault(
          "a file in candela for light that the eye does not see",
          "a spectrum with some light within 380 to 780 nm",
          "check the spectrum of channel " + of(channel) + ", " + orFlux);
      return OptionalDouble.empty();
    }
    assume(
        String.format(
            Locale.ROOT,
            "candela become photons by the spectrum of channel %s, %s lm per µmol/s",
            of(channel),
            NumberText.shown(lumens.get())));
    return OptionalDouble.of(1 / lumens.get());
  }

  private static String of(DistributionEntry.ChannelLight channel) {
    return Notes.shown(channel.name());
  }

  private void assume(String sentence) {
    entry.notes().assume(entry.shown() + ": " + sentence);
  }
}
