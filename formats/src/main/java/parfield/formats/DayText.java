package parfield.formats;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parfield.care.LitSpell;
import parfield.care.Spans;

/** Times of a daily program as a person writes them: in the setup, as options, in a page. */
public final class DayText {
  /** From when to when lamps are lit where nothing is said. */
  public static final String LIT = "10:00-20:00";

  /** How long ramps last where nothing is said. */
  public static final String RAMP = "1h";

  /** The word for a channel that stays dark. */
  public static final String OFF = "off";

  private static final String SPAN = "([0-9]{1,2}:[0-9]{2}) ?[-–] ?([0-9]{1,2}:[0-9]{2})";
  private static final Pattern ALL = Pattern.compile(SPAN);
  private static final Pattern ONE =
      Pattern.compile(
          SPAN + "(?:/([^/@]+))?(?:/([^/@]+))?(?:@([0-9]{1,3}(?:[.,][0-9]{1,3})?) ?%?)?");
  private static final Pattern TIME =
      Pattern.compile("(?:([0-9]{1,2}) ?h)? ?(?:([0-9]{1,4}) ?min)?|0");

  private DayText() {}

  /** A text that cannot be taken. */
  public static final class Misread extends Exception {
    private static final long serialVersionUID = 1L;

    private final String limit;
    private final String cure;

    Misread(String message, String limit, String cure) {
      super(message);
      this.limit = Objects.requireNonNull(limit, "limit");
      this.cure = Objects.requireNonNull(cure, "cure");
    }

    /** What is allowed, as a fault of a file says it. */
    public String limit() {
      return limit;
    }

    /** What to do. */
    public String cure() {
      return cure;
    }
  }

  /**
   * The spell that all channels have in common.
   *
   * @param channel which one
   * @param lit from when to when, ramps included; over midnight where the end is not after the
   *     start
   * @param ramp how long the dial climbs and falls
   */
  public static LitSpell common(String channel, String lit, Duration ramp) throws Misread {
    Matcher all = ALL.matcher(lit.strip());
    if (!all.matches()) {
      throw new Misread(
          "lamps are lit from a time to a time; got " + lit,
          "a time to a time",
          "write it as in " + LIT);
    }
    return spell(channel, all.group(1), all.group(2), ramp, ramp, 100);
  }

  /**
   * What differs for a channel.
   *
   * @param channel which one
   * @param text {@code FROM-TO/UP/DOWN@LEVEL} or {@code off}
   * @param ramp how long the dial climbs and falls where the text does not say
   * @return its spell, or none if it is off
   */
  public static List<LitSpell> spells(String channel, String text, Duration ramp) throws Misread {
    if (text.strip().equals(OFF)) {
      return List.of();
    }
    Matcher one = ONE.matcher(text.strip());
    if (!one.matches()) {
      throw new Misread(
          "a channel's day cannot be read: " + channel + "=" + text,
          "FROM-TO/UP/DOWN@LEVEL or off",
          "write it as in 09:00-21:00/2h/1h@60, ramps and level only if they differ, or off");
    }
    Duration up = one.group(3) == null ? ramp : time(one.group(3));
    Duration down = one.group(4) == null ? up : time(one.group(4));
    double level = one.group(5) == null ? 100 : Double.parseDouble(one.group(5).replace(',', '.'));
    return List.of(spell(channel, one.group(1), one.group(2), up, down, level));
  }

  private static LitSpell spell(
      String channel, String from, String to, Duration up, Duration down, double level)
      throws Misread {
    LocalTime start = clock(from);
    int seconds = clock(to).toSecondOfDay() - start.toSecondOfDay();
    Duration all = Duration.ofSeconds(seconds > 0 ? seconds : seconds + 86_400);
    Duration plateau = all.minus(up).minus(down);
    if (plateau.isNegative()) {
      String ramps = Spans.words(up) + " and " + Spans.words(down);
      throw new Misread(
          String.format(
              Locale.ROOT,
              "channel %s is lit for %s, which is shorter than its ramps of %s",
              channel,
              Spans.words(all),
              ramps),
          "a spell no shorter than its ramps of " + ramps,
          "make the ramps shorter or the day longer");
    }
    if (level > 100) {
      throw new Misread(
          String.format(
              Locale.ROOT,
              "channel %s: its level runs from 0 to 100 %% of what the rig dials; got %s",
              channel,
              NumberText.shown(level)),
          "a level of what the rig dials, 0 to 100 %",
          "dial the rig higher instead");
    }
    return new LitSpell(channel, start, up, plateau, down, level);
  }

  private static LocalTime clock(String text) throws Misread {
    try {
      return LocalTime.parse(text.length() == 4 ? "0" + text : text);
    } catch (DateTimeException e) {
      throw new Misread(
          "a time of day runs from 00:00 to 23:59; got " + text,
          "times from 00:00 to 23:59",
          "write it as in 10:00");
    }
  }

  /** How long something lasts, as in {@code 1h}, {@code 90min}, {@code 1h 30min} or {@code 0}. */
  public static Duration time(String text) throws Misread {
    Matcher time = TIME.matcher(text.strip());
    if (text.isBlank() || !time.matches()) {
      throw new Misread(
          "a ramp lasts hours and minutes; got " + text,
          "hours and minutes",
          "write 1h, 90min, 1h 30min or 0");
    }
    long hours = time.group(1) == null ? 0 : Long.parseLong(time.group(1));
    long minutes = time.group(2) == null ? 0 : Long.parseLong(time.group(2));
    return Duration.ofMinutes(60 * hours + minutes);
  }
}
