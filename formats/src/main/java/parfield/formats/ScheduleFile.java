package parfield.formats;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.time.LocalTime;
import java.util.Locale;
import java.util.stream.Collectors;
import parfield.care.LitSpell;
import parfield.care.Schedule;

/** A schedule as separated values: one row for each lit spell of a channel during some days. */
public final class ScheduleFile {
  private ScheduleFile() {}

  /** The text, lines ending in LF; times are local, dials in percent, the last step has no end. */
  public static String text(Schedule schedule) {
    StringWriter text = new StringWriter();
    try (CsvWriter writer = CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
      writer.writeRecord(
          "step",
          "first_day",
          "last_day",
          "fixture",
          "channel",
          "dial_percent",
          "masters",
          "start",
          "plateau_from",
          "plateau_to",
          "end");
      for (Schedule.Row row : schedule.rows()) {
        LitSpell spell = row.spell();
        LocalTime up = spell.start().plus(spell.rampUp());
        writer.writeRecord(
            row.step() == 0 ? "" : String.format(Locale.ROOT, "%d", row.step()),
            row.from().toString(),
            row.to().map(Object::toString).orElse(""),
            row.fixtures(),
            spell.channel(),
            shown(row.dial()),
            row.masters().entrySet().stream()
                .map(master -> master.getKey() + " " + shown(master.getValue()))
                .collect(Collectors.joining("; ")),
            spell.start().toString(),
            up.toString(),
            up.plus(spell.plateau()).toString(),
            spell.end().toString());
      }
    } catch (IOException e) {
      throw new UncheckedIOException("text in memory cannot fail to be written", e);
    }
    return text.toString();
  }

  private static String shown(double dial) {
    return NumberText.shown(Math.rint(dial * 100) / 100);
  }
}
