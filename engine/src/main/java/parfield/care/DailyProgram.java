package parfield.care;

import java.time.Duration;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import parfield.lamp.Channel;
import parfield.rig.Hanging;
import parfield.rig.Rig;

/**
 * When each channel is lit, every day alike. Channels may overlap; a channel may be lit in several
 * spells, which may not; a channel that is not named stays dark.
 *
 * @param spells in the order in which they were stated, at least one
 */
public record DailyProgram(List<LitSpell> spells) {
  public DailyProgram {
    spells = List.copyOf(spells);
    if (spells.isEmpty()) {
      throw new IllegalArgumentException(
          "a daily program needs at least one lit spell; got none: state when a channel is lit");
    }
    for (int i = 0; i < spells.size(); i++) {
      for (int j = 0; j < i; j++) {
        LitSpell one = spells.get(j);
        LitSpell other = spells.get(i);
        if (one.channel().equals(other.channel()) && overlap(one, other)) {
          throw new IllegalArgumentException(
              String.format(
                  Locale.ROOT,
                  "channel %s is lit twice at one time: from %s to %s and from %s to %s; let one"
                      + " spell end before the next begins",
                  one.channel(),
                  one.start(),
                  one.end(),
                  other.start(),
                  other.end()));
        }
      }
    }
  }

  private static boolean overlap(LitSpell one, LitSpell other) {
    return one.since(other.start().toSecondOfDay()) < one.length().toSeconds()
        || other.since(one.start().toSecondOfDay()) < other.length().toSeconds();
  }

  /** All channels of a rig together: one spell for all, at the rig's own setting. */
  public static DailyProgram together(
      Rig rig, LocalTime start, Duration rampUp, Duration plateau, Duration rampDown) {
    return new DailyProgram(
        channels(rig).stream()
            .map(channel -> new LitSpell(channel, start, rampUp, plateau, rampDown, 100))
            .toList());
  }

  /** Names of the channels of a rig, in the order of its fixtures. */
  public static List<String> channels(Rig rig) {
    Set<String> names = new LinkedHashSet<>();
    for (Hanging hanging : rig.hangings()) {
      hanging.fixture().channels().stream().map(Channel::name).forEach(names::add);
    }
    return List.copyOf(names);
  }

  /** This program with the spells of one channel replaced. */
  public DailyProgram with(String channel, List<LitSpell> instead) {
    List<LitSpell> all = new ArrayList<>();
    spells.stream().filter(spell -> !spell.channel().equals(channel)).forEach(all::add);
    all.addAll(instead);
    return new DailyProgram(all);
  }

  /**
   * Checks that a rig has every channel that is named.
   *
   * @throws IllegalArgumentException if it lacks one; the message names it and those there are
   */
  public void requireChannels(Rig rig) {
    List<String> known = channels(rig);
    for (LitSpell spell : spells) {
      if (!known.contains(spell.channel())) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "the daily program lights %s, which is no channel of rig %s; its channels are %s",
                spell.channel(),
                rig.name(),
                String.join(", ", known)));
      }
    }
  }

  /** How long any channel is lit, ramps included: the photoperiod. */
  public Duration photoperiod() {
    List<Double> edges = new ArrayList<>(edges());
    double lit = 0;
    for (int i = 0; i < edges.size(); i++) {
      double from = edges.get(i);
      double to = i + 1 < edges.size() ? edges.get(i + 1) : edges.get(0) + LitSpell.DAY;
      double middle = ((from + to) / 2) % LitSpell.DAY;
      if (spells.stream().anyMatch(spell -> spell.level() > 0 && spell.lit(middle))) {
        lit += to - from;
      }
    }
    return Duration.ofSeconds(Math.round(lit));
  }

  /** Seconds of the day at which a ramp or plateau begins or ends, ascending. */
  TreeSet<Double> edges() {
    TreeSet<Double> edges = new TreeSet<>();
    for (LitSpell spell : spells) {
      double at = spell.start().toSecondOfDay();
      for (Duration part :
          List.of(Duration.ZERO, spell.rampUp(), spell.plateau(), spell.rampDown())) {
        at += part.toSeconds();
        edges.add(at % LitSpell.DAY);
      }
    }
    return edges;
  }
}
