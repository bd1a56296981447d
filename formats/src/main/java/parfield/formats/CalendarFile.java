package parfield.formats;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import parfield.care.Reminder;

/**
 * Reminders as an iCalendar document (RFC 5545), for any calendar program.
 *
 * <p>Times are floating: the local time of whoever reads it, without a time zone, as lamps run by
 * the clock on the wall. The UID of a reminder follows from its identity alone, so that a later
 * document with a higher revision replaces it instead of standing beside it.
 */
public final class CalendarFile {
  /** Octets of a line without its end (RFC 5545, section 3.1). */
  private static final int LINE = 75;

  private static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss", Locale.ROOT);
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("yyyyMMdd", Locale.ROOT);

  private CalendarFile() {}

  /**
   * The document.
   *
   * @param name of the calendar, for people
   * @param reminders what it holds
   * @param stamp when it is made
   * @param revision of the reminders, 0 or more, rising with every change (SEQUENCE)
   * @return the text, lines ending in CR LF
   */
  public static String text(String name, List<Reminder> reminders, Instant stamp, int revision) {
    if (revision < 0) {
      throw new IllegalArgumentException(
          "a calendar's revision must be 0 or more; got " + revision);
    }
    Lines lines = new Lines();
    lines.add("BEGIN:VCALENDAR");
    lines.add("VERSION:2.0");
    lines.add("PRODID:-//Parfield//Parfield//EN");
    lines.add("CALSCALE:GREGORIAN");
    lines.add("NAME:" + escaped(name));
    for (Reminder reminder : reminders) {
      event(lines, reminder, TIME.format(stamp.atOffset(ZoneOffset.UTC)) + "Z", revision);
    }
    lines.add("END:VCALENDAR");
    return lines.text.toString();
  }

  private static void event(Lines lines, Reminder reminder, String stamp, int revision) {
    lines.add("BEGIN:VEVENT");
    lines.add("UID:" + uid(reminder));
    lines.add("DTSTAMP:" + stamp);
    lines.add("SEQUENCE:" + revision);
    if (reminder.at().isPresent()) {
      LocalDateTime start = reminder.day().atTime(reminder.at().get());
      lines.add("DTSTART:" + TIME.format(start));
      lines.add("DTEND:" + TIME.format(start.plus(reminder.length())));
    } else {
      LocalDate end = reminder.day().plusDays(reminder.length().toDays());
      lines.add("DTSTART;VALUE=DATE:" + DATE.format(reminder.day()));
      lines.add("DTEND;VALUE=DATE:" + DATE.format(end));
    }
    if (reminder.everyDays() > 0) {
      lines.add("RRULE:FREQ=DAILY" + interval(reminder) + until(reminder));
    }
    lines.add("SUMMARY:" + escaped(reminder.title()));
    if (!reminder.text().isEmpty()) {
      lines.add("DESCRIPTION:" + escaped(reminder.text()));
    }
    lines.add("TRANSP:TRANSPARENT");
    if (reminder.alert()) {
      lines.add("BEGIN:VALARM");
      lines.add("ACTION:DISPLAY");
      lines.add("DESCRIPTION:" + escaped(reminder.title()));
      // At nine in the morning of a whole day, else as it begins.
      lines.add("TRIGGER;RELATED=START:" + (reminder.at().isEmpty() ? "PT9H" : "PT0S"));
      lines.add("END:VALARM");
    }
    lines.add("END:VEVENT");
  }

  private static String interval(Reminder reminder) {
    return reminder.everyDays() == 1 ? "" : ";INTERVAL=" + reminder.everyDays();
  }

  /** The end of a repetition, of the same type as its start (RFC 5545, section 3.3.10). */
  private static String until(Reminder reminder) {
    return reminder
        .until()
        .map(
            last ->
                ";UNTIL="
                    + reminder
                        .at()
                        .map(at -> TIME.format(last.atTime(at)))
                        .orElseGet(() -> DATE.format(last)))
        .orElse("");
  }

  private static String uid(Reminder reminder) {
    return UUID.nameUUIDFromBytes(
            ("parfield|" + reminder.identity()).getBytes(StandardCharsets.UTF_8))
        .toString();
  }

  /** A value of type TEXT (RFC 5545, section 3.3.11); control characters have no place in it. */
  static String escaped(String text) {
    return text.replace("\\", "\\\\")
        .replace(";", "\\;")
        .replace(",", "\\,")
        .replaceAll("\r\n|\r|\n", "\\\\n")
        .replaceAll("[\\x00-\\x08\\x0B-\\x1F\\x7F]", "");
  }

  /** Content lines, folded. */
  private static final class Lines {
    private final StringBuilder text = new StringBuilder();

    void add(String line) {
      int octets = 0;
      for (int i = 0; i < line.length(); ) {
        int point = line.codePointAt(i);
        int width = Character.toString(point).getBytes(StandardCharsets.UTF_8).length;
        if (octets + width > LINE) {
          text.append("\r\n ");
          octets = 1;
        }
        text.appendCodePoint(point);
        octets += width;
        i += Character.charCount(point);
      }
      text.append("\r\n");
    }
  }
}
