package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import parfield.survey.GridPlan;
import parfield.tank.Place;
import parfield.tank.Tank;

/** Where a survey is to be read: the key {@code grid} of a survey. */
final class GridEntry {
  /** More cells than this a side are no plan that a person could read. */
  private static final int MOST_CELLS = 100;

  private static final String HOW = "write grid: {depths: [10, 25], columns: 6, rows: 3}";

  /** More places of one's own than this are no plan that a person could read. */
  private static final int MOST_PLACES = 1000;

  private static final String OWN = "write grid: {places: [[45, 30, 15], [20, 10, 35]]}";

  private GridEntry() {}

  /** The grid, empty if anything about it is wrong or the tank is not known. */
  static Optional<GridPlan> read(Entry entry, Optional<Tank> tank, Lengths lengths) {
    int faults = entry.notes().count();
    Optional<Section> section = entry.section("depths", "columns", "rows", "places");
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section grid = section.get();
    Optional<Entry> own = grid.optional("places");
    if (own.isPresent()) {
      if (Stream.of("depths", "columns", "rows").anyMatch(key -> grid.optional(key).isPresent())) {
        own.get().fault("places beside depths, columns or rows", "the one or the other", OWN);
      }
      return places(own.get(), tank, lengths, faults);
    }
    List<Double> depths = depths(grid, tank, lengths);
    Optional<Integer> columns = cells(grid, "columns");
    Optional<Integer> rows = cells(grid, "rows");
    if (columns.isPresent() != rows.isPresent()) {
      entry.fault("columns or rows alone", "both, or neither", HOW);
    }
    if (entry.notes().count() > faults || tank.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          columns.isEmpty()
              ? GridPlan.of(tank.get(), depths, lengths.unit())
              : GridPlan.of(tank.get(), depths, lengths.unit(), columns.get(), rows.get()));
    } catch (IllegalArgumentException e) {
      entry.fault(e.getMessage(), "a grid that fits the tank", HOW);
      return Optional.empty();
    }
  }

  /** Places of one's own, each x, y, depth; empty if anything about them is wrong. */
  private static Optional<GridPlan> places(
      Entry stated, Optional<Tank> tank, Lengths lengths, int faults) {
    List<Entry> entries = stated.list(OWN);
    if (stated.isList() && (entries.isEmpty() || entries.size() > MOST_PLACES)) {
      stated.fault(entries.size() + " places", "1 to " + MOST_PLACES, OWN);
    }
    List<Place> places = new ArrayList<>();
    for (Entry entry : entries) {
      place(entry, tank, lengths).ifPresent(places::add);
    }
    if (stated.notes().count() > faults || tank.isEmpty()) {
      return Optional.empty();
    }
    for (int i = 0; i < places.size(); i++) {
      Place place = places.get(i);
      if (tank.get().aquascape().inside(place.x(), place.y(), place.depth())) {
        entries.get(i).fault("a place in rock", "places in the water", "move it out of the rock");
      }
    }
    return stated.notes().count() > faults
        ? Optional.empty()
        : Optional.of(GridPlan.own(tank.get(), places));
  }

  private static Optional<Place> place(Entry entry, Optional<Tank> tank, Lengths lengths) {
    int faults = entry.notes().count();
    List<Entry> numbers = entry.list(OWN);
    if (entry.isList() && numbers.size() != 3) {
      entry.fault(numbers.size() + " numbers", "3: x, y, depth", OWN);
    }
    if (entry.notes().count() > faults) {
      return Optional.empty();
    }
    double x = within(numbers.get(0), tank.map(Tank::length), lengths);
    double y = within(numbers.get(1), tank.map(Tank::width), lengths);
    double depth = within(numbers.get(2), tank.map(Tank::depth), lengths);
    return entry.notes().count() > faults ? Optional.empty() : Optional.of(new Place(x, y, depth));
  }

  /** A length from a pane or from the surface, not beyond the tank's end [m]. */
  private static double within(Entry entry, Optional<Double> end, Lengths lengths) {
    double most = end.orElse(20.0);
    double length =
        entry.number(
            Limit.between(0, lengths.unit().fromMetres(most), lengths.unit().symbol()),
            "x runs from the left pane, y from the front pane, the depth down from the surface");
    return Double.isNaN(length) ? Double.NaN : Math.min(lengths.metres(length), most);
  }

  private static List<Double> depths(Section grid, Optional<Tank> tank, Lengths lengths) {
    List<Double> depths = new ArrayList<>();
    double deepest = lengths.unit().fromMetres(tank.map(Tank::depth).orElse(20.0));
    Optional<Entry> stated = grid.required("depths", HOW);
    List<Entry> entries = stated.map(list -> list.list(HOW)).orElse(List.of());
    for (Entry entry : entries) {
      double depth =
          entry.number(
              Limit.above(0, deepest, lengths.unit().symbol()),
              "a depth runs down from the surface, not below the bottom");
      if (!Double.isNaN(depth)) {
        depths.add(Math.min(lengths.metres(depth), tank.map(Tank::depth).orElse(20.0)));
      }
    }
    if (stated.isPresent() && stated.get().isList() && entries.isEmpty()) {
      stated.get().fault("an empty list", "1 depth or more", HOW);
    }
    return depths;
  }

  private static Optional<Integer> cells(Section grid, String key) {
    Optional<Entry> stated = grid.optional(key);
    if (stated.isEmpty()) {
      return Optional.empty();
    }
    double number = stated.get().number(Limit.between(1, MOST_CELLS), HOW);
    if (!Double.isNaN(number) && number != Math.rint(number)) {
      stated.get().fault(String.format(Locale.ROOT, "%s", number), "a whole number", HOW);
    }
    return Optional.of(Double.isNaN(number) ? 1 : (int) number);
  }
}
