package parfield.formats;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Readings out of rows of cells: a list or grids. For one thread and one table file or sheet.
 *
 * <p>A list begins with a row of names: x, y, depth and ppfd (or par) in any order, each with its
 * unit if it has one. A grid begins with a row of x positions after a corner cell that is empty or
 * says {@code y\x} and a unit; each row after it begins with its y position. An empty cell of a
 * grid is a place not measured. A depth statement, in a comment or in a row of its own or in the
 * corner, holds for the next table; a blank line ends a grid.
 */
final class ReadingsTable implements TextTable.Rows {
  static final int MOST_ROWS = 1_000_000;

  private final ReadingPlaces places;
  private final String file;
  private final Notes notes;
  private final Decimals decimals;

  private enum Part {
    NONE,
    LIST,
    GRID,
    NEITHER
  }

  private Part part = Part.NONE;
  private Optional<DepthStatement> depth = Optional.empty();
  private ReadingsList list;
  private ReadingsGrid grid;
  private int rows;

  /**
   * Starts a table.
   *
   * @param places checks places and keeps readings
   * @param decimals reads the table's numbers
   */
  ReadingsTable(ReadingPlaces places, Decimals decimals) {
    this.places = places;
    this.file = places.file();
    this.notes = places.notes();
    this.decimals = decimals;
  }

  @Override
  public void comment(int line, String text) {
    DepthStatement.of(line, text).ifPresent(this::depth);
  }

  private void depth(DepthStatement statement) {
    if (depth.isPresent()) {
      notes.fault(
          new Fault(
              file,
              statement.line(),
              0,
              "depth",
              "a second depth after line " + depth.get().line(),
              "one for each table",
              "delete one of the two"));
    }
    if (part == Part.GRID || (part == Part.LIST && places.count() > 0)) {
      part = Part.NONE;
    }
    depth = Optional.of(statement);
  }

  @Override
  public void blank(int line) {
    if (part == Part.GRID || part == Part.NEITHER) {
      part = Part.NONE;
    }
  }

  @Override
  public void row(int line, List<String> cells) {
    rows++;
    if (rows > MOST_ROWS) {
      throw notes.fatal(
          new Fault(
              file,
              line,
              0,
              "number of rows",
              "more",
              String.valueOf(MOST_ROWS),
              "split the file into several surveys"));
    }
    switch (part) {
      case NONE -> head(line, cells);
      case LIST -> list.row(line, cells);
      case GRID -> grid.row(line, cells);
      case NEITHER -> {}
    }
  }

  private void head(int line, List<String> cells) {
    Optional<DepthStatement> alone =
        DepthStatement.of(
            line, String.join(" ", cells.stream().filter(cell -> !cell.isEmpty()).toList()));
    if (alone.isPresent()) {
      depth(alone.get());
      return;
    }
    if (ReadingsList.isHead(cells)) {
      list = new ReadingsList(places, decimals, line, cells, takeDepth());
      part = Part.LIST;
      return;
    }
    ReadingsGrid.inCorner(line, cells).ifPresent(this::depth);
    if (ReadingsGrid.isHead(cells, decimals, line)) {
      grid = new ReadingsGrid(places, decimals, line, cells, takeDepth());
      part = Part.GRID;
      return;
    }
    notes.fault(
        new Fault(
            file,
            line,
            0,
            "head of the table",
            Notes.shown(String.join(" | ", cells.subList(0, Math.min(cells.size(), 6)))),
            "column names x, y, depth, ppfd, or a grid: an empty cell, then x positions",
            cells.get(0).toLowerCase(Locale.ROOT).matches("x\\W{1,3}y\\b.*")
                ? "put x along the first row and y down the first column, and write y\\x"
                : "write the first line as x_cm,y_cm,depth_cm,ppfd"));
    part = Part.NEITHER;
    takeDepth();
  }

  private Optional<DepthStatement> takeDepth() {
    Optional<DepthStatement> taken = depth;
    depth = Optional.empty();
    return taken;
  }

  /** Ends the table. */
  void close() {
    decimals.close(file, notes);
    if (depth.isPresent()) {
      notes.fault(
          new Fault(
              file,
              depth.get().line(),
              0,
              "depth",
              "no table after it",
              "a depth before the table that it belongs to",
              "move it, or delete it"));
    }
  }
}
