package parfield.formats;

import java.util.Optional;

/** The depth of readings that carry none of their own. */
final class StatedDepth {
  private StatedDepth() {}

  /** The table's own statement, or else the survey's; empty if there is none or it is wrong. */
  static Optional<ReadingPlaces.Length> of(
      ReadingPlaces places, Decimals decimals, Optional<DepthStatement> statement) {
    if (statement.isPresent()) {
      return places.depth(statement.get(), decimals);
    }
    return places.statedDepth().isPresent()
        ? Optional.of(new ReadingPlaces.Length(places.statedDepth().getAsDouble(), places.unit()))
        : Optional.empty();
  }
}
