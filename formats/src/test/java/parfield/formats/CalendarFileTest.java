package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import biweekly.Biweekly;
import biweekly.ICalendar;
import biweekly.component.VEvent;
import biweekly.io.text.ICalReader;
import biweekly.util.Frequency;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TimeZone;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.care.Reminder;

/** Calendars: against RFC 5545 and its examples, and as another library reads them. */
class CalendarFileTest {
  private static final Instant STAMP = Instant.parse("2026-11-30T04:05:06Z");
  private static final LocalDate DAY = LocalDate.of(1997, 9, 2);

  private static Reminder daily(String title, String text, Optional<LocalDate> until) {
    return new Reminder(
        "bench|blue",
        title,
        text,
        DAY,
        Optional.of(LocalTime.of(22, 30)),
        Duration.ofMinutes(330),
        1,
        until,
        false);
  }

  private static Reminder whole(String identity, int every) {
    return new Reminder(
        identity,
        "Step",
        "",
        DAY,
        Optional.empty(),
        Duration.ofDays(1),
        every,
        Optional.empty(),
        true);
  }

  private static String text(Reminder... reminders) {
    return CalendarFile.text("Tank", List.of(reminders), STAMP, 3);
  }

  private static ICalendar read(String text) throws IOException {
    try (ICalReader reader = new ICalReader(text)) {
      ICalendar calendar = reader.readNext();
      assertThat(reader.getWarnings()).isEmpty();
      return calendar;
    }
  }

  private static LocalDateTime local(Date date) {
    return LocalDateTime.ofInstant(date.toInstant(), ZoneId.systemDefault());
  }

  @Test
  void theWholeDocument() {
    assertThat(text(daily("blue at 60 %", "Dial; look, and wait.", Optional.of(DAY.plusDays(6)))))
        .isEqualTo(
            String.join(
                "\r\n",
                "BEGIN:VCALENDAR",
                "VERSION:2.0",
                "PRODID:-//Parfield//Parfield//EN",
                "CALSCALE:GREGORIAN",
                "NAME:Tank",
                "BEGIN:VEVENT",
                "UID:" + uid("bench|blue"),
                "DTSTAMP:20261130T040506Z",
                "SEQUENCE:3",
                "DTSTART:19970902T223000",
                "DTEND:19970903T040000",
                "RRULE:FREQ=DAILY;UNTIL=19970908T223000",
                "SUMMARY:blue at 60 %",
                "DESCRIPTION:Dial\\; look\\, and wait.",
                "TRANSP:TRANSPARENT",
                "END:VEVENT",
                "END:VCALENDAR",
                ""));
  }

  private static String uid(String identity) {
    return java.util
        .UUID
        .nameUUIDFromBytes(("parfield|" + identity).getBytes(StandardCharsets.UTF_8))
        .toString();
  }

  @Test
  @DisplayName(
      "another library reads what was written, times floating, and finds nothing to warn of")
  void anotherLibraryReadsIt() throws IOException {
    ICalendar calendar =
        read(
            text(
                daily("blue at 60 %", "Dial; look, and\nwait \\ on.", Optional.of(DAY.plusDays(6))),
                whole("bench|step|1", 0),
                whole("bench|cleaning", 28)));

    assertThat(calendar.validate(biweekly.ICalVersion.V2_0).isEmpty())
        .as(calendar.validate(biweekly.ICalVersion.V2_0).toString())
        .isTrue();
    VEvent blue = calendar.getEvents().get(0);
    assertThat(blue.getSummary().getValue()).isEqualTo("blue at 60 %");
    assertThat(blue.getDescription().getValue()).isEqualTo("Dial; look, and\nwait \\ on.");
    assertThat(local(blue.getDateStart().getValue()))
        .isEqualTo(LocalDateTime.of(1997, 9, 2, 22, 30));
    assertThat(local(blue.getDateEnd().getValue())).isEqualTo(LocalDateTime.of(1997, 9, 3, 4, 0));
    assertThat(calendar.getTimezoneInfo().isFloating(blue.getDateStart())).isTrue();
    assertThat(blue.getDateTimeStamp().getValue().toInstant()).isEqualTo(STAMP);
    assertThat(blue.getSequence().getValue()).isEqualTo(3);
    assertThat(blue.getRecurrenceRule().getValue().getFrequency()).isEqualTo(Frequency.DAILY);
    List<LocalDateTime> all = new ArrayList<>();
    blue.getDateIterator(TimeZone.getDefault()).forEachRemaining(date -> all.add(local(date)));
    assertThat(all).hasSize(7);
    assertThat(all.get(6)).isEqualTo(LocalDateTime.of(1997, 9, 8, 22, 30));

    VEvent step = calendar.getEvents().get(1);
    assertThat(step.getDateStart().getValue().hasTime()).isFalse();
    assertThat(local(step.getDateEnd().getValue()).toLocalDate()).isEqualTo(DAY.plusDays(1));
    assertThat(step.getAlarms()).hasSize(1);
    assertThat(calendar.getEvents().get(2).getRecurrenceRule().getValue().getInterval())
        .isEqualTo(28);
  }

