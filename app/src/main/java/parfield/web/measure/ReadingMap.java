package parfield.web.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;
import parfield.answer.Numbers;
import parfield.plot.Caption;
import parfield.plot.HeatMap;
import parfield.plot.HeatMapSpec;
import parfield.plot.Raster;
import parfield.plot.Scene;
import parfield.rig.Rig;
import parfield.survey.Band;
import parfield.survey.Spot;
import parfield.survey.Survey;
import parfield.tank.Rectangle;
import parfield.units.LengthUnit;

/**
 * What the readings of one depth show, drawn between them.
 *
 * <p>Between the readings stands a thin-plate spline: the surface of least bending through all of
 * them (Duchon 1977, "Splines minimizing rotation-invariant semi-norms in Sobolev spaces"). It
 * knows nothing of lamps; outside of the readings it is hatched.
 */
final class ReadingMap {
  private static final int CELLS = 60;
  private static final int LEAST_CELLS = 8;
  private static final double SAME_DEPTH = 1e-3;

  /** How near to a reading the surface must pass, as a share of the greatest one. */
  private static final double PASSES = 1e-6;

  /** Fewer readings make no surface. */
  static final int LEAST_READINGS = 4;

  private ReadingMap() {}

  /**
   * The map of one depth; empty if there are fewer than {@link #LEAST_READINGS}, or they stand in
   * one line.
   */
  static Optional<String> svg(Survey survey, double depth, List<Band> bands, LengthUnit unit) {
    double[] ppfd = survey.ppfd();
    List<Spot> spots = new ArrayList<>();
    for (int i = 0; i < ppfd.length; i++) {
      if (Math.abs(survey.readings().get(i).place().depth() - depth) < SAME_DEPTH) {
        spots.add(new Spot(survey.readings().get(i).place(), ppfd[i]));
      }
    }
    if (spots.size() < LEAST_READINGS) {
      return Optional.empty();
    }
    double left = spots.stream().mapToDouble(spot -> spot.place().x()).min().orElseThrow();
    double right = spots.stream().mapToDouble(spot -> spot.place().x()).max().orElseThrow();
    double front = spots.stream().mapToDouble(spot -> spot.place().y()).min().orElseThrow();
    double back = spots.stream().mapToDouble(spot -> spot.place().y()).max().orElseThrow();
    Rig rig = survey.rig();
    double length = rig.tank().length();
    double width = rig.tank().width();
    double cell = Math.max(length, width) / CELLS;
    int columns = Math.max(LEAST_CELLS, (int) Math.round(length / cell));
    int rows = Math.max(LEAST_CELLS, (int) Math.round(width / cell));
    Optional<double[]> values = surface(spots, length, width, columns, rows);
    if (!(right > left && back > front) || values.isEmpty()) {
      return Optional.empty();
    }
    Caption caption =
        new Caption(
            String.format(
                Locale.ROOT,
                "PPFD read %s deep, survey %s",
                Numbers.withUnit(depth, unit),
                survey.name()),
            String.format(
                Locale.ROOT,
                "%d readings; drawn between them by a smooth surface, hatched where none was"
                    + " taken.",
                spots.size()));
    return Optional.of(
        HeatMap.svg(
            HeatMapSpec.of(
                    caption,
                    Scene.of(rig.tank(), unit)
                        .atDepth(depth)
                        .withFixtures(rig.hangings())
                        .withReadings(spots)
                        .withMeasured(new Rectangle(left, right, front, back)),
                    new Raster(columns, rows, values.get()))
                .withBands(bands)));
  }

  /** The surface at the centres of equal cells, x fastest; held to what was read. */
  private static Optional<double[]> surface(
      List<Spot> spots, double length, double width, int columns, int rows) {
    int n = spots.size();
    DMatrixRMaj matrix = new DMatrixRMaj(n + 3, n + 3);
    DMatrixRMaj right = new DMatrixRMaj(n + 3, 1);
    for (int i = 0; i < n; i++) {
      double x = spots.get(i).place().x();
      double y = spots.get(i).place().y();
      for (int j = 0; j < n; j++) {
        matrix.set(i, j, bend(x - spots.get(j).place().x(), y - spots.get(j).place().y()));
      }
      double[] plane = {1, x, y};
      for (int k = 0; k < 3; k++) {
        matrix.set(i, n + k, plane[k]);
        matrix.set(n + k, i, plane[k]);
      }
      right.set(i, 0, spots.get(i).ppfd());
    }
    LinearSolverDense<DMatrixRMaj> solver = LinearSolverFactory_DDRM.lu(n + 3);
    DMatrixRMaj weights = new DMatrixRMaj(n + 3, 1);
    if (!solver.setA(matrix)) {
      return Optional.empty();
    }
    solver.solve(right, weights);
    double least = spots.stream().mapToDouble(Spot::ppfd).min().orElseThrow();
    double most = spots.stream().mapToDouble(Spot::ppfd).max().orElseThrow();
    for (Spot spot : spots) {
      // Readings in one line leave the plane below the plate open.
      double missed = at(spots, weights, spot.place().x(), spot.place().y()) - spot.ppfd();
      if (!(Math.abs(missed) <= PASSES * (1 + most))) {
        return Optional.empty();
      }
    }
    double[] values = new double[columns * rows];
    for (int row = 0; row < rows; row++) {
      for (int column = 0; column < columns; column++) {
        double value =
            at(spots, weights, (column + 0.5) * length / columns, (row + 0.5) * width / rows);
        values[row * columns + column] = Math.max(least, Math.min(most, value));
      }
    }
    return Optional.of(values);
  }

  private static double at(List<Spot> spots, DMatrixRMaj weights, double x, double y) {
    int n = spots.size();
    double value = weights.get(n, 0) + weights.get(n + 1, 0) * x + weights.get(n + 2, 0) * y;
    for (int i = 0; i < n; i++) {
      value += weights.get(i, 0) * bend(x - spots.get(i).place().x(), y - spots.get(i).place().y());
    }
    return value;
  }

  /** The thin plate's r² log r. */
  private static double bend(double dx, double dy) {
    double squared = dx * dx + dy * dy;
    return squared == 0 ? 0 : 0.5 * squared * Math.log(squared);
  }
}
