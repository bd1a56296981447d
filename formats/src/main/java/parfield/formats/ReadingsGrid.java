package parfield.formats;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parfield.units.LengthUnit;

/** Readings of one depth as a table: x positions in the first row, y in the first column. */
final class ReadingsGrid {
  /** Nothing, or y over x in some way, and a unit in brackets or not. */
  private static final Pattern CORNER =
      Pattern.compile("(?:y\\s*[\\\\/|]?\\s*x?)?[\\s_]*[\\[(]?\\s*([a-z\"]*)\\s*[\\])]?");

  private final ReadingPlaces places;
  private final Decimals decimals;
  private final double[] x;
  private final double[] stated;
  private final Set<Double> seenY = new HashSet<>();
  private final LengthUnit unit;
  private final double depth;
  private final boolean sound;

  /** The depth that a corner cell states. */
  static Optional<DepthStatement> inCorner(int line, List<String> cells) {
    return DepthStatement.of(line, cells.get(0));
  }

  /** Returns whether a row is the head of a grid: a corner, then numbers. */
  static boolean isHead(List<String> cells, Decimals decimals, int line) {
    if (cells.size() < 2 || cornerUnit(cells.get(0)).isEmpty() || lastUsed(cells) == 0) {
      return false;
    }
    return cells.subList(1, lastUsed(cells) + 1).stream()
        .noneMatch(cell -> Double.isNaN(decimals.parse(line, cell)));
  }

  /** The unit that a corner states, empty text for none; empty if the cell is no corner. */
  private static Optional<String> cornerUnit(String cell) {
    String text = cell.toLowerCase(Locale.ROOT);
    if (DepthStatement.of(0, text).isPresent()) {
      return Optional.of("");
    }
    if (text.length() > 40) {
      return Optional.empty();
    }
    Matcher matcher = CORNER.matcher(text);
    return matcher.matches()
            && (matcher.group(1).isEmpty() || Column.lengthUnit(matcher.group(1)).isPresent())
        ? Optional.of(matcher.group(1))
        : Optional.empty();
  }

  private static int lastUsed(List<String> cells) {
    int last = cells.size() - 1;
    while (last > 0 && cells.get(last).isEmpty()) {
      last--;
    }
    return last;
  }

  ReadingsGrid(
      ReadingPlaces places,
      Decimals decimals,
      int line,
      List<String> head,
      Optional<DepthStatement> statement) {
    this.places = places;
    this.decimals = decimals;
    int faults = places.notes().count();
    this.unit = places.unit(line, "x, y", cornerUnit(head.get(0)).orElse(""));
    Set<Double> seen = new HashSet<>();
    stated = new double[lastUsed(head)];
    x = new double[stated.length];
    for (int i = 0; i < stated.length; i++) {
      stated[i] = decimals.parse(line, head.get(i + 1));
      x[i] = places.x(line, new ReadingPlaces.Length(stated[i], unit));
      if (!seen.add(stated[i])) {
        twice(line, "x", stated[i]);
      }
    }
    Optional<ReadingPlaces.Length> common = StatedDepth.of(places, decimals, statement);
    this.depth =
        common
            .map(length -> places.depth(statement.map(DepthStatement::line).orElse(line), length))
            .orElse(Double.NaN);
    if (common.isEmpty() && statement.isEmpty()) {
      places.fault(
          line,
          "depth of the grid",
          "nothing",
          "a depth for each grid",
          "write a line \"# depth 15 cm\" before it, or depth: 15 in the survey");
    }
    if (statement.isPresent() && places.statedDepth().isPresent()) {
      places.fault(
          statement.get().line(),
          "depth",
          "one here and one in the survey",
          "one of them",
          "delete one of the two");
    }
    this.sound = places.notes().count() == faults;
  }

  private void twice(int line, String what, double position) {
    places.fault(
        line,
        what,
        "a second time " + NumberText.shown(position),
        "each position once",
        "correct the position");
  }

  void row(int line, List<String> cells) {
    if (!sound) {
      return;
    }
    double y = decimals.parse(line, cells.get(0));
    if (Double.isNaN(y)) {
      places.fault(
          line,
          "y of the row",
          cells.get(0).isEmpty() ? "nothing" : Notes.shown(cells.get(0)),
          "a number",
          "begin each row with its y position, and end the grid with a blank line");
      return;
    }
    if (!seenY.add(y)) {
      twice(line, "y", y);
    }
    double metres = places.y(line, new ReadingPlaces.Length(y, unit));
    if (lastUsed(cells) > x.length) {
      places.fault(
          line,
          "row",
          String.format(Locale.ROOT, "%d values", lastUsed(cells)),
          String.format(Locale.ROOT, "%d, as in the head", x.length),
          "if commas are decimals, separate the cells with semicolons or tabs");
      return;
    }
    for (int i = 0; i < x.length; i++) {
      String cell = i + 1 < cells.size() ? cells.get(i + 1) : "";
      if (cell.isEmpty()) {
        places.unmeasured();
        continue;
      }
      double value = decimals.parse(line, cell);
      if (Double.isNaN(value)) {
        places.fault(
            line,
            "ppfd at x " + NumberText.shown(stated[i]),
            Notes.shown(cell),
            "a number, or an empty cell",
            decimals.cure(cell));
      } else {
        places.add(line, x[i], metres, depth, value);
      }
    }
  }
}
