package parfield.spectrum;

import java.util.Objects;

/**
 * The light of one channel by itself, at full output.
 *
 * @param name the channel's name
 * @param spectrum its photon spectrum at full output; channels that are mixed share one scale
 */
public record ChannelLight(String name, PhotonSpectrum spectrum) {
  public ChannelLight {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(spectrum, "spectrum");
  }
}
