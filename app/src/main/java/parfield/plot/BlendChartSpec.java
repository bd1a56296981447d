package parfield.plot;

import java.util.List;
import java.util.Locale;
import java.util.Objects;

/**
 * How far the light at each place differs from the light of all places together.
 *
 * @param caption title and summary
 * @param columns what is compared, each with its unit, one to eight
 * @param places one or more
 * @param least differences below this share of a column's strongest tint stay untinted, 0 to 1
 */
public record BlendChartSpec(
    Caption caption, List<Column> columns, List<Place> places, double least) {
  public BlendChartSpec {
    Objects.requireNonNull(caption, "caption");
    columns = List.copyOf(columns);
    places = List.copyOf(places);
    if (columns.isEmpty() || columns.size() > 8 || places.isEmpty()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "a blend chart shows 1 to 8 figures at 1 place or more; got %d at %d",
              columns.size(),
              places.size()));
    }
    for (Place place : places) {
      if (place.differences().size() != columns.size()) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT,
                "place %s needs a difference for each of %d columns; got %d",
                place.name(),
                columns.size(),
                place.differences().size()));
      }
    }
  }

  /**
   * One figure.
   *
   * @param name over its column, in one or two short lines split by a line feed
   * @param most the difference that takes the strongest tint, above 0
   * @param digits decimals of its numbers
   * @param signed whether its numbers carry a sign; a distance has none
   */
  public record Column(String name, double most, int digits, boolean signed) {
    public Column {
      Objects.requireNonNull(name, "name");
      if (!(most > 0)) {
        throw new IllegalArgumentException(
            String.format(
                Locale.ROOT, "the strongest tint needs a difference above 0; got %s", most));
      }
    }
  }

  /**
   * One place.
   *
   * @param name before its row
   * @param colour of its light, as {@code #rrggbb}
   * @param differences from all places together, one a column
   */
  public record Place(String name, String colour, List<Double> differences) {
    public Place {
      Objects.requireNonNull(name, "name");
      Objects.requireNonNull(colour, "colour");
      differences = List.copyOf(differences);
    }
  }
}
