package parfield.answer;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parfield.care.DailyProgram;
import parfield.care.LitSpell;
import parfield.care.Spans;
import parfield.formats.Nearest;
import parfield.rig.Rig;

/** A daily program as a person types it, on the command line as in a page. */
public final class AskedDay {
  /** From when to when lamps are lit where nothing is said. */
  public static final String LIT = "10:00-20:00";

  /** How long ramps last where nothing is said. */
  public static final String RAMP = "1h";

  private static final String SPAN = "([0-9]{1,2}:[0-9]{2}) ?[-–] ?([0-9]{1,2}:[0-9]{2})";
  private static final Pattern ALL = Pattern.compile(SPAN);
  private static final Pattern ONE =
      Pattern.compile(
          "([^=]+)=(?:off|"
              + SPAN
              + "(?:/([^/@]+))?(?:/([^/@]+))?(?:@([0-9]{1,3}(?:[.,][0-9]{1,3})?) ?%?)?)");
  private static final Pattern TIME =
      Pattern.compile("(?:([0-9]{1,2}) ?h)? ?(?:([0-9]{1,4}) ?min)?|0");

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
    Matcher all = ALL.matcher(lit.strip());
    if (!all.matches()) {
      throw Refusal.of("lamps are lit from a time to a time; got " + lit, "write it as in " + LIT);
    }
    List<String> known = DailyProgram.channels(rig);
    Map<String, List<LitSpell>> spells = new LinkedHashMap<>();
    Duration evenly = time(ramp);
    boolean common = channels.isEmpty();
    Map<String, List<LitSpell>> stated = new LinkedHashMap<>();
    for (String text : channels) {
      stated(rig, text, evenly, known, stated);
    }
    for (String channel : known) {
      if (stated.containsKey(channel)) {
        spells.put(channel, stated.get(channel));
      } else {
        spells.put(
            channel, List.of(spell(channel, all.group(1), all.group(2), evenly, evenly, 100)));
      }
    }
    List<LitSpell> every = spells.values().stream().flatMap(List::stream).toList();
    if (every.isEmpty()) {
      throw Refusal.of(
          "every channel is off: there is no light to tell of",
          common ? "dial the rig" : "leave out one of the channels that are off");
    }
    return program(every);
  }

  private static DailyProgram program(List<LitSpell> spells) {
    try {
      return new DailyProgram(spells);
    } catch (IllegalArgumentException e) {
      throw Refusal.of(e.getMessage());
    }
  }

  private static void stated(
      Rig rig, String text, Duration ramp, List<String> known, Map<String, List<LitSpell>> stated) {
    Matcher one = ONE.matcher(text.strip());
    if (!one.matches()) {
      throw Refusal.of(
          "a channel's day cannot be read: " + text,
          "write NAME=FROM-TO, with ramps and level if they differ, as in"
              + " violet=09:00-21:00/2h/1h@60, or NAME=off");
    }
    String channel = one.group(1).strip();
    if (!known.contains(channel)) {
      throw Refusal.of(
          String.format(Locale.ROOT, "%s is no channel of rig %s", channel, rig.name()),
          Nearest.of(channel, known)
              .map(nearest -> "did you mean " + nearest + "?")
              .orElse("its channels are " + String.join(", ", known)));
    }
    List<LitSpell> spells = stated.computeIfAbsent(channel, name -> new ArrayList<>());
    if (one.group(2) != null) {
      Duration up = one.group(4) == null ? ramp : time(one.group(4));
      Duration down = one.group(5) == null ? up : time(one.group(5));
      double level =
          one.group(6) == null ? 100 : Double.parseDouble(one.group(6).replace(',', '.'));
      spells.add(spell(channel, one.group(2), one.group(3), up, down, level));
    }
  }

  private static LitSpell spell(
      String channel, String from, String to, Duration up, Duration down, double level) {
    LocalTime start = clock(from);
    int seconds = clock(to).toSecondOfDay() - start.toSecondOfDay();
    Duration all = Duration.ofSeconds(seconds > 0 ? seconds : seconds + 86_400);
    Duration plateau = all.minus(up).minus(down);
    if (plateau.isNegative()) {
      throw Refusal.of(
          String.format(
              Locale.ROOT,
              "channel %s is lit for %s, which is shorter than its ramps of %s and %s",
              channel,
              Spans.words(all),
              Spans.words(up),
              Spans.words(down)),
          "make the ramps shorter or the day longer");
    }
    try {
      return new LitSpell(channel, start, up, plateau, down, level);
    } catch (IllegalArgumentException e) {
      throw Refusal.of(e.getMessage());
    }
  }

  private static LocalTime clock(String text) {
    try {
      return LocalTime.parse(text.length() == 4 ? "0" + text : text);
    } catch (DateTimeException e) {
      throw Refusal.of(
          "a time of day runs from 00:00 to 23:59; got " + text, "write it as in 10:00");
    }
  }

  /** How long something lasts, as in {@code 1h}, {@code 90min}, {@code 1h 30min} or {@code 0}. */
  static Duration time(String text) {
    Matcher time = TIME.matcher(text.strip());
    if (text.isBlank() || !time.matches()) {
      throw Refusal.of(
          "a ramp lasts hours and minutes; got " + text, "write 1h, 90min, 1h 30min or 0");
    }
    long hours = time.group(1) == null ? 0 : Long.parseLong(time.group(1));
    long minutes = time.group(2) == null ? 0 : Long.parseLong(time.group(2));
    return Duration.ofMinutes(60 * hours + minutes);
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
