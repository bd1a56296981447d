package parfield.care;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Objects;
import java.util.Optional;

/**
 * Something that a person wants to be told of, in the tank's own local time. A reminder never
 * drives a fixture.
 *
 * @param identity what it is about, whatever its words and times are: the same when it is changed
 * @param title in one line
 * @param text more of it, may be empty
 * @param day first day
 * @param at time of day; empty for the whole day
 * @param length how long it lasts, above 0; whole days where {@code at} is empty
 * @param everyDays days from one to the next, 0 for once
 * @param until last day of a repetition; empty for ever
 * @param alert whether to call for attention
 */
public record Reminder(
    String identity,
    String title,
    String text,
    LocalDate day,
    Optional<LocalTime> at,
    Duration length,
    int everyDays,
    Optional<LocalDate> until,
    boolean alert) {
  public Reminder {
    Objects.requireNonNull(identity, "identity");
    Objects.requireNonNull(title, "title");
    Objects.requireNonNull(text, "text");
    Objects.requireNonNull(day, "day");
    Objects.requireNonNull(at, "at");
    Objects.requireNonNull(until, "until");
    if (length.isNegative() || length.isZero()) {
      throw new IllegalArgumentException("a reminder lasts more than no time; got " + length);
    }
    if (at.isEmpty() && length.toSeconds() % 86_400 != 0) {
      throw new IllegalArgumentException(
          "a reminder without a time of day lasts whole days; got " + Spans.words(length));
    }
    if (everyDays < 0 || (everyDays == 0 && until.isPresent())) {
      throw new IllegalArgumentException(
          "a reminder that comes once has no last day, and none comes every "
              + everyDays
              + " days");
    }
    if (until.isPresent() && until.get().isBefore(day)) {
      throw new IllegalArgumentException(
          "a reminder cannot end on " + until.get() + ", before it begins on " + day);
    }
  }
}
