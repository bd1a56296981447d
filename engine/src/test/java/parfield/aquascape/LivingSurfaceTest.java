package parfield.aquascape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.optics.Reflectance;

class LivingSurfaceTest {
  private static final double LENGTH = 1;
  private static final double WIDTH = 0.6;
  private static final double DEPTH = 0.5;

  private static LivingSurface of(int number, Shape... shapes) {
    Rock[] rocks = new Rock[shapes.length];
    for (int i = 0; i < rocks.length; i++) {
      rocks[i] = new Rock("rock " + i, shapes[i], Reflectance.gray(0.1));
    }
    return LivingSurface.of(Aquascape.of(List.of(rocks)), LENGTH, WIDTH, DEPTH, number);
  }

  private static double area(LivingSurface surface, Predicate<LivingSurface.Sample> which) {
    return surface.samples().stream().filter(which).mapToDouble(LivingSurface.Sample::area).sum();
  }

  @Test
  void withoutRocksItIsTheBottom() {
    LivingSurface surface = of(500);
    assertThat(surface.samples()).hasSize(500);
    assertThat(surface.area()).isCloseTo(LENGTH * WIDTH, within(1e-12));
    assertThat(surface.samples())
        .allSatisfy(
            sample -> {
              assertThat(sample.rock()).isEmpty();
              assertThat(sample.depth()).isEqualTo(DEPTH - 0.01);
              assertThat(sample.normalZ()).isEqualTo(-1);
            });
    // Evenly spread: each quarter gets its part.
    assertThat(area(surface, s -> s.x() < 0.5 && s.y() < 0.3)).isCloseTo(0.15, within(0.003));
  }

  @Test
  void aBlockAddsItsTopAndTakesItsFoot() {
    Box block = new Box(0.5, 0.3, 0.4, 0.3, 0.2, 0.2, 0.5);
    LivingSurface surface = of(4_000, block);
    assertThat(area(surface, s -> s.rock().isEmpty()))
        .isCloseTo(LENGTH * WIDTH - 0.06, within(0.002));
    assertThat(area(surface, s -> s.rock().equals(Optional.of("rock 0"))))
        .isCloseTo(0.06, within(0.002));
    assertThat(surface.samples())
        .filteredOn(s -> s.rock().isPresent())
        .allSatisfy(s -> assertThat(s.depth()).isCloseTo(0.29, within(1e-12)));
  }

  @Test
  void aRockThatHangsLeavesTheBottomFree() {
    LivingSurface surface = of(1_000, new Box(0.5, 0.3, 0.2, 0.3, 0.2, 0.1, 0));
    assertThat(surface.area()).isCloseTo(LENGTH * WIDTH + 0.06, within(1e-9));
  }

  /** The upper half of a sphere has the area 2πR²; of an oblate one, the closed form. */
  @Test
  void anEllipsoidAddsItsUpperHalf() {
    double r = 0.2;
    LivingSurface sphere = of(4_000, new Ellipsoid(0.5, 0.3, 0.3, r, r, r, 0));
    assertThat(area(sphere, s -> s.rock().isPresent()))
        .isCloseTo(2 * Math.PI * r * r, within(0.003));
    double c = 0.1;
    double e = Math.sqrt(1 - c * c / (r * r));
    double spheroid =
        2 * Math.PI * r * r * (1 + (1 - e * e) / e * (Math.log((1 + e) / (1 - e)) / 2));
    LivingSurface oblate = of(4_000, new Ellipsoid(0.5, 0.3, 0.3, r, r, c, 0));
    assertThat(area(oblate, s -> s.rock().isPresent())).isCloseTo(spheroid / 2, within(0.003));
    assertThat(sphere.samples())
        .filteredOn(s -> s.rock().isPresent())
        .allSatisfy(
            s -> {
              double dx = s.x() - 0.5;
              double dy = s.y() - 0.3;
              double dz = s.depth() - 0.3;
              assertThat(Math.sqrt(dx * dx + dy * dy + dz * dz)).isCloseTo(r + 0.01, within(1e-9));
              assertThat(s.normalX()).isCloseTo(dx / (r + 0.01), within(1e-9));
              assertThat(s.normalZ()).isCloseTo(dz / (r + 0.01), within(1e-9)).isNegative();
            });
  }

  @Test
  void aMeshAndItsBodyAddTheSame() {
    Ellipsoid ellipsoid = new Ellipsoid(0.5, 0.3, 0.3, 0.2, 0.15, 0.1, 0.7);
    double body = area(of(4_000, ellipsoid), s -> s.rock().isPresent());
    double mesh = area(of(4_000, Meshes.of(ellipsoid, 4)), s -> s.rock().isPresent());
    assertThat(mesh).isCloseTo(body, within(0.004));
  }

  @Test
  void whatIsBuriedOrOutOfTheWaterDoesNotCount() {
    Box lower = new Box(0.5, 0.3, 0.45, 0.3, 0.2, 0.1, 0);
    Box upper = new Box(0.5, 0.3, 0.35, 0.3, 0.2, 0.1, 0);
    LivingSurface stacked = of(2_000, lower, upper);
    assertThat(area(stacked, s -> s.rock().equals(Optional.of("rock 0")))).isZero();
    assertThat(area(stacked, s -> s.rock().equals(Optional.of("rock 1"))))
        .isCloseTo(0.06, within(0.002));
    // Its top stands out of the water; half of the other one is behind the pane.
    Box island = new Box(0.5, 0.3, 0.2, 0.3, 0.2, 0.6, 0);
    assertThat(area(of(2_000, island), s -> s.rock().isPresent())).isZero();
    Box outside = new Box(0, 0.3, 0.45, 0.3, 0.2, 0.1, 0);
    assertThat(area(of(2_000, outside), s -> s.rock().isPresent())).isCloseTo(0.03, within(0.002));
    // Wholly in the sand.
    Box sunk = new Box(0.5, 0.3, 0.6, 0.3, 0.2, 0.1, 0);
    assertThat(of(2_000, sunk).area()).isCloseTo(LENGTH * WIDTH, within(0.01));
  }

  @Test
  void everyPlaceLiesInFreeWater() {
    SeededLaw.holds(
        40,
        random -> {
          Aquascape rocks = RandomRocks.draw(random, 6);
          LivingSurface surface = LivingSurface.of(rocks, LENGTH, WIDTH, DEPTH, 200);
          assertThat(surface.samples())
              .allSatisfy(
                  s -> {
                    assertThat(rocks.inside(s.x(), s.y(), s.depth())).isFalse();
                    assertThat(s.x()).isBetween(0.0, LENGTH);
                    assertThat(s.y()).isBetween(0.0, WIDTH);
                    assertThat(s.depth()).isBetween(0.0, DEPTH);
                    assertThat(s.normalZ()).isNegative();
                    assertThat(Math.hypot(Math.hypot(s.normalX(), s.normalY()), s.normalZ()))
                        .isCloseTo(1, within(1e-9));
                  });
          assertThat(surface.area()).isCloseTo(area(surface, s -> true), within(1e-9));
        });
  }

  @Test
  void itNeedsAPlace() {
    assertThatThrownBy(() -> of(0))
        .hasMessage("a living surface needs 1 place or more to look at; got 0");
  }
}
