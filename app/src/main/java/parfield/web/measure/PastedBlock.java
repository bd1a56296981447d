package parfield.web.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Pattern;
import parfield.tank.Place;
import parfield.units.LengthUnit;

/**
 * A block that was pasted from a spreadsheet, laid over a grid: which value would go where, and
 * what cannot be placed. Nothing is stored by it.
 *
 * @param layout how the block was understood, in one sentence
 * @param cells what would be entered where, in the order of the block
 * @param problems what was left out, with what to do
 */
public record PastedBlock(String layout, List<Cell> cells, List<String> problems) {
  static final int MOST_CHARACTERS = 200_000;
  private static final int MOST_CELLS = 10_000;
  private static final int MOST_PROBLEMS = 20;

  /** A pasted position this near to a point of the grid means that point [m]. */
  private static final double NEAR = 0.006;

  private static final Pattern POSITION =
      Pattern.compile("(\\d+(?:[.,]\\d+)?)\\s*(?:cm|in|\"|″)?", Pattern.CASE_INSENSITIVE);

  /** How commas within the block are to be read. */
  public enum Comma {
    /** As the block suggests. */
    AUTO,
    /** As decimal commas. */
    DECIMAL,
    /** As what separates cells. */
    SEPARATOR
  }

  /**
   * A value and its place.
   *
   * @param point where it goes
   * @param typed the text of the cell
   * @param value that it means
   * @param remark what is odd but possible about it; empty if nothing is
   */
  public record Cell(GridPoint point, String typed, double value, String remark) {
    public Cell {
      Objects.requireNonNull(point, "point");
      Objects.requireNonNull(typed, "typed");
      Objects.requireNonNull(remark, "remark");
    }
  }

  /**
   * Where a block is pasted.
   *
   * @param points of the grid, all depths, in the order of visiting
   * @param depth of the plane that is shown [m]
   * @param unit of positions in the block
   * @param way ids of readings still to take, in the order in which a column of numbers fills them
   * @param start the table's cell that a block without positions begins at; empty for its corner
   * @param frontFirst whether the first row of a block is the front row
   */
  public record Onto(
      List<GridPoint> points,
      double depth,
      LengthUnit unit,
      List<UUID> way,
      Optional<UUID> start,
      boolean frontFirst) {
    public Onto {
      points = List.copyOf(points);
      Objects.requireNonNull(unit, "unit");
      way = List.copyOf(way);
      Objects.requireNonNull(start, "start");
    }

    private List<GridPoint> plane() {
      return points.stream()
          .filter(point -> Math.abs(point.place().depth() - depth) < 1e-3)
          .toList();
    }
  }

  public PastedBlock {
    Objects.requireNonNull(layout, "layout");
    cells = List.copyOf(cells);
    problems = List.copyOf(problems);
  }

  /** Lays a block over a grid. */
  public static PastedBlock of(String text, Comma comma, Onto onto) {
    if (text.length() > MOST_CHARACTERS) {
      return nothing(
          String.format(
              Locale.ROOT,
              "The block has %d characters; at most %d are taken: paste it in parts",
              text.length(),
              MOST_CHARACTERS));
    }
    List<List<String>> rows = rows(text, comma);
    int size = rows.stream().mapToInt(List::size).sum();
    if (rows.isEmpty()) {
      return nothing("There is nothing in the block: copy the cells, then paste them here");
    }
    if (size > MOST_CELLS) {
      return nothing(
          String.format(
              Locale.ROOT,
              "The block has %d cells; at most %d are taken: paste it in parts",
              size,
              MOST_CELLS));
    }
    Laying laying = new Laying(onto);
    Map<String, Integer> names = names(rows.get(0));
    if (names.containsKey("x") && names.containsKey("y") && names.containsKey("ppfd")) {
      return laying.list(rows, names);
    }
    if (isGrid(rows)) {
      return laying.grid(rows);
    }
    List<List<String>> numbers = new ArrayList<>(rows);
    boolean header =
        rows.size() > 1
            && rows.get(0).stream().noneMatch(cell -> TypedNumber.read(cell).value().isPresent());
    if (header) {
      numbers.remove(0);
    }
    int widest = numbers.stream().mapToInt(List::size).max().orElse(0);
    if (widest == 1 && onto.start().isEmpty()) {
      return laying.way(numbers, header);
    }
    return laying.table(numbers, header);
  }

  private static PastedBlock nothing(String problem) {
    return new PastedBlock("Nothing to enter.", List.of(), List.of(problem));
  }

  /** Whether the commas of a block may be read in two ways. */
  static boolean commasMayMeanTwoThings(String text) {
    return text.indexOf(',') >= 0 && text.indexOf('\t') < 0 && text.indexOf(';') < 0;
  }

