package parfield.care;

import java.time.Duration;
import java.time.LocalTime;
import java.util.Locale;
import java.util.Objects;

/**
 * One lit spell of a channel's day: its dial climbs evenly from 0, stands, and falls evenly to 0.
 *
 * <p>A spell may cross midnight: every day is like the one before, so that what is left of it
 * belongs to the early hours of the same day.
 *
 * @param channel name of the channel
 * @param start when the dial leaves 0
 * @param rampUp how long it climbs, 0 for a step
 * @param plateau how long it stands
 * @param rampDown how long it falls, 0 for a step
 * @param level where it stands, in percent of what the rig dials: 100 is the rig's own setting
 */
public record LitSpell(
    String channel,
    LocalTime start,
    Duration rampUp,
    Duration plateau,
    Duration rampDown,
    double level) {
  /** Seconds of a day. */
  static final double DAY = 86_400;

  public LitSpell {
    Objects.requireNonNull(channel, "channel");
    Objects.requireNonNull(start, "start");
    for (Duration part : new Duration[] {rampUp, plateau, rampDown}) {
      if (part.isNegative()) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "channel %s: a ramp or plateau lasts 0 minutes or more; got %s",
                channel,
                Spans.words(part)));
      }
    }
    Duration all = rampUp.plus(plateau).plus(rampDown);
    if (all.isZero()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "channel %s: ramps and plateau together must last above 0 minutes; state a plateau",
              channel));
    }
    if (all.compareTo(Duration.ofDays(1)) > 0) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "channel %s: ramps and plateau together last at most 24 h; got %s",
              channel,
              Spans.words(all)));
    }
    if (!(level >= 0 && level <= 100)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "channel %s: its level runs from 0 to 100 %% of what the rig dials; got %s",
              channel,
              level));
    }
  }

  /** How long it lasts, ramps included. */
  public Duration length() {
    return rampUp.plus(plateau).plus(rampDown);
  }

  /** When its dial is at 0 again. */
  public LocalTime end() {
    return start.plus(length());
  }

  /** Whether it reaches into the next day. */
  public boolean crossesMidnight() {
    return start.toSecondOfDay() + length().toSeconds() > DAY;
  }

  /** Seconds from its start to a time of day, 0 to below a day. */
  double since(double secondOfDay) {
    double since = (secondOfDay - start.toSecondOfDay()) % DAY;
    return since < 0 ? since + DAY : since;
  }

  /** Whether its dial is off 0 at a time of day. */
  boolean lit(double secondOfDay) {
    return since(secondOfDay) < length().toSeconds();
  }

  /** The dial at a time of day as a share of where it stands, 0 to 1; 0 outside the spell. */
  double share(double secondOfDay) {
    double since = since(secondOfDay);
    double up = rampUp.toSeconds();
    double down = up + plateau.toSeconds();
    double end = down + rampDown.toSeconds();
    if (since < up) {
      return since / up;
    }
    if (since <= down) {
      return 1;
    }
    return since < end ? (end - since) / rampDown.toSeconds() : 0;
  }
}
