package parfield.web.measure;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;

/**
 * How light or meter changed while a survey was taken: the first point, read again and again.
 *
 * @param perHour relative change [1/h], above 0 if the values grow
 * @param error standard error of it [1/h], from the meter's repeat error
 * @param readings how many it rests on, the first one included
 * @param span between the first and the last of them
 */
public record Drift(double perHour, double error, int readings, Duration span) {
  /** Shorter spans say nothing about an hour. */
  private static final Duration LEAST = Duration.ofMinutes(1);

  private static final double HOUR = 3600;

  /** Standard errors beyond which a drift is told as one. */
  private static final double CLEAR = 2;

  /**
   * One reading of the first point.
   *
   * @param when it was taken
   * @param value that the meter showed, 0 or more
   */
  public record At(Instant when, double value) {
    public At {
      Objects.requireNonNull(when, "when");
    }
  }

  public Drift {
    Objects.requireNonNull(span, "span");
  }

  /**
   * The slope of a straight line through the readings over their mean, each weighed the same.
   *
   * @param series of the first point, at least two at a minute's distance or more
   * @param repeatError standard relative error of each reading, 0 or more
   * @return the drift; empty if the readings are too few, too close or all 0
   */
  public static Optional<Drift> of(List<At> series, double repeatError) {
    if (series.size() < 2) {
      return Optional.empty();
    }
    Instant first = series.stream().map(At::when).min(Instant::compareTo).orElseThrow();
    Instant last = series.stream().map(At::when).max(Instant::compareTo).orElseThrow();
    Duration span = Duration.between(first, last);
    double mean = series.stream().mapToDouble(At::value).average().orElseThrow();
    if (span.compareTo(LEAST) < 0 || !(mean > 0)) {
      return Optional.empty();
    }
    double[] hours =
        series.stream()
            .mapToDouble(at -> Duration.between(first, at.when()).toMillis() / 1000.0 / HOUR)
            .toArray();
    double middle = Arrays.stream(hours).average().orElseThrow();
    double squares = 0;
    double products = 0;
    for (int i = 0; i < hours.length; i++) {
      squares += (hours[i] - middle) * (hours[i] - middle);
      products += (hours[i] - middle) * (series.get(i).value() / mean - 1);
    }
    return Optional.of(
        new Drift(products / squares, repeatError / Math.sqrt(squares), series.size(), span));
  }

  /** Whether it is more than the meter's own repeat error makes of nothing. */
  public boolean clear() {
    return Math.abs(perHour) > CLEAR * error;
  }

  /** What it means, in one sentence. */
  public String words() {
    String rate =
        String.format(Locale.ROOT, "%+.1f ± %.1f %% per hour", 100 * perHour, 100 * error);
    long minutes = Math.max(1, Math.round(span.toSeconds() / 60.0));
    String basis =
        String.format(Locale.ROOT, " (first point read %d times in %d min)", readings, minutes);
    if (!clear()) {
      return rate + basis + ": no more than the meter's repeat error explains.";
    }
    double change = 100 * perHour * span.toMillis() / 1000.0 / HOUR;
    return rate
        + basis
        + String.format(
            Locale.ROOT,
            ": the light or the meter changed by %+.1f %% meanwhile. Let the lamp warm up, then"
                + " read the first places again.",
            change);
  }
}