  private static List<List<String>> rows(String text, Comma comma) {
    List<String> lines = text.lines().map(line -> line.replace('\u00a0', ' ')).toList();
    String separator = separator(text, lines, comma);
    List<List<String>> rows = new ArrayList<>();
    for (String line : lines) {
      if (line.isBlank() || line.strip().startsWith("#")) {
        continue;
      }
      List<String> cells = new ArrayList<>();
      for (String cell : separator.isEmpty() ? new String[] {line} : line.split(separator, -1)) {
        String plain = cell.strip();
        cells.add(
            plain.length() > 1 && plain.startsWith("\"") && plain.endsWith("\"")
                ? plain.substring(1, plain.length() - 1).strip()
                : plain);
      }
      rows.add(cells);
    }
    return rows;
  }

  private static String separator(String text, List<String> lines, Comma comma) {
    if (text.indexOf('\t') >= 0) {
      return "\t";
    }
    if (text.indexOf(';') >= 0) {
      return ";";
    }
    boolean separates =
        switch (comma) {
          case DECIMAL -> false;
          case SEPARATOR -> true;
          // Points among the numbers, a comma with a space or several commas in a line: a list.
          case AUTO ->
              text.indexOf(',') >= 0
                  && (text.matches("(?s).*\\d\\.\\d.*")
                      || text.contains(", ")
                      || lines.stream()
                          .anyMatch(line -> line.chars().filter(c -> c == ',').count() > 1));
        };
    if (separates) {
      return ",";
    }
    // Numbers side by side, with nothing but spaces between them.
    boolean spaced =
        lines.stream()
            .filter(line -> !line.isBlank())
            .allMatch(line -> line.strip().matches("\\d+(?:[.,]\\d+)?(?:\\s+\\d+(?:[.,]\\d+)?)+"));
    return spaced ? "(?<=\\d)\\s+" : "";
  }

  private static Map<String, Integer> names(List<String> header) {
    Map<String, Integer> names = new LinkedHashMap<>();
    for (int column = 0; column < header.size(); column++) {
      String name = header.get(column).toLowerCase(Locale.ROOT).replaceAll("[^a-zµμ]+.*", "");
      if (name.equals("par") || name.equals("umol") || name.equals("µmol")) {
        name = "ppfd";
      }
      names.putIfAbsent(name, column);
    }
    return names;
  }

  /** Whether the first row and the first column are positions: the corner is no number. */
  private static boolean isGrid(List<List<String>> rows) {
    List<String> first = rows.get(0);
    return rows.size() > 1
        && first.size() > 1
        && !POSITION.matcher(first.get(0)).matches()
        && first.stream()
            .skip(1)
            .allMatch(cell -> cell.isEmpty() || POSITION.matcher(cell).matches())
        && first.stream().skip(1).anyMatch(cell -> !cell.isEmpty());
  }

  /** Lays one block; for one use. */
  private static final class Laying {
    private final Onto onto;
    private final List<GridPoint> plane;
    private final List<Cell> cells = new ArrayList<>();
    private final List<String> problems = new ArrayList<>();
    private int more;

    Laying(Onto onto) {
      this.onto = onto;
      this.plane = onto.plane();
    }

    private PastedBlock done(String layout) {
      if (more > 0) {
        problems.add(String.format(Locale.ROOT, "and %d more", more));
      }
      return new PastedBlock(layout, cells, problems);
    }

    private void problem(String text) {
      if (problems.size() < MOST_PROBLEMS) {
        problems.add(text);
      } else {
        more++;
      }
    }

    private void enter(GridPoint point, String typed, String where) {
      TypedNumber number = TypedNumber.read(typed);
      if (number.problem().isPresent()) {
        problem(where + ": " + number.problem().get());
      } else if (cells.stream().anyMatch(cell -> cell.point().equals(point))) {
        problem(where + ": a second value for the same place was left out");
      } else {
        cells.add(new Cell(point, typed, number.value().getAsDouble(), number.remark().orElse("")));
      }
    }

    private PastedBlock list(List<List<String>> rows, Map<String, Integer> names) {
      for (int row = 1; row < rows.size(); row++) {
        List<String> cells = rows.get(row);
        String where = "row " + (row + 1);
        double x = position(cell(cells, names.get("x")));
        double y = position(cell(cells, names.get("y")));
        double depth =
            names.containsKey("depth")
                ? position(cell(cells, names.get("depth")))
                : onto.unit().fromMetres(onto.depth());
        String typed = cell(cells, names.get("ppfd"));
        if (typed.isEmpty()) {
          continue;
        }
        if (Double.isNaN(x) || Double.isNaN(y) || Double.isNaN(depth)) {
          problem(where + ": x, y or depth is no number");
          continue;
        }
        place(x, y, depth, where).ifPresent(point -> enter(point, typed, where));
      }
      return done("A list with a row of names: each value goes to the place that its row states.");
    }

