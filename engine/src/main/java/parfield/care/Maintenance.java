package parfield.care;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/**
 * How light falls with time: lamps age, panes and lids get dirty. All of it is an assumption that a
 * person states, not a finding of this program; the defaults are common practice, no source.
 *
 * @param litPerDay hours a day that lamps age [h], 0 to 24
 * @param lifeHours lit hours after which {@code lifeShare} of the light is left, above 0
 * @param lifeShare share of the first light, above 0 to 1: 0.7 at what is called L70
 * @param dirtPerWeek share of the light that is lost to dirt and salt in a week, 0 to below 1
 * @param cleanEveryDays days from one cleaning to the next, 1 or more
 */
public record Maintenance(
    double litPerDay, double lifeHours, double lifeShare, double dirtPerWeek, int cleanEveryDays) {
  private static final int FURTHEST = 36_500;

  public Maintenance {
    if (!(litPerDay >= 0 && litPerDay <= 24)) {
      throw fault("lamps are lit 0 to 24 h a day", litPerDay);
    }
    if (!(lifeHours > 0)) {
      throw fault("a life must be above 0 h", lifeHours);
    }
    if (!(lifeShare > 0 && lifeShare <= 1)) {
      throw fault("the share of light at the end of a life must be above 0, at most 1", lifeShare);
    }
    if (!(dirtPerWeek >= 0 && dirtPerWeek < 1)) {
      throw fault("the share lost to dirt in a week must be 0 or more, below 1", dirtPerWeek);
    }
    if (cleanEveryDays < 1) {
      throw fault("days between cleanings must be 1 or more", cleanEveryDays);
    }
  }

  private static IllegalArgumentException fault(String rule, double got) {
    return new IllegalArgumentException(String.format(Locale.ROOT, "%s; got %s", rule, got));
  }

  /** What is taken where nothing is stated: L70 at 50 000 h, 1 % a week, cleaned every 4 weeks. */
  public static Maintenance common(double litPerDay) {
    return new Maintenance(litPerDay, 50_000, 0.7, 0.01, 28);
  }

  /** The assumption as a sentence. */
  public String inWords() {
    return String.format(
        Locale.ROOT,
        "assumed, not measured: %.0f %% of the light is left after %.0f lit hours at %.1f h a day,"
            + " dirt takes %.1f %% a week, and lamps and lids are cleaned every %d days",
        100 * lifeShare,
        lifeHours,
        litPerDay,
        100 * dirtPerWeek,
        cleanEveryDays);
  }

  /**
   * Light on a day over light on the day of the readings, when everything was clean: the
   * maintenance factor.
   *
   * @param read day of the readings
   * @param day not before it
   */
  public double factor(LocalDate read, LocalDate day) {
    long days = ChronoUnit.DAYS.between(read, day);
    if (days < 0) {
      throw new IllegalArgumentException(
          String.format("light is told from the day of the readings on, %s; got %s", read, day));
    }
    return factor(days);
  }

  /** What age alone leaves of the light after some days, 0 or more. */
  public double age(long days) {
    return Math.pow(lifeShare, days * litPerDay / lifeHours);
  }

  /** What dirt leaves of the light just before a cleaning. */
  public double dirtiest() {
    return Math.pow(1 - dirtPerWeek, cleanEveryDays / 7.0);
  }

  private double factor(long days) {
    return age(days) * Math.pow(1 - dirtPerWeek, (days % cleanEveryDays) / 7.0);
  }

  /**
   * The first day on which the lamps' age alone has taken the light below a share: time to read
   * again, as cleaning does not bring it back.
   *
   * @param read day of the readings
   * @param share above 0, below 1
   * @return that day, or a day in a hundred years where it does not come before
   */
  public LocalDate agedBelow(LocalDate read, double share) {
    if (!(share > 0 && share < 1)) {
      throw fault("a share to wait for must be above 0, below 1", share);
    }
    double perDay = litPerDay / lifeHours * Math.log(lifeShare);
    double days = perDay == 0 ? FURTHEST : Math.ceil(Math.log(share) / perDay);
    return read.plusDays((long) Math.min(FURTHEST, days));
  }
}
