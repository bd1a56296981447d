package parfield.aquascape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.optics.Reflectance;

class AquascapeTest {
  private static final Reflectance GRAY = Reflectance.gray(0.2);

  private static Aquascape of(Shape... shapes) {
    return Aquascape.of(
        IntStream.range(0, shapes.length)
            .mapToObj(i -> new Rock("rock " + i, shapes[i], GRAY))
            .toList());
  }

  @Test
  void noRockStopsNothing() {
    RockHit hit = new RockHit();
    assertThat(Aquascape.none().nearest(0, 0, 0, 0, 0, 1, 10, hit)).isFalse();
    assertThat(hit.rock()).isEqualTo(-1);
    assertThat(hit.distance()).isInfinite();
    assertThat(Aquascape.none().blocks(0, 0, 0, 0, 0, 1, 10)).isFalse();
    assertThat(Aquascape.none().inside(0, 0, 0)).isFalse();
    assertThat(Aquascape.of(List.of())).isSameAs(Aquascape.none());
    assertThat(Aquascape.none().bounds()).isEmpty();
  }

  @Test
  void twoRocksOfOneNameAreRefused() {
    Rock rock = new Rock("arch", new Box(0, 0, 0, 1, 1, 1, 0), GRAY);
    assertThatThrownBy(() -> Aquascape.of(List.of(rock, rock)))
        .hasMessage("two rocks are called arch; each needs its own name");
    assertThatThrownBy(() -> new Rock(" ", rock.shape(), GRAY)).hasMessage("a rock needs a name");
  }

  @Test
  void equalRocksMakeEqualAquascapes() {
    Ellipsoid ellipsoid = new Ellipsoid(0, 0, 0, 1, 1, 1, 0);
    assertThat(of(Meshes.of(ellipsoid, 2)))
        .isEqualTo(of(Meshes.of(ellipsoid, 2)))
        .hasSameHashCodeAs(of(Meshes.of(ellipsoid, 2)))
        .isNotEqualTo(of(Meshes.of(ellipsoid, 1)))
        .isNotEqualTo(of(ellipsoid));
  }

  /** Closed form: a ray parallel to an axis, at offset s, meets a sphere at √(R² − s²) before. */
  @Test
  void raysMeetASphereWhereTheFormulaSays() {
    Aquascape sphere = of(new Ellipsoid(0.5, 0.4, 0.3, 0.1, 0.1, 0.1, 1));
    RockHit hit = new RockHit();
    for (double s : new double[] {0, 0.03, -0.06, 0.0999}) {
      double before = Math.sqrt(0.01 - s * s);
      assertThat(sphere.nearest(0, 0.4 + s, 0.3, 1, 0, 0, 9, hit)).isTrue();
      assertThat(hit.distance()).isCloseTo(0.5 - before, within(1e-13));
      assertThat(hit.normalX()).isCloseTo(-before / 0.1, within(1e-9));
      assertThat(hit.normalY()).isCloseTo(s / 0.1, within(1e-9));
      assertThat(hit.normalZ()).isCloseTo(0, within(1e-9));
      assertThat(sphere.blocks(0, 0.4 + s, 0.3, 1, 0, 0, hit.distance() + 1e-9)).isTrue();
      assertThat(sphere.blocks(0, 0.4 + s, 0.3, 1, 0, 0, hit.distance() - 1e-9)).isFalse();
    }
    assertThat(sphere.nearest(0, 0.4 + 0.1001, 0.3, 1, 0, 0, 9, hit)).isFalse();
    assertThat(sphere.nearest(0, 0.4, 0.3, -1, 0, 0, 9, hit)).isFalse();
    // From within, the far side, and the normal looks inward.
    assertThat(sphere.nearest(0.5, 0.4, 0.3, 0, 0, -1, 9, hit)).isTrue();
    assertThat(hit.distance()).isCloseTo(0.1, within(1e-13));
    assertThat(hit.normalZ()).isCloseTo(1, within(1e-12));
  }

  @Test
  void raysMeetATurnedBoxWhereTheFormulaSays() {
    // A cube turned by 45 degrees shows an upright edge at half its diagonal.
    Aquascape cube = of(new Box(0.5, 0.5, 0.5, 0.2, 0.2, 0.2, Math.PI / 4));
    RockHit hit = new RockHit();
    assertThat(cube.nearest(0, 0.5 + 0.01, 0.5, 1, 0, 0, 9, hit)).isTrue();
    assertThat(hit.distance()).isCloseTo(0.5 - Math.sqrt(0.02) + 0.01, within(1e-13));
    assertThat(hit.normalX()).isCloseTo(-Math.sqrt(0.5), within(1e-12));
    assertThat(hit.normalY()).isCloseTo(Math.sqrt(0.5), within(1e-12));
    assertThat(cube.nearest(0.5, 0.6, 0, 0, 0, 1, 9, hit)).isTrue();
    assertThat(hit.distance()).isCloseTo(0.4, within(1e-13));
    assertThat(hit.normalZ()).isEqualTo(-1);
  }

