package parfield.formats;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parfield.care.DailyProgram;
import parfield.care.LitSpell;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;

/** The setup's {@code day}: when the channels of its rigs are lit. */
final class DaySection {
  private static final String TIME = "write it in quotes, as in \"10:00-20:00\"";

  private DaySection() {}

  /**
   * The day.
   *
   * @param fixtures whose channels it may name
   */
  static StatedDay read(Entry entry, Collection<Optional<Fixture>> fixtures) {
    Optional<Section> section = entry.section("lit", "ramp", "channels");
    if (section.isEmpty()) {
      return StatedDay.USUAL;
    }
    try (Section day = section.get()) {
      String ramp = text(day, "ramp", DayText.RAMP);
      Optional<Duration> evenly =
          read(day.optional("ramp"), () -> List.of(DayText.time(ramp))).stream().findFirst();
      String lit = text(day, "lit", DayText.LIT);
      Duration ofAll = evenly.orElse(Duration.ZERO);
      read(day.optional("lit"), () -> List.of(DayText.common("every channel", lit, ofAll)));
      if (day.optional("lit").isEmpty()) {
        read(day.optional("ramp"), () -> List.of(DayText.common("every channel", lit, ofAll)));
      }
      Map<String, List<String>> channels = new LinkedHashMap<>();
      Set<String> known = new LinkedHashSet<>();
      for (Optional<Fixture> fixture : fixtures) {
        fixture.stream()
            .flatMap(of -> of.channels().stream())
            .map(Channel::name)
            .forEach(known::add);
      }
      boolean allKnown = fixtures.stream().allMatch(Optional::isPresent);
      day.optional("channels")
          .map(stated -> stated.named("write name: 09:00-21:00"))
          .orElse(Map.of())
          .forEach(
              (name, value) -> {
                if (allKnown && !known.contains(name)) {
                  value.unknown(value.path(), name, known, "name a channel of a fixture");
                }
                channels.put(name, spells(name, value, ofAll));
              });
      return new StatedDay(lit, ramp, channels);
    }
  }

  private static String text(Section day, String key, String usual) {
    Optional<Entry> stated = day.optional(key);
    if (stated.isEmpty()) {
      day.taken(key, usual);
      return usual;
    }
    return stated.get().text(TIME).orElse(usual);
  }

  /** The texts of a channel's spells: one, or a list. */
  private static List<String> spells(String channel, Entry value, Duration ramp) {
    List<String> texts = new ArrayList<>();
    List<LitSpell> spells = new ArrayList<>();
    List<Entry> all =
        value.isList() ? value.list("write its lit spells, one or more") : List.of(value);
    if (all.isEmpty()) {
      value.fault("an empty list", "1 spell or more", "write off for a channel that stays dark");
    }
    for (Entry one : all) {
      Optional<String> text = one.text(TIME);
      if (text.isEmpty()) {
        continue;
      }
      texts.add(text.get());
      if (text.get().strip().equals(DayText.OFF) && all.size() > 1) {
        one.fault(DayText.OFF, "off alone, or lit spells", "delete one or the other");
        continue;
      }
      List<LitSpell> read = read(Optional.of(one), () -> DayText.spells(channel, text.get(), ramp));
      try {
        spells.addAll(read);
        if (!spells.isEmpty()) {
          new DailyProgram(spells);
        }
      } catch (IllegalArgumentException e) {
        spells.removeAll(read);
        one.fault(
            one.shown(), "spells apart from each other", "let one end before the next begins");
      }
    }
    return texts.isEmpty() ? List.of(DayText.OFF) : texts;
  }

  private interface Reading<T> {
    List<T> read() throws DayText.Misread;
  }

  /** What a text says; nothing, and a fault where it is stated, if it cannot be taken. */
  private static <T> List<T> read(Optional<Entry> stated, Reading<T> reading) {
    try {
      return reading.read();
    } catch (DayText.Misread e) {
      stated.ifPresent(entry -> entry.fault(entry.shown(), e.limit(), e.cure()));
      return List.of();
    }
  }
}
