package parfield.care;

import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import parfield.lamp.Channel;
import parfield.lamp.Master;
import parfield.lamp.Setting;
import parfield.rig.Hanging;
import parfield.rig.Rig;

/**
 * What to dial on which days: the daily program of a rig, step by step where there are steps.
 * Immutable.
 *
 * @param rows in order of time, hanging and spell
 */
public record Schedule(List<Row> rows) {
  /**
   * One lit spell of one channel of alike fixtures during some days.
   *
   * @param step counted from 1; 0 where there are no steps
   * @param from first day
   * @param to last day; empty for ever
   * @param fixtures names of the fixtures that are dialled alike, with how many
   * @param spell when it is lit
   * @param dial where the channel's own dial stands on the plateau [%]
   * @param masters where the masters stand that scale it [%]
   */
  public record Row(
      int step,
      LocalDate from,
      Optional<LocalDate> to,
      String fixtures,
      LitSpell spell,
      double dial,
      Map<String, Double> masters) {
    public Row {
      masters = Collections.unmodifiableMap(new TreeMap<>(masters));
    }
  }

  public Schedule {
    rows = List.copyOf(rows);
  }

  /**
   * The schedule of a rig.
   *
   * @param rig at the wanted setting
   * @param program its day
   * @param first day of it
   * @param steps towards the wanted setting, if there are any
   */
  public static Schedule of(
      Rig rig, DailyProgram program, LocalDate first, Optional<Acclimation> steps) {
    program.requireChannels(rig);
    List<Row> rows = new ArrayList<>();
    if (steps.isEmpty()) {
      rows.addAll(rows(rig, program, 0, first, Optional.empty()));
      return new Schedule(rows);
    }
    List<Acclimation.Step> all = steps.get().steps();
    for (int k = 0; k < all.size(); k++) {
      Acclimation.Step step = all.get(k);
      boolean last = k == all.size() - 1;
      rows.addAll(
          rows(
              Acclimation.hung(rig, step.settings()),
              program,
              k + 1,
              first.plusDays(step.firstDay()),
              last ? Optional.empty() : Optional.of(first.plusDays(step.end() - 1L))));
    }
    return new Schedule(rows);
  }

  private static List<Row> rows(
      Rig rig, DailyProgram program, int step, LocalDate from, Optional<LocalDate> to) {
    Map<Alike, Integer> alike = new LinkedHashMap<>();
    for (Hanging hanging : rig.hangings()) {
      alike.merge(new Alike(hanging.fixture().name(), hanging.setting()), 1, Integer::sum);
    }
    List<Row> rows = new ArrayList<>();
    alike.forEach(
        (kind, count) -> {
          Hanging hanging =
              rig.hangings().stream()
                  .filter(
                      one ->
                          one.fixture().name().equals(kind.fixture())
                              && one.setting().equals(kind.setting()))
                  .findFirst()
                  .orElseThrow();
          String fixtures =
              count == 1
                  ? kind.fixture()
                  : String.format(Locale.ROOT, "%d × %s", count, kind.fixture());
          for (Channel channel : hanging.fixture().channels()) {
            for (LitSpell spell : program.spells()) {
              if (spell.channel().equals(channel.name())) {
                Map<String, Double> masters = new TreeMap<>();
                for (Master master : hanging.fixture().masters()) {
                  if (master.scales().contains(channel.name())) {
                    masters.put(master.name(), hanging.setting().percent(master.name()));
                  }
                }
                double dial = hanging.setting().percent(channel.name()) * spell.level() / 100;
                rows.add(new Row(step, from, to, fixtures, spell, dial, masters));
              }
            }
          }
        });
    return rows;
  }

  private record Alike(String fixture, Setting setting) {}

