package parfield.formats;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parfield.units.LengthUnit;

/** A list of readings: a row of names, then a reading a row. */
final class ReadingsList {
  static final List<String> NAMES = List.of("x", "y", "depth", "ppfd", "par");

  private static final int X = 0;
  private static final int Y = 1;
  private static final int DEPTH = 2;
  private static final int PPFD = 3;
  private static final String[] WHAT = {"x", "y", "depth", "ppfd"};

  private final ReadingPlaces places;
  private final Decimals decimals;
  private final int[] columns = {-1, -1, -1, -1};
  private final LengthUnit[] units = new LengthUnit[DEPTH + 1];
  private final int width;
  private double depth = Double.NaN;
  private boolean sound = true;

  /** Returns whether a row is the head of a list: at least two of its cells are known names. */
  static boolean isHead(List<String> cells) {
    return cells.stream().filter(cell -> NAMES.contains(Column.of(cell, NAMES).name())).count()
        >= 2;
  }

  ReadingsList(
      ReadingPlaces places,
      Decimals decimals,
      int line,
      List<String> head,
      Optional<DepthStatement> statement) {
    this.places = places;
    this.decimals = decimals;
    this.width = head.size();
    int faults = places.notes().count();
    for (int i = 0; i < head.size(); i++) {
      column(line, i, Column.of(head.get(i), NAMES), head.get(i));
    }
    for (int i : new int[] {X, Y, PPFD}) {
      if (columns[i] < 0) {
        missing(line, WHAT[i], head);
      }
    }
    depth(line, statement, head);
    sound = places.notes().count() == faults;
  }

  private void column(int line, int i, Column column, String head) {
    int which = column.name().equals("par") ? PPFD : Arrays.asList(WHAT).indexOf(column.name());
    if (which < 0) {
      if (!head.isEmpty()) {
        places.notes().assume(places.file() + ": the column " + Notes.shown(head) + " is not used");
      }
      return;
    }
    if (columns[which] >= 0) {
      places.fault(line, "columns", "two for " + WHAT[which], "one", "delete one of them");
      return;
    }
    columns[which] = i;
    if (which <= DEPTH) {
      units[which] = places.unit(line, WHAT[which], column.unit());
    } else if (!column.unit().isEmpty() && !column.unit().contains("mol")) {
      places.fault(
          line, "unit of ppfd", Notes.shown(column.unit()), "µmol/m²/s", "convert the readings");
    }
  }

  private void missing(int line, String name, List<String> head) {
    places.fault(
        line,
        "columns",
        Notes.shown(head),
        "x, y, depth, ppfd",
        Nearest.of(name, head)
            .map(near -> String.format(Locale.ROOT, "rename %s to %s", near, name))
            .orElse(String.format(Locale.ROOT, "name the column that holds %s", name)));
  }

  private void depth(int line, Optional<DepthStatement> statement, List<String> head) {
    Optional<ReadingPlaces.Length> common = StatedDepth.of(places, decimals, statement);
    if (columns[DEPTH] >= 0 && (statement.isPresent() || places.statedDepth().isPresent())) {
      places.fault(
          statement.map(DepthStatement::line).orElse(line),
          "depth",
          statement.isPresent()
              ? "a column and a statement"
              : "a column here and a depth in the survey",
          "one of them",
          "delete one of the two");
    } else if (columns[DEPTH] < 0 && statement.isEmpty() && common.isEmpty()) {
      missing(line, "depth", head);
    } else if (columns[DEPTH] < 0 && common.isPresent()) {
      depth = places.depth(statement.map(DepthStatement::line).orElse(line), common.get());
    }
  }

  void row(int line, List<String> cells) {
    if (!sound) {
      return;
    }
    for (int i = width; i < cells.size(); i++) {
      if (!cells.get(i).isEmpty()) {
        places.fault(
            line,
            "row",
            String.format(Locale.ROOT, "%d values", cells.size()),
            String.format(Locale.ROOT, "%d, as in the head", width),
            "if commas are decimals, separate the cells with semicolons or tabs");
        return;
      }
    }
    double[] numbers = new double[PPFD + 1];
    boolean complete = true;
    for (int which = X; which <= PPFD; which++) {
      if (columns[which] < 0) {
        continue;
      }
      String cell = columns[which] < cells.size() ? cells.get(columns[which]) : "";
      numbers[which] = decimals.parse(line, cell);
      if (Double.isNaN(numbers[which])) {
        places.fault(
            line,
            WHAT[which],
            cell.isEmpty() ? "nothing" : Notes.shown(cell),
            "a number",
            decimals.cure(cell));
        complete = false;
      }
    }
    if (complete) {
      places.add(
          line,
          places.x(line, new ReadingPlaces.Length(numbers[X], units[X])),
          places.y(line, new ReadingPlaces.Length(numbers[Y], units[Y])),
          columns[DEPTH] < 0
              ? depth
              : places.depth(line, new ReadingPlaces.Length(numbers[DEPTH], units[DEPTH])),
          numbers[PPFD]);
    }
  }
}
