package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.component.VEvent;
import biweekly.io.text.ICalReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.care.Caution;
import parfield.care.DailyProgram;
import parfield.care.LitSpell;
import parfield.care.Reminder;
import parfield.care.Schedule;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.Master;
import parfield.lamp.Setting;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.tank.Tank;

/** The schedule as a table and as reminders. */
class ScheduleFileTest {
  private static Schedule schedule() {
    Fixture fixture =
        new Fixture(
            "bar, long",
            0,
            0,
            List.of(new Emitter(0, 0, 0)),
            List.of(
                Channel.of("blue", new CosinePower(1, 1)),
                Channel.of("violet", new CosinePower(1, 1))),
            List.of(new Master("overall", new java.util.TreeSet<>(List.of("blue")))));
    Setting setting = new Setting(Map.of("blue", 80.0, "violet", 50.0, "overall", 90.0));
    Hanging hanging = Hanging.level(fixture, .3, .3, .2).withSetting(setting);
    Rig rig = new Rig("low", Tank.of(.9, .6, .5), List.of(hanging, hanging.at(.6, .3, .2)));
    DailyProgram program =
        new DailyProgram(
            List.of(
                new LitSpell(
                    "blue",
                    LocalTime.of(21, 0),
                    Duration.ofHours(1),
                    Duration.ofHours(4),
                    Duration.ofMinutes(30),
                    50),
                new LitSpell(
                    "violet",
                    LocalTime.of(9, 0),
                    Duration.ZERO,
                    Duration.ofHours(10),
                    Duration.ZERO,
                    100)));
    return Schedule.of(rig, program, LocalDate.of(2026, 12, 1), Optional.empty());
  }

  @Test
  void rowsAreSpellsOfAlikeFixtures() {
    assertThat(ScheduleFile.text(schedule()))
        .isEqualTo(
            """
            step,first_day,last_day,fixture,channel,dial_percent,masters,start,plateau_from,plateau_to,end
            ,2026-12-01,,"2 × bar, long",blue,40,overall 90,21:00,22:00,02:00,02:30
            ,2026-12-01,,"2 × bar, long",violet,50,,09:00,09:00,19:00,19:00
            """);
  }

  @Test
  void remindersSayThatTheyDriveNothing() {
    List<Reminder> reminders = schedule().reminders("bench", Optional.of(28));

    assertThat(reminders).hasSize(3);
    assertThat(reminders.get(0).title()).isEqualTo("2 × bar, long blue at 40 %");
    assertThat(reminders.get(0).text())
        .isEqualTo(
            "From 0 to 40 % in 1 h, there for 4 h, to 0 in 30 min. Dial overall at 90 %. A"
                + " reminder: it drives no fixture.\n"
                + Caution.ANIMALS.inWords()
                + ".\n"
                + Caution.EYES.inWords()
                + ".");
    assertThat(reminders.get(2).text())
        .contains("\nElectricity near water: unplug fixtures before hands go into the water")
        .contains("\nHanging load: ");
    assertThat(reminders.get(2).day()).isEqualTo(LocalDate.of(2026, 12, 29));
    assertThat(reminders.stream().map(Reminder::identity)).doesNotHaveDuplicates();
  }

  @Test
  @DisplayName("another library reads each caution as a line of its own, whatever the folding")
  void cautionsTravelInTheCalendar() throws IOException {
    List<Reminder> reminders = schedule().reminders("bench", Optional.of(28));
    String text = CalendarFile.text("Tank", reminders, Instant.parse("2026-11-30T04:05:06Z"), 0);

    assertThat(text.split("\r\n", -1))
        .allSatisfy(
            line ->
                assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75));
    try (ICalReader reader = new ICalReader(text)) {
      List<VEvent> events = reader.readNext().getEvents();
      assertThat(reader.getWarnings()).isEmpty();
      for (int k = 0; k < reminders.size(); k++) {
        assertThat(events.get(k).getDescription().getValue())
            .isEqualTo(reminders.get(k).text())
            .contains("\n" + Caution.EYES.inWords() + ".");
      }
    }
  }
}
