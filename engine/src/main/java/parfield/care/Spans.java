package parfield.care;

import java.time.Duration;
import java.util.Locale;

/** Times and durations in words. */
public final class Spans {
  private Spans() {}

  /** As in {@code 10 h}, {@code 90 min} or {@code 10 h 30 min}. */
  public static String words(Duration duration) {
    long minutes = Math.round(duration.toSeconds() / 60.0);
    if (minutes % 60 == 0) {
      return String.format(Locale.ROOT, "%d h", minutes / 60);
    }
    return Math.abs(minutes) < 120
        ? String.format(Locale.ROOT, "%d min", minutes)
        : String.format(Locale.ROOT, "%d h %d min", minutes / 60, Math.abs(minutes % 60));
  }
}
