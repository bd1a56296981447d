package parfield.answer;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;

/**
 * Channels of a fixture that send their light the same way. A light model gives such to channels
 * that were only ever lit in one ratio: how their colours blend, and how bright each is, the
 * readings do not tell.
 */
public final class AlikeChannels {
  private static final int STEPS = 12;
  private static final double SAME = 1e-6;

  private AlikeChannels() {}

  /** The names of channels that share the distribution of another one. */
  public static Set<String> of(Fixture fixture) {
    Set<String> alike = new LinkedHashSet<>();
    List<Channel> channels = fixture.channels();
    for (int c = 0; c < channels.size(); c++) {
      for (int d = 0; d < c; d++) {
        if (same(channels.get(c), channels.get(d))) {
          alike.add(channels.get(d).name());
          alike.add(channels.get(c).name());
        }
      }
    }
    return alike;
  }

  /** What is to be said of them; empty if there are none. */
  public static Optional<String> statement(Fixture fixture) {
    Set<String> alike = of(fixture);
    return alike.isEmpty()
        ? Optional.empty()
        : Optional.of(
            String.format(
                Locale.ROOT,
                "Channels %s of fixture %s send their light the same way here: if that comes from"
                    + " readings that had them in one ratio only, how bright each is is a guess;"
                    + " read a plane with one of them alone.",
                String.join(", ", alike),
                fixture.name()));
  }

  /** Whether one intensity is a multiple of the other in every direction. */
  private static boolean same(Channel one, Channel other) {
    if (one.distribution().isEmpty() || other.distribution().isEmpty()) {
      return false;
    }
    IntensityDistribution first = one.distribution().get();
    IntensityDistribution second = other.distribution().get();
    List<double[]> pairs = new ArrayList<>();
    double mostFirst = 0;
    double mostSecond = 0;
    for (int i = 0; i < STEPS; i++) {
      for (int k = 0; k < STEPS; k++) {
        double gamma = Math.PI / 2 * i / STEPS;
        double azimuth = 2 * Math.PI * k / STEPS;
        double[] pair = {first.intensity(gamma, azimuth), second.intensity(gamma, azimuth)};
        pairs.add(pair);
        mostFirst = Math.max(mostFirst, pair[0]);
        mostSecond = Math.max(mostSecond, pair[1]);
      }
    }
    for (double[] pair : pairs) {
      if (!(Math.abs(pair[0] / mostFirst - pair[1] / mostSecond) < SAME)) {
        return false;
      }
    }
    return true;
  }
}
