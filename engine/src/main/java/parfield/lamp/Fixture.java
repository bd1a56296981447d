package parfield.lamp;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;

/**
 * A light fixture: alike emitters at fixed offsets, channels that all of them carry, dials.
 *
 * @param name what the bench calls it
 * @param length size along its length axis [m], 0 if unknown
 * @param width size along its width axis [m], 0 if unknown
 * @param emitters places where light leaves, at least one
 * @param channels colour channels, at least one, each with its own dial of the same name
 * @param masters dials that scale several channels
 */
public record Fixture(
    String name,
    double length,
    double width,
    List<Emitter> emitters,
    List<Channel> channels,
    List<Master> masters) {
  public Fixture {
    Objects.requireNonNull(name, "name");
    emitters = List.copyOf(emitters);
    channels = List.copyOf(channels);
    masters = List.copyOf(masters);
    if (!(length >= 0) || !(width >= 0)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "fixture %s: length and width must be 0 m or more; got %s and %s",
              name,
              length,
              width));
    }
    if (emitters.isEmpty() || channels.isEmpty()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "fixture %s needs at least one emitter and one channel; got %d and %d",
              name,
              emitters.size(),
              channels.size()));
    }
    Set<String> names = new HashSet<>();
    for (Channel channel : channels) {
      if (!names.add(channel.name())) {
        throw new IllegalArgumentException(
            String.format("fixture %s has two dials named %s", name, channel.name()));
      }
    }
    for (Master master : masters) {
      if (!names.add(master.name())) {
        throw new IllegalArgumentException(
            String.format("fixture %s has two dials named %s", name, master.name()));
      }
      for (String scaled : master.scales()) {
        if (channels.stream().noneMatch(channel -> channel.name().equals(scaled))) {
          throw new IllegalArgumentException(
              String.format(
                  "fixture %s: master %s scales %s, which is no channel of it; channels are %s",
                  name, master.name(), scaled, channels.stream().map(Channel::name).toList()));
        }
      }
    }
  }

  /** Names of all dials: channels first, then masters. */
  public List<String> dials() {
    List<String> dials = new ArrayList<>();
    channels.forEach(channel -> dials.add(channel.name()));
    masters.forEach(master -> dials.add(master.name()));
    return List.copyOf(dials);
  }

  /**
   * Output fraction of each channel at a setting: its curve at (own dial × its masters).
   *
   * @param setting the dials
   * @return one fraction 0 to 1 per channel, in the order of {@link #channels()}
   */
  public double[] outputs(Setting setting) {
    double[] outputs = new double[channels.size()];
    for (int i = 0; i < outputs.length; i++) {
      Channel channel = channels.get(i);
      double percent = setting.percent(channel.name());
      for (Master master : masters) {
        if (master.scales().contains(channel.name())) {
          percent *= setting.percent(master.name()) / 100;
        }
      }
      outputs[i] = channel.curve().outputAt(percent);
    }
    return outputs;
  }

  /** This fixture with other channels. */
  public Fixture withChannels(List<Channel> newChannels) {
    return new Fixture(name, length, width, emitters, newChannels, masters);
  }

  /** This fixture with an aperture [m] for every emitter that states none. */
  public Fixture withUnstatedAperture(double aperture) {
    return new Fixture(
        name,
        length,
        width,
        emitters.stream()
            .map(emitter -> emitter.aperture() > 0 ? emitter : emitter.withAperture(aperture))
            .toList(),
        channels,
        masters);
  }
}