    private PastedBlock grid(List<List<String>> rows) {
      List<String> first = rows.get(0);
      double depth = onto.unit().fromMetres(onto.depth());
      for (int row = 1; row < rows.size(); row++) {
        List<String> cells = rows.get(row);
        double y = position(cells.get(0));
        if (Double.isNaN(y)) {
          problem(String.format(Locale.ROOT, "row %d: %s is no position", row + 1, cells.get(0)));
          continue;
        }
        for (int column = 1; column < cells.size(); column++) {
          if (cells.get(column).isEmpty()) {
            continue;
          }
          String where = String.format(Locale.ROOT, "row %d, column %d", row + 1, column + 1);
          double x = column < first.size() ? position(first.get(column)) : Double.NaN;
          if (Double.isNaN(x)) {
            problem(where + ": no position stands above it");
            continue;
          }
          String typed = cells.get(column);
          place(x, y, depth, where).ifPresent(point -> enter(point, typed, where));
        }
      }
      return done(
          "A grid with positions: x in its first row, y in its first column, at the depth shown.");
    }

    private PastedBlock way(List<List<String>> rows, boolean header) {
      int at = 0;
      for (int row = 0; row < rows.size(); row++) {
        String typed = rows.get(row).get(0);
        String where = "line " + (row + (header ? 2 : 1));
        if (at >= onto.way().size()) {
          problem(where + ": no place is left to read at this depth");
          continue;
        }
        UUID id = onto.way().get(at++);
        plane.stream()
            .filter(point -> point.reading().equals(id))
            .findFirst()
            .ifPresentOrElse(
                point -> enter(point, typed, where),
                () -> problem(where + ": the place is not of this depth; reload the page"));
      }
      return done(
          "Numbers below each other: they go along the way, from the next place on."
              + (header ? " The first line is a heading." : ""));
    }

    private PastedBlock table(List<List<String>> rows, boolean header) {
      List<Double> xs = axis(true);
      List<Double> ys = axis(false);
      int fromColumn = 0;
      int fromRow = onto.frontFirst() ? 0 : ys.size() - 1;
      if (onto.start().isPresent()) {
        Optional<GridPoint> start =
            plane.stream().filter(point -> point.reading().equals(onto.start().get())).findFirst();
        if (start.isPresent()) {
          fromColumn = nearest(xs, start.get().place().x());
          fromRow = nearest(ys, start.get().place().y());
        }
      }
      for (int row = 0; row < rows.size(); row++) {
        int toRow = onto.frontFirst() ? fromRow + row : fromRow - row;
        for (int column = 0; column < rows.get(row).size(); column++) {
          String typed = rows.get(row).get(column);
          if (typed.isEmpty()) {
            continue;
          }
          String where =
              String.format(Locale.ROOT, "row %d, column %d", row + (header ? 2 : 1), column + 1);
          int toColumn = fromColumn + column;
          if (toRow < 0 || toRow >= ys.size() || toColumn >= xs.size()) {
            problem(where + ": beyond the edge of the table");
            continue;
          }
          double x = xs.get(toColumn);
          double y = ys.get(toRow);
          plane.stream()
              .filter(point -> point.at(new Place(x, y, point.place().depth())))
              .findFirst()
              .ifPresentOrElse(
                  point -> enter(point, typed, where),
                  () -> problem(where + ": the grid has no place there"));
        }
      }
      return done(
          "A block without positions: it is laid over the table, "
              + (onto.frontFirst()
                  ? "its first row nearest to the front."
                  : "its first row nearest to the back.")
              + (header ? " The first line is a heading." : ""));
    }

    private List<Double> axis(boolean x) {
      TreeSet<Double> all = new TreeSet<>();
      plane.forEach(
          point -> all.add(Math.round((x ? point.place().x() : point.place().y()) * 1e4) / 1e4));
      return List.copyOf(all);
    }

    private static int nearest(List<Double> axis, double at) {
      int best = 0;
      for (int i = 1; i < axis.size(); i++) {
        if (Math.abs(axis.get(i) - at) < Math.abs(axis.get(best) - at)) {
          best = i;
        }
      }
      return best;
    }

    private Optional<GridPoint> place(double x, double y, double depth, String where) {
      Place place =
          new Place(onto.unit().toMetres(x), onto.unit().toMetres(y), onto.unit().toMetres(depth));
      Optional<GridPoint> found =
          onto.points().stream()
              .filter(
                  point ->
                      Math.abs(point.place().x() - place.x()) < NEAR
                          && Math.abs(point.place().y() - place.y()) < NEAR
                          && Math.abs(point.place().depth() - place.depth()) < NEAR)
              .findFirst();
      if (found.isEmpty()) {
        problem(
            String.format(
                Locale.ROOT,
                "%s: the grid has no place at x %s, y %s, depth %s %s",
                where,
                shown(x),
                shown(y),
                shown(depth),
                onto.unit().symbol()));
      }
      return found;
    }

    private static String cell(List<String> row, int column) {
      return column < row.size() ? row.get(column) : "";
    }

    private static double position(String text) {
      var matcher = POSITION.matcher(text);
      return matcher.matches()
          ? Double.parseDouble(matcher.group(1).replace(',', '.'))
          : Double.NaN;
    }

    private static String shown(double value) {
      String text = String.format(Locale.ROOT, "%.2f", value);
      return text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }
  }
}
