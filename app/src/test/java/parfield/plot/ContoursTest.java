package parfield.plot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Isolines of fields whose isolines are known. */
class ContoursTest {
  @Test
  @DisplayName("the isolines of a paraboloid are circles, within 1 % of their radius")
  void circle() {
    Lattice field = lattice(41, 41, (x, y) -> Math.pow(x - 0.5, 2) + Math.pow(y - 0.5, 2));

    List<Line> lines = Contours.of(field, 0.3 * 0.3);

    assertThat(lines).hasSize(1);
    Line circle = lines.get(0);
    assertThat(circle.closed()).isTrue();
    assertThat(radii(circle)).allSatisfy(r -> assertThat(r).isCloseTo(0.3, within(0.003)));
    double[] distances = circle.distances();
    assertThat(distances[distances.length - 1]).isCloseTo(2 * Math.PI * 0.3, within(0.006 * 3));
  }

  @Test
  @DisplayName("a circle read from the cells of a coarse raster stays within 1 %")
  void circleOfRaster() {
    double[] values = new double[20 * 20];
    for (int i = 0; i < values.length; i++) {
      int row = i / 20;
      int column = i % 20;
      values[i] = Math.exp(-8 * (Math.pow((column - 9.5) / 20, 2) + Math.pow((row - 9.5) / 20, 2)));
    }

    List<Line> lines =
        Contours.of(Lattice.of(new Raster(20, 20, values), 101, 101), Math.exp(-8 * 0.09));

    assertThat(lines).hasSize(1);
    assertThat(radii(lines.get(0))).allSatisfy(r -> assertThat(r).isCloseTo(0.3, within(0.003)));
  }

  @Test
  @DisplayName("on a plane, linear interpolation is exact")
  void plane() {
    Lattice field = lattice(7, 5, (x, y) -> 3 * x + 2 * y);

    List<Line> lines = Contours.of(field, 2);

    assertThat(lines).hasSize(1);
    Line line = lines.get(0);
    assertThat(line.closed()).isFalse();
    for (int i = 0; i < line.size(); i++) {
      assertThat(3 * line.x()[i] + 2 * line.y()[i]).isCloseTo(2, within(1e-12));
    }
  }

  @Test
  @DisplayName("at a saddle of one cell the lines part the lower corners if the saddle is higher")
  void saddle() {
    // Bilinear surface over the corners 3, 0, 3, 0: its saddle is at 1.5.
    Lattice cell = new Lattice(new double[] {0, 1}, new double[] {0, 1}, new double[] {3, 0, 0, 3});

    assertThat(Contours.of(cell, 1.2))
        .as("around the low corners (1, 0) and (0, 1)")
        .hasSize(2)
        .allSatisfy(line -> assertThat(sidesOfDiagonal(line, 1)).isEqualTo(1));
    assertThat(Contours.of(cell, 1.8))
        .as("around the high corners (0, 0) and (1, 1)")
        .hasSize(2)
        .allSatisfy(line -> assertThat(sidesOfDiagonal(line, -1)).isEqualTo(1));
  }

  @Test
  @DisplayName("on both sides of a saddle two isolines run where the hyperbola does")
  void hyperbola() {
    Lattice field = lattice(60, 60, (x, y) -> (x - 0.5) * (y - 0.5));

    for (double level : new double[] {0.01, -0.01}) {
      List<Line> lines = Contours.of(field, level);
      assertThat(lines).hasSize(2);
      for (Line line : lines) {
        for (int i = 0; i < line.size(); i++) {
          assertThat((line.x()[i] - 0.5) * (line.y()[i] - 0.5)).isCloseTo(level, within(1e-9));
        }
      }
    }
  }

  @Test
  @DisplayName("what lies at or above a level is closed along the edge; its area is right")
  void closedAlongEdge() {
    Lattice field = lattice(31, 31, (x, y) -> x);

    List<Line> lines = Contours.around(field, 0.25);

    assertThat(lines).hasSize(1);
    assertThat(lines.get(0).closed()).isTrue();
    assertThat(area(lines.get(0))).isCloseTo(0.75, within(1e-9));
    assertThat(Contours.around(field, 2)).isEmpty();
    assertThat(area(Contours.around(field, -1).get(0))).isCloseTo(1, within(1e-9));
  }

  @Test
  @DisplayName("areas above a level of rough fields agree with counting, whichever the saddles")
  void areasOfRoughFields() {
    for (long seed = 1; seed <= 20; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      double[] values = random.doubles(12 * 12).toArray();
      Lattice coarse = new Lattice(shares(12), shares(12), values);
      Lattice field = lattice(221, 221, coarse::at);

      double signed = Contours.around(field, 0.5).stream().mapToDouble(ContoursTest::area).sum();

      int above = 0;
      for (int i = 0; i < 1000; i++) {
        for (int j = 0; j < 1000; j++) {
          above += coarse.at((i + 0.5) / 1000, (j + 0.5) / 1000) >= 0.5 ? 1 : 0;
        }
      }
      assertThat(signed).as("seed %d", seed).isCloseTo(above / 1e6, within(2e-3));
    }
  }

  /** Area within a closed line, negative where it runs the other way round. */
  private static double area(Line line) {
    double twice = 0;
    for (int i = 1; i < line.size(); i++) {
      twice += line.x()[i - 1] * line.y()[i] - line.x()[i] * line.y()[i - 1];
    }
    return twice / 2;
  }

  private static List<Double> radii(Line line) {
    return IntStream.range(0, line.size())
        .mapToObj(i -> Math.hypot(line.x()[i] - 0.5, line.y()[i] - 0.5))
        .toList();
  }

  /** On how many sides of a diagonal a line runs: of y = x for 1, of y = 1 − x for −1. */
  private static long sidesOfDiagonal(Line line, int slope) {
    return IntStream.range(0, line.size())
        .mapToObj(
            i -> Math.signum(slope > 0 ? line.y()[i] - line.x()[i] : line.y()[i] + line.x()[i] - 1))
        .distinct()
        .count();
  }

  private static Lattice lattice(int columns, int rows, DoubleBinaryOperator value) {
    double[] x = shares(columns);
    double[] y = shares(rows);
    double[] values = new double[columns * rows];
    for (int j = 0; j < rows; j++) {
      for (int i = 0; i < columns; i++) {
        values[j * columns + i] = value.applyAsDouble(x[i], y[j]);
      }
    }
    return new Lattice(x, y, values);
  }

  private static double[] shares(int count) {
    return IntStream.range(0, count).mapToDouble(i -> i / (count - 1.0)).toArray();
  }
}
