package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.optics.Interface;
import parfield.tank.Lid;

class SurfacePathTest {
  private static final double N = 1.34;

  /** PHYSICS §1: r = h tan θ_a + d tan θ_w, n_a sin θ_a = n_w sin θ_w. */
  @Test
  void obeysSnellAndEndsWhereItShould() {
    SeededLaw.holds(
        2000,
        random -> {
          double height = .01 + random.nextDouble();
          double depth = random.nextDouble();
          double distance = Math.pow(10, 4 * random.nextDouble() - 3);
          SurfacePath path = SurfacePath.solve(height, depth, distance, N);
          assertThat(path.sineAir()).isCloseTo(N * path.sineWater(), within(1e-12));
          double end = path.crossing() + depth * path.sineWater() / path.cosineWater();
          assertThat(end).isCloseTo(distance, within(1e-9 * (1 + distance)));
          assertThat(path.crossing())
              .isCloseTo(height * path.sineAir() / path.cosineAir(), within(1e-9 * (1 + distance)));
          assertThat(path.lengthInWater()).isCloseTo(depth / path.cosineWater(), within(1e-12));
        });
  }

  /**
   * What leaves the source within a cone lands inside a circle: ∫ dΩ/dA · 2πr dr = 2π (1 − cos
   * θ_a).
   */
  @Test
  void conservesSolidAngle() {
    SeededLaw.holds(
        50,
        random -> {
          double height = .02 + .5 * random.nextDouble();
          double depth = random.nextDouble();
          double radius = .05 + 2 * random.nextDouble();
          double landed =
              GaussLegendre.integral(
                  0,
                  radius,
                  60,
                  r -> 2 * Math.PI * r * SurfacePath.solve(height, depth, r, N).spread());
          double left = 2 * Math.PI * (1 - SurfacePath.solve(height, depth, radius, N).cosineAir());
          assertThat(landed).isCloseTo(left, within(1e-7 * left));
        });
  }

  /** Straight down light falls off with h + d/n, not with h + d: PHYSICS §1. */
  @Test
  void fallsOffWithTheApparentDistanceStraightDown() {
    assertThat(SurfacePath.solve(.2, .25, 0, N).spread())
        .isCloseTo(1 / Math.pow(.2 + .25 / N, 2), within(1e-12));
    assertThat(SurfacePath.solve(.2, .25, 1e-8, N).spread())
        .isCloseTo(1 / Math.pow(.2 + .25 / N, 2), within(1e-6));
  }

  /** The table that the solver uses against the path itself, at random places. */
  @Test
  void theTableKeepsToThePath() {
    SeededLaw.holds(
        60,
        random -> {
          double height = .02 + .6 * random.nextDouble();
          double depth = .005 + .8 * random.nextDouble();
          PathTable table = PathTable.of(height, depth, N, new Lid.None(), PathTable.STEPS);
          double zenith = weight(SurfacePath.solve(height, depth, 0, N));
          for (int i = 0; i < 40; i++) {
            double distance = 2.5 * random.nextDouble();
            double position = table.position(distance);
            int step = (int) position;
            double part = position - step;
            SurfacePath path = SurfacePath.solve(height, depth, distance, N);
            assertThat(table.weight(step, part)).isCloseTo(weight(path), within(2e-5 * zenith));
            assertThat(table.length(step, part))
                .isCloseTo(path.lengthInWater(), within(2e-5 * depth));
            assertThat(table.sineWater(step, part)).isCloseTo(path.sineWater(), within(1e-5));
            assertThat(table.gamma(step, part)).isCloseTo(Math.asin(path.sineAir()), within(1e-4));
            assertThat(table.crossingRatio(step, part) * distance)
                .isCloseTo(path.crossing(), within(1e-4 * distance));
          }
        });
  }

  private static double weight(SurfacePath path) {
    return path.spread() * (1 - Interface.reflectance(path.cosineAir(), 1, N));
  }

  @Test
  void saysWhereItFoundNoPath() {
    assertThatThrownBy(() -> SurfacePath.solve(.2, .3, Double.NaN, N))
        .isInstanceOf(ArithmeticException.class)
        .hasMessage("no light path found for height 0.2 m, depth 0.3 m, distance NaN m");
  }
}
