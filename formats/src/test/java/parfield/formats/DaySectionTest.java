package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.care.LitSpell;

/** The daily program of a setup. */
class DaySectionTest {
  @TempDir private Path folder;

  private TestBench bench(String day) {
    return TestBench.in(folder)
        .with("setup.yaml", TestBench.FULL.replace("demands:", day + "demands:"));
  }

  @Test
  void aDayIsKeptAsItWasWritten() {
    Setup setup =
        bench(
                """
                day:
                  lit: 11:00-21:00
                  channels:
                    violet: [09:00-12:00/1h@60, "20:00 – 23:00"]
                    blue: off
                """)
            .read();

    assertThat(setup.day())
        .contains(
            new StatedDay(
                "11:00-21:00",
                "1h",
                Map.of(
                    "violet",
                    List.of("09:00-12:00/1h@60", "20:00 – 23:00"),
                    "blue",
                    List.of("off"))));
    assertThat(setup.assumptions()).contains("day does not state, so taken: ramp 1h");
    assertThat(TestBench.in(folder).read().day()).isEmpty();
    assertThat(bench("day: {lit: 8:00-20:00, ramp: 0}\n").read().day())
        .contains(new StatedDay("8:00-20:00", "0", Map.of()));
  }

  @Test
  void everyFaultIsToldWithItsLineAndCure() {
    assertThat(
            bench(
                    """
                    day:
                      lit: 10 to 20
                      ramp: 90
                      channels:
                        violet: [09:00-12:00, 11:00-13:00]
                        blue: 25:00-26:00
                        vilet: off
                    """)
                .faults())
        .containsExactly(
            "setup.yaml:46:9: day.ramp: got 90, allowed hours and minutes; write 1h, 90min, 1h"
                + " 30min or 0",
            "setup.yaml:45:8: day.lit: got 10 to 20, allowed a time to a time; write it as in"
                + " 10:00-20:00",
            "setup.yaml:48:27: day.channels.violet[2]: got 11:00-13:00, allowed spells apart from"
                + " each other; let one end before the next begins",
            "setup.yaml:49:11: day.channels.blue: got 25:00-26:00, allowed times from 00:00 to"
                + " 23:59; write it as in 10:00",
            "setup.yaml:50:12: day.channels.vilet: got vilet, allowed blue, violet; did you mean"
                + " violet?");
    assertThat(bench("day: {lit: 10:00-11:00, ramp: 45min}\n").faults())
        .containsExactly(
            "setup.yaml:44:12: day.lit: got 10:00-11:00, allowed a spell no shorter than its ramps"
                + " of 45 min and 45 min; make the ramps shorter or the day longer");
    assertThat(bench("day: {ramp: 6h}\n").faults())
        .containsExactly(
            "setup.yaml:44:13: day.ramp: got 6h, allowed a spell no shorter than its ramps of 6 h"
                + " and 6 h; make the ramps shorter or the day longer");
    assertThat(bench("day: {channels: {violet: 09:00-12:00@120}}\n").faults())
        .containsExactly(
            "setup.yaml:44:26: day.channels.violet: got 09:00-12:00@120, allowed a level of what the"
                + " rig dials, 0 to 100 %; dial the rig higher instead");
    assertThat(bench("day: {channels: {violet: [off, 09:00-12:00]}}\n").faults())
        .singleElement()
        .asString()
        .contains("day.channels.violet[1]: got off, allowed off alone, or lit spells");
    assertThat(bench("day: {lit: {from: 1}, light: 3}\n").faults()).hasSize(2);
    assertThat(bench("day: [10, 20]\n").faults()).hasSize(1);
  }

  @Test
  void textsOfASpell() throws DayText.Misread {
    assertThat(DayText.spells("blue", "22:00-02:30/30min/1h 30min@62,5 %", Duration.ofHours(1)))
        .containsExactly(
            new LitSpell(
                "blue",
                LocalTime.of(22, 0),
                Duration.ofMinutes(30),
                Duration.ofMinutes(150),
                Duration.ofMinutes(90),
                62.5));
    assertThat(DayText.spells("blue", " off ", Duration.ZERO)).isEmpty();
    assertThatThrownBy(() -> DayText.spells("blue", "09:00-10:00@1.2.3", Duration.ZERO))
        .hasMessage("a channel's day cannot be read: blue=09:00-10:00@1.2.3");
  }
}
