package parfield.photon;

import java.util.Arrays;
import java.util.List;
import parfield.lamp.IntensityDistribution;

/**
 * Draws directions about as often as a lamp sends light there, over all its channels.
 *
 * <p>The probability is constant within cells of γ and C. What is drawn too often or too seldom is
 * made up by the packet's weight, so that the cells need not be fine; each cell that any channel
 * might reach keeps some probability. Immutable.
 */
final class DirectionTable {
  private static final int ROWS = 128;
  private static final int COLUMNS = 48;

  /** Share of the packets that are spread evenly over the cells, whatever the lamp. */
  private static final double DEFENSIVE = 0.02;

  /** Cosine of γ at the cells' edges, falling. */
  private final double[] cosines;

  /** Share of the packets in all rows before each. */
  private final double[] before;

  /** The same along C within each row. */
  private final double[][] beforeInRow;

  private DirectionTable(double[] cosines, double[] before, double[][] beforeInRow) {
    this.cosines = cosines;
    this.before = before;
    this.beforeInRow = beforeInRow;
  }

  /**
   * The table of a lamp.
   *
   * @param channels distributions of all its channels
   */
  static DirectionTable of(List<IntensityDistribution> channels) {
    double[][] cells = new double[ROWS][COLUMNS];
    for (IntensityDistribution channel : channels) {
      double[][] own = new double[ROWS][COLUMNS];
      double sum = 0;
      for (int i = 0; i < ROWS; i++) {
        double solid = Math.cos(gamma(i)) - Math.cos(gamma(i + 1));
        for (int j = 0; j < COLUMNS; j++) {
          own[i][j] = mean(channel, i, j) * solid;
          sum += own[i][j];
        }
      }
      for (int i = 0; i < ROWS && sum > 0; i++) {
        for (int j = 0; j < COLUMNS; j++) {
          cells[i][j] += own[i][j] / sum;
        }
      }
    }
    int last = ROWS;
    while (last > 1 && Arrays.stream(cells[last - 1]).allMatch(cell -> cell == 0)) {
      last--;
    }
    return of(cells, Math.min(ROWS, last + 1));
  }

  private static DirectionTable of(double[][] cells, int rows) {
    double all = 0;
    for (double[] row : cells) {
      all += Arrays.stream(row).sum();
    }
    double[] cosines = new double[rows + 1];
    for (int i = 0; i <= rows; i++) {
      cosines[i] = Math.cos(gamma(i));
    }
    double sphere = cosines[0] - cosines[rows];
    double[] before = new double[rows + 1];
    double[][] beforeInRow = new double[rows][COLUMNS + 1];
    for (int i = 0; i < rows; i++) {
      double even = (cosines[i] - cosines[i + 1]) / sphere / COLUMNS;
      double[] row = beforeInRow[i];
      for (int j = 0; j < COLUMNS; j++) {
        double own = all > 0 ? (1 - DEFENSIVE) * cells[i][j] / all + DEFENSIVE * even : even;
        row[j + 1] = row[j] + own;
      }
      double whole = row[COLUMNS];
      before[i + 1] = before[i] + whole;
      for (int j = 0; j <= COLUMNS; j++) {
        row[j] /= whole;
      }
    }
    double whole = before[rows];
    for (int i = 0; i <= rows; i++) {
      before[i] /= whole;
    }
    return new DirectionTable(cosines, before, beforeInRow);
  }

  private static double gamma(int row) {
    return Math.PI * row / ROWS;
  }

  private static double mean(IntensityDistribution channel, int row, int column) {
    double sum = 0;
    for (double u = 0; u <= 1; u += 0.5) {
      double gamma = Math.PI * (row + u) / ROWS;
      for (double v = 0; v <= 1; v += 0.5) {
        sum += channel.intensity(gamma, 2 * Math.PI * (column + v) / COLUMNS);
      }
    }
    return sum / 9;
  }

  /**
   * Draws a direction.
   *
   * @param u evenly spread, 0 to below 1
   * @param v evenly spread, 0 to below 1
   * @param direction takes γ and C [rad]
   */
  void draw(double u, double v, double[] direction) {
    int row = cell(before, u);
    double inRow = (u - before[row]) / (before[row + 1] - before[row]);
    double[] columns = beforeInRow[row];
    int column = cell(columns, v);
    double inColumn = (v - columns[column]) / (columns[column + 1] - columns[column]);
    direction[0] = Math.acos(cosines[row] - inRow * (cosines[row] - cosines[row + 1]));
    direction[1] = 2 * Math.PI * (column + inColumn) / COLUMNS;
  }

  /**
   * Probability with which a direction is drawn.
   *
   * @param gamma polar angle [rad]
   * @param azimuth C [rad], −π to 2π
   * @return probability per solid angle [sr⁻¹]
   */
  double density(double gamma, double azimuth) {
    int row = (int) (gamma / Math.PI * ROWS);
    if (row >= before.length - 1) {
      return 0;
    }
    double turns = azimuth / (2 * Math.PI);
    int column = Math.min((int) ((turns - Math.floor(turns)) * COLUMNS), COLUMNS - 1);
    double[] columns = beforeInRow[row];
    double height = cosines[row] - cosines[row + 1];
    double width = 2 * Math.PI / COLUMNS;
    return (before[row + 1] - before[row])
        * (columns[column + 1] - columns[column])
        / (height * width);
  }

  private static int cell(double[] edges, double at) {
    int found = Arrays.binarySearch(edges, at);
    int cell = found >= 0 ? found : -found - 2;
    // Cells of no probability are never drawn: a point on their edge belongs to the next.
    while (cell < edges.length - 2 && edges[cell + 1] <= at) {
      cell++;
    }
    return Math.max(0, Math.min(cell, edges.length - 2));
  }
}