  /**
   * RFC 5545, section 3.1: a line longer than 75 octets is split by CRLF and one white space, and
   * unfolding takes both away; a character of several octets is not split here.
   */
  @Test
  void longLinesAreFoldedByOctets() throws IOException {
    SplittableRandom random = new SplittableRandom(5545);
    String letters = "aäµ⁻€漢😀 ,;\\";
    int[] points = letters.codePoints().toArray();
    for (int run = 0; run < 200; run++) {
      StringBuilder value = new StringBuilder("x");
      for (int i = random.nextInt(300); i > 0; i--) {
        value.appendCodePoint(points[random.nextInt(points.length)]);
      }
      value.append('x');
      String text = text(daily("title", value.toString(), Optional.empty()));
      for (String line : text.split("\r\n", -1)) {
        assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75);
        assertThat(new String(line.getBytes(StandardCharsets.UTF_8), StandardCharsets.UTF_8))
            .isEqualTo(line);
      }
      assertThat(text.replace("\r\n", "")).doesNotContain("\n").doesNotContain("\r");
      assertThat(read(text).getEvents().get(0).getDescription().getValue())
          .isEqualTo(value.toString());
    }
  }

  /** RFC 5545, section 3.3.11: "Project XYZ Final Review\nConference Room - 3B\nCome Prepared." */
  @Test
  void textIsEscapedAsInTheStandardsExample() {
    assertThat(
            CalendarFile.escaped(
                "Project XYZ Final Review\nConference Room - 3B\r\nCome Prepared."))
        .isEqualTo("Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.");
    assertThat(CalendarFile.escaped("a;b,c\\d\u0000\u0007e")).isEqualTo("a\\;b\\,c\\\\de");
  }

  /**
   * RFC 5545, section 3.6.1, an all-day reminder of several days and a daily rule of 3.8.5.3
   * ("RRULE:FREQ=DAILY;INTERVAL=2", every other day): the other library makes the same of the
   * standard's text and of ours.
   */
  @Test
  void theStandardsExamplesMeanTheSame() throws IOException {
    ICalendar standard =
        Biweekly.parse(
                String.join(
                    "\r\n",
                    "BEGIN:VCALENDAR",
                    "VERSION:2.0",
                    "PRODID:-//ABC Corporation//NONSGML My Product//EN",
                    "BEGIN:VEVENT",
                    "UID:20070423T123432Z-541111@example.com",
                    "DTSTAMP:20070423T123432Z",
                    "DTSTART;VALUE=DATE:20070628",
                    "DTEND;VALUE=DATE:20070709",
                    "SUMMARY:Festival International de Jazz de Montreal",
                    "TRANSP:TRANSPARENT",
                    "RRULE:FREQ=DAILY;INTERVAL=2",
                    "END:VEVENT",
                    "END:VCALENDAR",
                    ""))
            .first();
    Reminder festival =
        new Reminder(
            "festival",
            "Festival International de Jazz de Montreal",
            "",
            LocalDate.of(2007, 6, 28),
            Optional.empty(),
            Duration.ofDays(11),
            2,
            Optional.empty(),
            false);
    VEvent theirs = standard.getEvents().get(0);
    VEvent ours =
        read(CalendarFile.text("x", List.of(festival), Instant.parse("2007-04-23T12:34:32Z"), 0))
            .getEvents()
            .get(0);

    assertThat(ours.getDateStart()).isEqualTo(theirs.getDateStart());
    assertThat(ours.getDateEnd()).isEqualTo(theirs.getDateEnd());
    assertThat(ours.getDateTimeStamp()).isEqualTo(theirs.getDateTimeStamp());
    assertThat(ours.getSummary()).isEqualTo(theirs.getSummary());
    assertThat(ours.getRecurrenceRule()).isEqualTo(theirs.getRecurrenceRule());
    assertThat(ours.getTransparency()).isEqualTo(theirs.getTransparency());
  }

  @Test
  @DisplayName("a UID follows from the identity alone: a changed reminder replaces the old one")
  void uidsAreStable() throws IOException {
    String before = read(text(whole("bench|step|1", 0))).getEvents().get(0).getUid().getValue();
    String after =
        read(CalendarFile.text("other", List.of(whole("bench|step|1", 7)), STAMP.plusSeconds(9), 4))
            .getEvents()
            .get(0)
            .getUid()
            .getValue();

    assertThat(after).isEqualTo(before);
    assertThat(read(text(whole("bench|step|2", 0))).getEvents().get(0).getUid().getValue())
        .isNotEqualTo(before);
    assertThatThrownBy(() -> CalendarFile.text("x", List.of(), STAMP, -1))
        .hasMessage("a calendar's revision must be 0 or more; got -1");
  }
}
