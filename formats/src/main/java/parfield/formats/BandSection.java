package parfield.formats;

import java.util.Optional;
import parfield.survey.Band;

/** One of the setup's {@code bands}: a wanted range of PPFD. */
final class BandSection {
  private static final Limit PPFD = Limit.between(0, ReadingPlaces.BRIGHTEST, "µmol/m²/s");

  private BandSection() {}

  /** The band, empty if anything about it is wrong. */
  static Optional<Band> read(String name, Entry entry) {
    Optional<Section> section = entry.section("from", "to");
    if (section.isEmpty()) {
      return Optional.empty();
    }
    double from = section.get().number("from", PPFD, "state the lower end of the band");
    double to = section.get().number("to", PPFD, "state the upper end of the band");
    if (from >= to) {
      entry.fault(
          "from " + NumberText.shown(from) + " to " + NumberText.shown(to),
          "from below to",
          "write the smaller first");
      return Optional.empty();
    }
    return Double.isNaN(from) || Double.isNaN(to)
        ? Optional.empty()
        : Optional.of(new Band(name, from, to));
  }
}
