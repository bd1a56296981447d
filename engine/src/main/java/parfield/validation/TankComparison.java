package parfield.validation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import parfield.field.Departure;
import parfield.field.FastSolver;
import parfield.field.FieldSolver;
import parfield.field.Places;
import parfield.photon.Effort;
import parfield.photon.PhotonTracer;
import parfield.photon.TracedField;
import parfield.photon.Wanted;
import parfield.photon.Watch;
import parfield.tank.Place;
import parfield.tank.Tank;

/**
 * How far the fast solver is from the reference in one tank.
 *
 * <p>Both are asked for the mean of E_d over level squares that cover the tank from pane to pane at
 * five depths: the reference counts what crosses a square, the fast solver is averaged over 12 × 12
 * points of it.
 *
 * @param tank what was compared
 * @param median of |fast / reference − 1| over the squares
 * @param high its 95th percentile
 * @param mean of fast / reference − 1 over the squares
 * @param noise median relative standard error of the reference, part of both figures
 * @param holds whether the fast solver says that its assumptions hold here
 */
public record TankComparison(
    ComparedTank tank, double median, double high, double mean, double noise, boolean holds) {
  private static final double[] DEPTHS = {.06, .28, .5, .72, .94};

  /** Error of the fast solver where its assumptions hold, in the median. */
  public static final double MOST_TYPICAL = 0.01;

  /** The same at the 95th percentile. */
  public static final double MOST_HIGH = 0.03;

  /** Median of |error| and, roughly, its 95th percentile over the noise that makes it. */
  private static final double MEDIAN_OF_NOISE = 0.7;

  private static final double HIGH_OF_NOISE = 2.5;

  /** About how wide the squares are [m]. */
  private static final double SQUARE = .05;

  /** Points along each side of a square: light steps sharply where a pane's mirror image ends. */
  private static final int POINTS = 12;

  /**
   * Compares the solvers in one tank.
   *
   * @param tank the rig
   * @param effort of the reference
   * @param watch told of its progress
   */
  public static TankComparison of(ComparedTank tank, Effort effort, Watch watch) {
    Tank water = tank.rig().tank();
    List<Place> squares = squares(water);
    double side = side(water);
    TracedField reference =
        new PhotonTracer(effort)
            .trace(tank.rig(), Wanted.at(Places.of(squares)).withSensor(side), watch);
    double[] fast = averaged(new FastSolver(), tank, squares, side);
    int n = squares.size();
    double[] differences = new double[n];
    double[] errors = new double[n];
    double sum = 0;
    for (int i = 0; i < n; i++) {
      double difference = fast[i] / reference.downwelling(i) - 1;
      sum += difference;
      differences[i] = Math.abs(difference);
      errors[i] = reference.downwellingError(i) / reference.downwelling(i);
    }
    Arrays.sort(differences);
    Arrays.sort(errors);
    return new TankComparison(
        tank,
        differences[n / 2],
        differences[(int) (.95 * n)],
        sum / n,
        errors[n / 2],
        Departure.of(water).isEmpty());
  }

  /**
   * Whether the fast solver errs no more than it says: by {@link #MOST_TYPICAL} in the median and
   * {@link #MOST_HIGH} at the 95th percentile, each with what it states to leave out in this tank,
   * and with what the reference does not know itself.
   */
  public boolean asStated() {
    double statedMedian = MOST_TYPICAL;
    double statedHigh = MOST_HIGH;
    for (Departure departure : Departure.of(tank.rig().tank())) {
      statedMedian += departure.typical();
      statedHigh += departure.high();
    }
    return median < statedMedian + MEDIAN_OF_NOISE * noise
        && high < statedHigh + HIGH_OF_NOISE * noise;
  }

  private static double side(Tank tank) {
    return Math.min(SQUARE, Math.min(tank.length(), tank.width()) / 6);
  }

  /** Squares from pane to pane, about a square's width apart, away from rock. */
  private static List<Place> squares(Tank tank) {
    double side = side(tank);
    int columns = (int) Math.max(3, Math.min(9, tank.length() / (2 * side)));
    int rows = (int) Math.max(3, Math.min(6, tank.width() / (2 * side)));
    List<Place> squares = new ArrayList<>();
    for (double depth : DEPTHS) {
      for (int j = 0; j < rows; j++) {
        for (int i = 0; i < columns; i++) {
          double x = side / 2 + (tank.length() - side) * i / (columns - 1);
          double y = side / 2 + (tank.width() - side) * j / (rows - 1);
          Place place = new Place(x, y, depth * tank.depth());
          if (clear(tank, place, side)) {
            squares.add(place);
          }
        }
      }
    }
    return squares;
  }

  private static boolean clear(Tank tank, Place place, double side) {
    for (double u = -.75; u <= .75; u += .25) {
      for (double v = -.75; v <= .75; v += .25) {
        if (tank.aquascape().inside(place.x() + u * side, place.y() + v * side, place.depth())) {
          return false;
        }
      }
    }
    return true;
  }

  private static double[] averaged(
      FieldSolver solver, ComparedTank tank, List<Place> squares, double side) {
    List<Place> points = new ArrayList<>();
    for (Place square : squares) {
      for (int p = 0; p < POINTS * POINTS; p++) {
        double u = ((p % POINTS) + .5) / POINTS - .5;
        double v = (Math.floorDiv(p, POINTS) + .5) / POINTS - .5;
        points.add(new Place(square.x() + u * side, square.y() + v * side, square.depth()));
      }
    }
    double[] values = solver.solve(tank.rig(), Places.of(points)).ppfd();
    double[] means = new double[squares.size()];
    for (int i = 0; i < values.length; i++) {
      means[i / (POINTS * POINTS)] += values[i] / (POINTS * POINTS);
    }
    return means;
  }

  @Override
  public String toString() {
    return String.format(
        Locale.ROOT,
        "%-10s %-28s median %.2f %%, 95th %.2f %%, mean %+.2f %%, noise %.2f %%",
        tank.name(),
        tank.stresses(),
        100 * median,
        100 * high,
        100 * mean,
        100 * noise);
  }
}
