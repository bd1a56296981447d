package parfield.formats;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import parfield.tank.Place;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/**
 * Places where light is wanted, as separated values: a row of names, then a place a row. Columns
 * are x, y and, if it differs from place to place, depth, in any order, each with its unit if it
 * has one; other columns are not used.
 */
public final class PlacesFile {
  /** Most bytes of a file of places. */
  static final int MOST_BYTES = 64 << 20;

  private static final List<String> NAMES = List.of("x", "y", "depth");
  private static final int DEPTH = 2;

  private final ReadingPlaces places;
  private final Decimals decimals;
  private final List<Double> depths;
  private final int[] columns = {-1, -1, -1};
  private final LengthUnit[] units = new LengthUnit[NAMES.size()];
  private boolean headed;

  private PlacesFile(ReadingPlaces places, Decimals decimals, List<Double> depths) {
    this.places = places;
    this.decimals = decimals;
    this.depths = depths;
  }

  /**
   * The places of a file.
   *
   * @param places in the order of the file; once for each depth, where the depths were given beside
   *     the file
   * @param assumptions what was taken without being stated, one plain sentence each
   */
  public record Read(List<Place> places, List<String> assumptions) {
    public Read {
      places = List.copyOf(places);
      assumptions = List.copyOf(assumptions);
    }
  }

  /**
   * Reads places.
   *
   * @param path the file
   * @param tank that must hold every place
   * @param unit of columns that state none
   * @param depths of a file without a column of depths [m], within the water; none if it has one
   * @throws InvalidFile with every fault of the file
   */
  public static Read read(Path path, Tank tank, LengthUnit unit, List<Double> depths) {
    Path name = path.getFileName();
    String file = name == null ? path.toString() : name.toString();
    Notes notes = new Notes();
    try {
      String text = Source.text(Source.bytes(path, MOST_BYTES));
      ReadingPlaces places =
          new ReadingPlaces(
              file,
              notes,
              new ReadingsFile.Context(unit, OptionalDouble.empty(), Optional.of(tank)));
      PlacesFile reader =
          new PlacesFile(places, Decimals.inText(TextTable.separator(text)), depths);
      TextTable.read(file, text, notes, reader.new Rows());
      reader.decimals.close(file, notes);
      return reader.read(file, notes);
    } catch (Unreadable e) {
      throw notes.fatal(e.of(file));
    }
  }

  private Read read(String file, Notes notes) {
    List<Place> read = new ArrayList<>();
    places.close().forEach(reading -> read.add(reading.place()));
    if (read.isEmpty() && notes.count() == 0) {
      notes.fault(
          new Fault(
              file, 0, 0, "number of places", "0", "1 or more", "write a row for each place"));
    }
    notes.throwIfFaulty();
    return new Read(inOrder(read), notes.assumptions());
  }

  /** Rows repeated for several depths: depth by depth instead of row by row. */
  private List<Place> inOrder(List<Place> read) {
    List<Place> ordered = new ArrayList<>();
    int step = Math.max(1, depths.size());
    for (int from = 0; from < step; from++) {
      for (int i = from; i < read.size(); i += step) {
        ordered.add(read.get(i));
      }
    }
    return ordered;
  }

  /** Takes the rows of the table. */
  private final class Rows implements TextTable.Rows {
    @Override
    public void comment(int line, String text) {}

    @Override
    public void blank(int line) {}

    @Override
    public void row(int line, List<String> cells) {
      if (!headed) {
        headed = true;
        head(line, cells);
      } else if (columns[0] >= 0 && columns[1] >= 0 && (columns[DEPTH] >= 0 || !depths.isEmpty())) {
        place(line, cells);
      }
    }
  }

  private void head(int line, List<String> cells) {
    for (int i = 0; i < cells.size(); i++) {
      Column column = Column.of(cells.get(i), NAMES);
      int which = NAMES.indexOf(column.name());
      if (which < 0) {
        places
            .notes()
            .assume(places.file() + ": the column " + Notes.shown(cells.get(i)) + " is not used");
      } else if (columns[which] >= 0) {
        places.fault(line, "columns", "two for " + NAMES.get(which), "one", "delete one of them");
      } else {
        columns[which] = i;
        units[which] = places.unit(line, NAMES.get(which), column.unit());
      }
    }
    for (int which = 0; which < DEPTH; which++) {
      if (columns[which] < 0) {
        places.fault(
            line,
            "columns",
            Notes.shown(cells),
            "x, y, depth",
            String.format(Locale.ROOT, "name the column that holds %s", NAMES.get(which)));
      }
    }
    if (columns[DEPTH] < 0 && depths.isEmpty()) {
      places.fault(
          line,
          "depth",
          "neither a column nor a depth beside the file",
          "one of them",
          "add a column depth_cm, or give --depth");
    } else if (columns[DEPTH] >= 0 && !depths.isEmpty()) {
      places.fault(
          line,
          "depth",
          "a column and a depth beside the file",
          "one of them",
          "delete the column, or leave --depth out");
    }
  }

  private void place(int line, List<String> cells) {
    double[] numbers = new double[NAMES.size()];
    boolean complete = true;
    for (int which = 0; which < numbers.length; which++) {
      if (columns[which] >= 0) {
        String cell = columns[which] < cells.size() ? cells.get(columns[which]) : "";
        numbers[which] = decimals.parse(line, cell);
        if (Double.isNaN(numbers[which])) {
          places.fault(
              line,
              NAMES.get(which),
              cell.isEmpty() ? "nothing" : Notes.shown(cell),
              "a number",
              decimals.cure(cell));
          complete = false;
        }
      }
    }
    if (!complete) {
      return;
    }
    double x = places.x(line, new ReadingPlaces.Length(numbers[0], units[0]));
    double y = places.y(line, new ReadingPlaces.Length(numbers[1], units[1]));
    if (depths.isEmpty()) {
      double depth = places.depth(line, new ReadingPlaces.Length(numbers[DEPTH], units[DEPTH]));
      places.add(line, x, y, depth, 0);
    } else {
      depths.forEach(depth -> places.add(line, x, y, depth, 0));
    }
  }
}
