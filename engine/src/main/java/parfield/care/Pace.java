package parfield.care;

import java.util.Locale;

/**
 * How fast light is raised.
 *
 * <p>The paces by what is known of the past light are common practice, no source; the less is
 * known, the slower.
 *
 * @param rise greatest factor of a step, above 1
 * @param days how long each step is held, 1 or more
 */
public record Pace(double rise, int days) {
  public Pace {
    if (!(rise > 1 && rise <= 2) || days < 1) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "light is raised by a factor above 1 to 2 a step of 1 day or more; got %s, %d days",
              rise,
              days));
    }
  }

  /** What is known of the light that a coral had. */
  public enum Known {
    /** Read with a meter where it stood. */
    MEASURED("measured", 1.20, 7),
    /** Told by its keeper. */
    TOLD("told", 1.15, 7),
    /** Not known. */
    UNKNOWN("not known", 1.10, 10);

    private final String words;
    private final double rise;
    private final int days;

    Known(String words, double rise, int days) {
      this.words = words;
      this.rise = rise;
      this.days = days;
    }

    /** In a word or two. */
    public String words() {
      return words;
    }

    /** The pace that goes with it. */
    public Pace pace() {
      return new Pace(rise, days);
    }
  }

  /** The pace after a step back: half the rise in proportion, half as long again. */
  public Pace slower() {
    return new Pace(Math.sqrt(rise), days + (days + 1) / 2);
  }

  /** Steps that a factor needs, 0 if it is 1 or less. */
  public int steps(double factor) {
    return factor <= 1 ? 0 : (int) Math.ceil(Math.log(factor) / Math.log(rise) - 1e-9);
  }
}
