package parfield.formats;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parfield.survey.GridPlan;
import parfield.tank.Tank;

/** Where a survey is to be read: the key {@code grid} of a survey. */
final class GridEntry {
  /** More cells than this a side are no plan that a person could read. */
  private static final int MOST_CELLS = 100;

  private static final String HOW = "write grid: {depths: [10, 25], columns: 6, rows: 3}";

  private GridEntry() {}

  /** The grid, empty if anything about it is wrong or the tank is not known. */
  static Optional<GridPlan> read(Entry entry, Optional<Tank> tank, Lengths lengths) {
    int faults = entry.notes().count();
    Optional<Section> section = entry.section("depths", "columns", "rows");
    if (section.isEmpty()) {
      return Optional.empty();
    }
    Section grid = section.get();
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