  @Test
  void aHitNamesItsRock() {
    Aquascape two =
        of(new Box(0.5, 0.5, 0.5, 0.1, 0.1, 0.1, 0), new Ellipsoid(0.5, 0.5, 0.2, .1, .1, .05, 0));
    RockHit hit = new RockHit();
    assertThat(two.nearest(0.5, 0.5, 0, 0, 0, 1, 9, hit)).isTrue();
    assertThat(hit.rock()).isEqualTo(1);
    assertThat(two.nearest(0.5, 0.5, 1, 0, 0, -1, 9, hit)).isTrue();
    assertThat(hit.rock()).isEqualTo(0);
    assertThat(two.bounds()).contains(new Bounds(0.4, 0.6, 0.4, 0.6, 0.2 - 0.05, 0.5 + 0.05));
  }

  @Test
  void placesInsideAreTold() {
    Mesh mesh = Meshes.of(new Ellipsoid(0.2, 0.2, 0.2, 0.1, 0.1, 0.1, 0), 3);
    Aquascape rocks =
        of(
            new Box(0.5, 0.5, 0.5, 0.2, 0.1, 0.1, Math.PI / 2),
            new Ellipsoid(0.8, 0.8, 0.8, 0.05, 0.1, 0.02, 0),
            mesh);
    assertThat(rocks.inside(0.5, 0.59, 0.5)).isTrue();
    assertThat(rocks.inside(0.56, 0.5, 0.5)).isFalse();
    assertThat(rocks.inside(0.8, 0.89, 0.8)).isTrue();
    assertThat(rocks.inside(0.86, 0.8, 0.8)).isFalse();
    assertThat(rocks.inside(0.2, 0.2, 0.2)).isTrue();
    assertThat(rocks.inside(0.2, 0.2, 0.31)).isFalse();
    assertThat(rocks.inside(0.2, 0.2, 0.105)).isTrue();
    assertThat(rocks.inside(-5, 0.2, 0.2)).isFalse();
    assertThat(rocks.at(0.2, 0.2, 0.2)).map(Rock::name).contains("rock 2");
    assertThat(rocks.at(0.86, 0.8, 0.8)).isEmpty();
  }

  /** The same body said twice: in closed form and in triangles. */
  @Test
  void aBoxAndItsTwelveTrianglesAreOne() {
    SeededLaw.holds(
        200,
        random -> {
          Box box = RandomRocks.box(random);
          sameLight(random, of(box), of(Meshes.of(box)), 1e-9, 1);
        });
  }

  /** A mesh with its vertices on the ellipsoid stays within about edge²/8R of it. */
  @Test
  void anEllipsoidAndItsFineMeshAreOne() {
    SeededLaw.holds(
        40,
        random -> {
          Ellipsoid ellipsoid =
              new Ellipsoid(
                  0.5,
                  0.5,
                  0.5,
                  random.nextDouble(0.1, 0.3),
                  random.nextDouble(0.1, 0.3),
                  random.nextDouble(0.1, 0.3),
                  random.nextDouble(4));
          Mesh mesh = Meshes.of(ellipsoid, 5);
          assertThat(mesh.volume()).isCloseTo(ellipsoid.volume(), within(0.002 * mesh.volume()));
          sameLight(random, of(ellipsoid), of(mesh), 2e-3, 0.97);
        });
  }

  private static void sameLight(
      SplittableRandom random, Aquascape one, Aquascape other, double error, double least) {
    RockHit a = new RockHit();
    RockHit b = new RockHit();
    int agreed = 0;
    int hits = 0;
    for (int i = 0; i < 300; i++) {
      double[] ray = Rays.toward(random, one);
      boolean first = one.nearest(ray[0], ray[1], ray[2], ray[3], ray[4], ray[5], 9, a);
      boolean second = other.nearest(ray[0], ray[1], ray[2], ray[3], ray[4], ray[5], 9, b);
      hits += first ? 1 : 0;
      // At a glancing angle a small offset of the surface moves the hit far.
      boolean close =
          first == second
              && (!first || Math.abs(a.distance() - b.distance()) <= error * slant(ray, a));
      agreed += close ? 1 : 0;
    }
    assertThat(hits).isGreaterThan(30);
    assertThat(agreed / 300.0).isGreaterThanOrEqualTo(least);
  }

  private static double slant(double[] ray, RockHit hit) {
    double cosine = ray[3] * hit.normalX() + ray[4] * hit.normalY() + ray[5] * hit.normalZ();
    return 1 / Math.max(1e-3, Math.abs(cosine));
  }
}
