package parfield.formats;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parfield.plan.NamedTank;
import parfield.units.LengthUnit;

/**
 * A list of tanks, as separated values: a row of names, then a tank a row. Columns are name, and of
 * the inside length, width and water, the depth of the water, in any order, each length with its
 * unit if it has one; other columns are not used.
 */
public final class TanksFile {
  /** Most tanks of a list: each takes a search, and a row of a printed table. */
  public static final int MOST = 12;

  private static final int MOST_BYTES = 1 << 20;
  private static final int LONGEST_NAME = 60;
  private static final List<String> NAMES = List.of("name", "length", "width", "water");

  private final String file;
  private final Notes notes;
  private final LengthUnit unit;
  private final Decimals decimals;
  private final int[] columns = {-1, -1, -1, -1};
  private final LengthUnit[] units = new LengthUnit[NAMES.size()];
  private final List<NamedTank> tanks = new ArrayList<>();
  private boolean headed;
  private boolean complete;

  private TanksFile(String file, Notes notes, LengthUnit unit, Decimals decimals) {
    this.file = file;
    this.notes = notes;
    this.unit = unit;
    this.decimals = decimals;
  }

  /**
   * Reads a list.
   *
   * @param path the file
   * @param unit of columns that state none
   * @return 1 to {@link #MOST} tanks, in the order of the file
   * @throws InvalidFile with every fault of the file
   */
  public static List<NamedTank> read(Path path, LengthUnit unit) {
    Path name = path.getFileName();
    String file = name == null ? path.toString() : name.toString();
    Notes notes = new Notes();
    try {
      String text = Source.text(Source.bytes(path, MOST_BYTES));
      TanksFile reader =
          new TanksFile(file, notes, unit, Decimals.inText(TextTable.separator(text)));
      TextTable.read(file, text, notes, reader.new Rows());
      reader.decimals.close(file, notes);
      return reader.list();
    } catch (Unreadable e) {
      throw notes.fatal(e.of(file));
    }
  }

  private List<NamedTank> list() {
    if ((tanks.isEmpty() || tanks.size() > MOST) && notes.count() == 0) {
      notes.fault(
          new Fault(
              file,
              0,
              0,
              "number of tanks",
              String.valueOf(tanks.size()),
              "1 to " + MOST,
              "write a row for each tank, in several files if they are many"));
    }
    notes.throwIfFaulty();
    return List.copyOf(tanks);
  }

  private void fault(int line, String what, String value, String limit, String cure) {
    notes.fault(new Fault(file, line, 0, what, value, limit, cure));
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
      } else if (complete) {
        tank(line, cells);
      }
    }
  }

  private void head(int line, List<String> cells) {
    for (int i = 0; i < cells.size(); i++) {
      Column column = Column.of(cells.get(i), NAMES);
      int which = NAMES.indexOf(column.name());
      if (which < 0) {
        continue;
      }
      if (columns[which] >= 0) {
        fault(line, "columns", "two for " + NAMES.get(which), "one", "delete one of them");
      }
      columns[which] = i;
      units[which] = unit(line, column);
    }
    complete = true;
    for (int which = 0; which < columns.length; which++) {
      if (columns[which] < 0) {
        complete = false;
        fault(
            line,
            "columns",
            Notes.shown(cells),
            String.join(", ", NAMES),
            String.format(Locale.ROOT, "name the column that holds %s", NAMES.get(which)));
      }
    }
  }

  private LengthUnit unit(int line, Column column) {
    Optional<LengthUnit> stated = Column.lengthUnit(column.unit());
    if (!column.unit().isEmpty() && stated.isEmpty()) {
      fault(
          line, column.name(), Notes.shown(column.unit()), "cm or in", "state one of these units");
    }
    return stated.orElse(unit);
  }

  private void tank(int line, List<String> cells) {
    String name = cell(cells, 0).strip();
    if (name.isEmpty() || name.length() > LONGEST_NAME) {
      fault(
          line,
          "name",
          name.isEmpty() ? "nothing" : Notes.shown(name),
          "1 to " + LONGEST_NAME + " letters",
          "give the tank a name");
      return;
    }
    double[] metres = new double[NAMES.size()];
    boolean whole = true;
    for (int which = 1; which < metres.length; which++) {
      String cell = cell(cells, which);
      double number = decimals.parse(line, cell);
      Limit limit = new Lengths(units[which]).positive();
      if (Double.isNaN(number) || !limit.contains(number)) {
        whole = false;
        fault(
            line,
            NAMES.get(which),
            cell.isEmpty() ? "nothing" : Notes.shown(cell),
            limit.text(),
            Double.isNaN(number) ? decimals.cure(cell) : "state the inside of the tank");
      }
      metres[which] = units[which].toMetres(number);
    }
    if (whole) {
      tanks.add(NamedTank.ofSize(name, metres[1], metres[2], metres[3]));
    }
  }

  private String cell(List<String> cells, int which) {
    return columns[which] < cells.size() ? cells.get(columns[which]) : "";
  }
}
