package parfield.answer;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import parfield.care.DailyProgram;
import parfield.care.LitSpell;
import parfield.care.Spans;
import parfield.formats.DayText;
import parfield.formats.Nearest;
import parfield.formats.StatedDay;
import parfield.rig.Rig;

/** A daily program as a person types it, on the command line as in a page. */
public final class AskedDay {
  private AskedDay() {}

  /**
   * The program.
   *
   * @param rig whose channels are lit
   * @param lit from when to when, ramps included, as in {@code 10:00-20:00}; over midnight where
   *     the end is not after the start
   * @param ramp how long dials climb and fall, as in {@code 90min}
   * @param channels what differs, one text each: {@code NAME=FROM-TO/UP/DOWN@LEVEL} or {@code
   *     NAME=off}; several of one name are several spells
   * @throws Refusal if a text cannot be read; it says how to write it
   */
  public static DailyProgram program(Rig rig, String lit, String ramp, List<String> channels) {
    List<String> known = DailyProgram.channels(rig);
    Map<String, List<LitSpell>> stated = new LinkedHashMap<>();
    List<LitSpell> every = new ArrayList<>();
    try {
      DayText.common("every channel", lit, Duration.ZERO);
      Duration evenly = DayText.time(ramp);
      for (String text : channels) {
        stated(rig, text, evenly, known, stated);
      }
      for (String channel : known) {
        every.addAll(
            stated.containsKey(channel)
                ? stated.get(channel)
                : List.of(DayText.common(channel, lit, evenly)));
      }
    } catch (DayText.Misread e) {
      throw Refusal.of(e.getMessage(), e.cure());
    }
    if (every.isEmpty()) {
      throw Refusal.of(
          "every channel is off: there is no light to tell of",
          channels.isEmpty() ? "dial the rig" : "leave out one of the channels that are off");
    }
    return program(every);
  }

  /** What is stated of the day, or what is usual. */
  public static StatedDay stated(Bench bench) {
    return bench.setup().day().orElse(StatedDay.USUAL);
  }

  /**
   * What the bench states of a rig's channels, as a person would type it; channels that are asked
   * about anew, and those that the rig does not have, are left out.
   */
  public static List<String> channels(Bench bench, Rig rig, List<String> anew) {
    List<String> known = DailyProgram.channels(rig);
    Set<String> named =
        anew.stream()
            .filter(text -> text.contains("="))
            .map(text -> text.substring(0, text.lastIndexOf('=')).strip())
            .collect(Collectors.toSet());
    List<String> all = new ArrayList<>();
    stated(bench)
        .channels()
        .forEach(
            (name, texts) -> {
              if (known.contains(name) && !named.contains(name)) {
                texts.forEach(text -> all.add(name + "=" + text));
              }
            });
    all.addAll(anew);
    return all;
  }

  private static DailyProgram program(List<LitSpell> spells) {
    try {
      return new DailyProgram(spells);
    } catch (IllegalArgumentException e) {
      throw Refusal.of(e.getMessage());
    }
  }

  private static void stated(
      Rig rig, String text, Duration ramp, List<String> known, Map<String, List<LitSpell>> stated)
      throws DayText.Misread {
    int equals = text.lastIndexOf('=');
    if (equals < 1) {
      throw Refusal.of(
          "a channel's day cannot be read: " + text,
          "write NAME=FROM-TO, with ramps and level if they differ, as in"
              + " violet=09:00-21:00/2h/1h@60, or NAME=off");
    }
    String channel = text.substring(0, equals).strip();
    if (!known.contains(channel)) {
      throw Refusal.of(
          String.format(Locale.ROOT, "%s is no channel of rig %s", channel, rig.name()),
          Nearest.of(channel, known)
              .map(nearest -> "did you mean " + nearest + "?")
              .orElse("its channels are " + String.join(", ", known)));
    }
    List<LitSpell> spells = DayText.spells(channel, text.substring(equals + 1), ramp);
    stated.computeIfAbsent(channel, name -> new ArrayList<>()).addAll(spells);
  }

  /** The program as a sentence for each spell. */
  static List<String> words(DailyProgram program) {
    return program.spells().stream()
        .map(
            spell ->
                String.format(
                    Locale.ROOT,
                    "%s: %s to %s%s, up in %s, there for %s, down in %s, at %s %% of what the rig"
                        + " dials",
                    spell.channel(),
                    spell.start(),
                    spell.end(),
                    spell.crossesMidnight() ? " of the next day" : "",
                    Spans.words(spell.rampUp()),
                    Spans.words(spell.plateau()),
                    Spans.words(spell.rampDown()),
                    Numbers.plain(spell.level(), 1)))
        .toList();
  }
}
