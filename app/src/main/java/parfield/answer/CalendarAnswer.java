package parfield.answer;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import parfield.care.DailyProgram;
import parfield.care.Reminder;
import parfield.care.Schedule;
import parfield.formats.CalendarFile;
import parfield.formats.ScheduleFile;
import parfield.rig.Rig;
import parfield.units.LengthUnit;

/**
 * Reminders of a daily program and the steps towards it.
 *
 * @param source name of the setup
 * @param rig that is dialled
 * @param program its day
 * @param schedule what to dial on which days
 * @param cleaning days from one cleaning to the next, if that is wanted
 * @param revision of the calendar, 0 or more
 * @param files that were left
 */
public record CalendarAnswer(
    String source,
    Rig rig,
    DailyProgram program,
    Schedule schedule,
    Optional<Integer> cleaning,
    int revision,
    List<String> files)
    implements Answer {
  /** What a calendar does and what it does not. */
  public static final String REMINDERS =
      "Reminders only: no fixture is driven; what it does is what you dial or set at its own timer.";

  public CalendarAnswer {
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(schedule, "schedule");
    files = List.copyOf(files);
  }

  /** What is reminded of. */
  public List<Reminder> reminders() {
    return schedule.reminders(source + "|" + rig.name(), cleaning);
  }

  /** The iCalendar document. */
  public String calendar(Instant stamp) {
    return CalendarFile.text("Light of " + rig.name(), reminders(), stamp, revision);
  }

  /** The schedule as separated values. */
  public String csv() {
    return ScheduleFile.text(schedule);
  }

  @Override
  public String text(LengthUnit unit) {
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT,
            "Calendar of rig %s of %s, revision %d: %s\n",
            rig.name(),
            source,
            revision,
            Numbers.count(reminders().size(), "reminder")));
    reminders()
        .forEach(
            reminder ->
                text.append(
                    Lines.item(
                        reminder.day()
                            + reminder.at().map(at -> " " + at).orElse("")
                            + repeat(reminder)
                            + ": "
                            + reminder.title())));
    text.append('\n').append(REMINDERS).append('\n');
    text.append(Lines.section("Left", files));
    return text.toString();
  }

  private static String repeat(Reminder reminder) {
    if (reminder.everyDays() == 0) {
      return "";
    }
    return (reminder.everyDays() == 1 ? ", every day" : ", every " + reminder.everyDays() + " days")
        + reminder.until().map(until -> " until " + until).orElse("");
  }

  @Override
  public ObjectNode json() {
    ObjectNode json = Json.object();
    json.put("setup", source);
    json.put("rig", rig.name());
    Json.strings(json, "program", AskedDay.words(program));
    json.put("revision", revision);
    ArrayNode all = json.putArray("reminders");
    for (Reminder reminder : reminders()) {
      ObjectNode entry = all.addObject();
      entry.put("title", reminder.title());
      entry.put("text", reminder.text());
      entry.put("day", reminder.day().toString());
      entry.put("at", reminder.at().map(Object::toString).orElse(null));
      entry.put("minutes", reminder.length().toMinutes());
      entry.put("every_days", reminder.everyDays());
      entry.put("until", reminder.until().map(Object::toString).orElse(null));
    }
    Json.strings(json, "files", files);
    return json;
  }
}
