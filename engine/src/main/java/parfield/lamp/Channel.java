package parfield.lamp;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.spectrum.PhotonSpectrum;

/**
 * One colour channel of a fixture.
 *
 * @param name the name on the dial
 * @param spectrum its relative photon spectrum, if known; it must hold photons within 400–700 nm
 * @param watts electric power at full output [W], if known
 * @param curve output fraction by dial
 * @param distribution intensity of each emitter in this channel at full output; empty until a light
 *     model supplies it
 */
public record Channel(
    String name,
    Optional<PhotonSpectrum> spectrum,
    OptionalDouble watts,
    OutputCurve curve,
    Optional<IntensityDistribution> distribution) {
  public Channel {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(spectrum, "spectrum");
    Objects.requireNonNull(watts, "watts");
    Objects.requireNonNull(curve, "curve");
    Objects.requireNonNull(distribution, "distribution");
    if (spectrum.isPresent() && !(spectrum.get().parPhotons() > 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "the spectrum of channel %s must hold photons within 400-700 nm, as its light is told"
                  + " in PPFD; this one holds none there",
              name));
    }
  }

  /** A channel with a known distribution, output proportional to its dial, spectrum unknown. */
  public static Channel of(String name, IntensityDistribution distribution) {
    return new Channel(
        name,
        Optional.empty(),
        OptionalDouble.empty(),
        OutputCurve.proportional(),
        Optional.of(distribution));
  }

  /** This channel with another intensity distribution. */
  public Channel withDistribution(IntensityDistribution newDistribution) {
    return new Channel(name, spectrum, watts, curve, Optional.of(newDistribution));
  }

  /** The spectrum that attenuation is computed for: the channel's own, or a flat one if unknown. */
  public PhotonSpectrum spectrumOrFlat() {
    return spectrum.orElseGet(PhotonSpectrum::flat);
  }
}
