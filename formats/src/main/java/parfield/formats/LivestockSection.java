package parfield.formats;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parfield.care.Certainty;
import parfield.care.CoralGroup;
import parfield.care.Livestock;
import parfield.survey.Band;

/** One of the setup's {@code livestock}: corals that want alike light. */
final class LivestockSection {
  private static final Limit PPFD = Limit.between(0, ReadingPlaces.BRIGHTEST, "µmol/m²/s");

  /** The sun in the tropics gives about 60 at the water's surface; from memory. */
  private static final Limit DLI = Limit.between(0, 100, "mol/m²/d");

  private static final String NO_SOURCE = "stated in the setup, no source";

  private LivestockSection() {}

  /** The group, empty if anything about it is wrong. */
  static Optional<CoralGroup> read(String name, Entry entry) {
    int faults = entry.notes().count();
    Optional<Section> section = entry.section("ppfd", "dli", "source", "confidence");
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Optional<CoralGroup> common = Optional.ofNullable(Livestock.common().get(name));
    try (Section group = section.get()) {
      double[] ppfd =
          range(
              group,
              "ppfd",
              PPFD,
              common.map(of -> new double[] {of.ppfd().from(), of.ppfd().to()}));
      double[] dli =
          range(group, "dli", DLI, common.map(of -> new double[] {of.dliFrom(), of.dliTo()}));
      String source =
          group
              .optional("source")
              .flatMap(value -> value.text("say where the ranges come from"))
              .orElse(NO_SOURCE);
      Certainty certainty = certainty(group);
      return entry.notes().count() > faults
          ? Optional.empty()
          : Optional.of(
              new CoralGroup(new Band(name, ppfd[0], ppfd[1]), dli[0], dli[1], certainty, source));
    }
  }

  private static Certainty certainty(Section group) {
    Optional<Entry> stated = group.optional("confidence");
    if (stated.isEmpty()) {
      group.taken("confidence", Certainty.LOW.word());
      return Certainty.LOW;
    }
    List<String> words = Arrays.stream(Certainty.values()).map(Certainty::word).toList();
    return stated
        .get()
        .word(words)
        .map(word -> Certainty.values()[words.indexOf(word)])
        .orElse(Certainty.LOW);
  }

  /** Both ends, {@code common} where they are not stated. */
  private static double[] range(Section group, String key, Limit limit, Optional<double[]> common) {
    if (!group.has(key) && common.isPresent()) {
      double[] ends = common.get();
      group.taken(key, NumberText.shown(ends[0]) + " to " + NumberText.shown(ends[1]));
      return ends;
    }
    String how = "write " + key + ": {from: …, to: …}";
    Optional<Entry> stated = group.required(key, how);
    Optional<Section> ends = stated.flatMap(entry -> entry.section("from", "to"));
    if (ends.isEmpty()) {
      return new double[] {0, 1};
    }
    double from = ends.get().number("from", limit, "state the lower end");
    double to = ends.get().number("to", limit, "state the upper end");
    if (from >= to) {
      stated
          .get()
          .fault(
              "from " + NumberText.shown(from) + " to " + NumberText.shown(to),
              "from below to",
              "write the smaller first");
    }
    return new double[] {from, to};
  }
}
