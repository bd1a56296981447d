package parfield.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.spectrum.ChannelLight;
import parfield.spectrum.ChannelMix;
import parfield.spectrum.MixGoal;
import parfield.spectrum.OutputRange;

/**
 * What to dial on a fixture for the mix nearest to a goal: masters, limits and output curves
 * included.
 *
 * @param exact the dials of the nearest mix, in percents that need not be whole
 * @param nearest that mix: no dials within the limits come nearer to the goal
 * @param dials the same in whole percents, which is what a person dials; a level may pass its limit
 *     by half a percent
 * @param dialled the mix at whole percents: what rounding costs is the difference
 */
public record DialledMix(Setting exact, ChannelMix nearest, Setting dials, ChannelMix dialled) {
  /**
   * How far a channel may be dialled.
   *
   * @param low least level [%], 0 to {@code high}
   * @param high greatest level [%], to 100
   */
  public record Level(double low, double high) {
    /** The whole dial. */
    public static final Level ALL = new Level(0, 100);

    public Level {
      if (!(low >= 0 && low <= high && high <= 100)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "a range of dial levels lies within 0 to 100 %%, lowest first; got %s to %s",
                low,
                high));
      }
    }
  }

  /**
   * The dials for the mix nearest to a goal, at the greatest brightness that the limits allow.
   *
   * <p>A channel's level is its own dial times its masters. What a curve gives at the lowest level
   * is the least a channel can do: a channel that glows at 0 is mixed with its glow.
   *
   * @param goal what to come near to
   * @param fixture whose dials
   * @param light of its channels at full output, in its order and by its names
   * @param limits by channel; one that is not named may use the whole dial
   * @throws IllegalArgumentException if names do not match, or no mix can be made
   */
  public static DialledMix nearest(
      MixGoal goal, Fixture fixture, List<ChannelLight> light, Map<String, Level> limits) {
    List<String> names = fixture.channels().stream().map(Channel::name).toList();
    List<String> given = light.stream().map(ChannelLight::name).toList();
    if (!names.equals(given)) {
      throw new IllegalArgumentException(
          String.format(
              "fixture %s has the channels %s; got light of %s: give each channel's, in that order",
              fixture.name(), names, given));
    }
    for (String limited : limits.keySet()) {
      if (!names.contains(limited)) {
        throw new IllegalArgumentException(
            String.format(
                "fixture %s has no channel %s to limit; its channels are %s",
                fixture.name(), limited, names));
      }
    }
    List<OutputRange> ranges = new ArrayList<>();
    for (Channel channel : fixture.channels()) {
      Level level = limits.getOrDefault(channel.name(), Level.ALL);
      OutputCurve curve = channel.curve();
      ranges.add(
          new OutputRange(curve.outputAt(level.low()), Math.min(1, curve.outputAt(level.high()))));
    }
    ChannelMix nearest = ChannelMix.nearest(goal, light, ranges);
    double[] outputs = nearest.outputs().stream().mapToDouble(Double::doubleValue).toArray();
    Setting dials = Dials.settingFor(fixture, outputs);
    List<Double> dialled = new ArrayList<>();
    for (double output : fixture.outputs(dials)) {
      dialled.add(Math.min(1, output));
    }
    return new DialledMix(
        Dials.exactFor(fixture, outputs),
        nearest,
        dials,
        ChannelMix.at(goal, light, ranges, dialled));
  }
}