  /**
   * Reminders of this schedule: each lit spell every day, each step on its first day.
   *
   * @param bench what the identities of the reminders begin with: a name that stays
   * @param cleaning days from one cleaning to the next, if it shall be told of
   */
  public List<Reminder> reminders(String bench, Optional<Integer> cleaning) {
    List<Reminder> all = new ArrayList<>();
    Map<String, Integer> seen = new LinkedHashMap<>();
    int step = 0;
    for (Row row : rows) {
      if (row.step() > 0 && row.step() != step) {
        step = row.step();
        all.add(step(bench, row));
      }
      String what =
          String.join("|", bench, "spell", row.fixtures(), row.spell().channel(), "" + row.step());
      int number = seen.merge(what, 1, Integer::sum);
      all.add(spell(what + "|" + number, row));
    }
    cleaning.ifPresent(
        days ->
            all.add(
                new Reminder(
                    bench + "|cleaning",
                    "Clean lamps, lid and panes",
                    cautioned(
                        "Unplug first. Light is told for clean surfaces.",
                        Caution.ELECTRICITY,
                        Caution.LOAD,
                        Caution.EYES),
                    rows.get(0).from().plusDays(days),
                    Optional.empty(),
                    Duration.ofDays(1),
                    days,
                    Optional.empty(),
                    true)));
    return List.copyOf(all);
  }

  private static Reminder spell(String identity, Row row) {
    LitSpell spell = row.spell();
    return new Reminder(
        identity,
        String.format(
            Locale.ROOT, "%s %s at %s %%", row.fixtures(), spell.channel(), percent(row.dial())),
        cautioned(
            String.format(
                Locale.ROOT,
                "From 0 to %s %% in %s, there for %s, to 0 in %s.%s A reminder: it drives no"
                    + " fixture.",
                percent(row.dial()),
                Spans.words(spell.rampUp()),
                Spans.words(spell.plateau()),
                Spans.words(spell.rampDown()),
                masters(row)),
            // Where there are steps, these speak of the animals.
            row.step() == 0
                ? new Caution[] {Caution.ANIMALS, Caution.EYES}
                : new Caution[] {Caution.EYES}),
        row.from(),
        Optional.of(spell.start()),
        spell.length(),
        1,
        row.to(),
        false);
  }

  /** A text and, each in a line of its own, what to mind in doing what it says. */
  private static String cautioned(String text, Caution... cautions) {
    StringBuilder all = new StringBuilder(text);
    for (Caution caution : cautions) {
      all.append('\n').append(caution.inWords()).append('.');
    }
    return all.toString();
  }

  private static String masters(Row row) {
    StringBuilder text = new StringBuilder();
    row.masters()
        .forEach(
            (name, value) ->
                text.append(
                    String.format(Locale.ROOT, " Dial %s at %s %%.", name, percent(value))));
    return text.toString();
  }

  private Reminder step(String bench, Row first) {
    StringBuilder text = new StringBuilder("Dial by hand: ");
    rows.stream()
        .filter(row -> row.step() == first.step())
        .forEach(
            row ->
                text.append(
                    String.format(
                        Locale.ROOT,
                        "%s %s %s %%.%s ",
                        row.fixtures(),
                        row.spell().channel(),
                        percent(row.dial()),
                        masters(row))));
    text.append("Look at the animals first: if a stop sign shows, hold or step back instead.");
    return new Reminder(
        String.join("|", bench, "step", "" + first.step()),
        "Light step " + first.step() + ": turn the dials",
        cautioned(text.toString(), Caution.ANIMALS, Caution.EYES, Caution.ELECTRICITY),
        first.from(),
        Optional.empty(),
        Duration.ofDays(1),
        0,
        Optional.empty(),
        true);
  }

  /** A dial as a person turns it. */
  static String percent(double dial) {
    double rounded = Math.rint(dial * 10) / 10;
    return rounded == Math.rint(rounded)
        ? String.format(Locale.ROOT, "%.0f", rounded)
        : String.format(Locale.ROOT, "%.1f", rounded);
  }
}
