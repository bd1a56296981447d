package parfield.aquascape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.optics.Reflectance;

/** The hierarchy against plain loops, and rays that like to slip through. */
class HierarchyTest {
  /** 60 aquascapes of up to 12 rocks, 100 rays each. */
  @Test
  void theHierarchyFindsWhatAPlainLoopFinds() {
    SeededLaw.holds(
        60,
        random -> {
          Aquascape rocks = RandomRocks.draw(random, 12);
          List<Aquascape> alone =
              rocks.rocks().stream().map(rock -> Aquascape.of(List.of(rock))).toList();
          RockHit hit = new RockHit();
          for (int i = 0; i < 100; i++) {
            double[] ray =
                random.nextInt(4) == 0 ? Rays.alongAxes(random) : Rays.toward(random, rocks);
            double nearest = Double.POSITIVE_INFINITY;
            for (Aquascape one : alone) {
              nearest = Math.min(nearest, loop(one.rocks().get(0).shape(), one, ray));
            }
            boolean met = nearest(rocks, ray, Double.POSITIVE_INFINITY, hit);
            if (met) {
              assertThat(hit.distance()).isCloseTo(nearest, within(1e-9 + 1e-6 * slant(ray, hit)));
              assertThat(blocks(rocks, ray, hit.distance() * (1 + 1e-12))).isTrue();
              assertThat(blocks(rocks, ray, hit.distance())).isFalse();
              assertThat(nearest(rocks, ray, hit.distance(), new RockHit())).isFalse();
            } else {
              assertThat(nearest).isInfinite();
              assertThat(blocks(rocks, ray, Double.POSITIVE_INFINITY)).isFalse();
            }
          }
        });
  }

  private static double slant(double[] ray, RockHit hit) {
    double cosine =
        Math.abs(ray[3] * hit.normalX() + ray[4] * hit.normalY() + ray[5] * hit.normalZ());
    return cosine < 1e-4 ? 1 : 0;
  }

  /** Möller and Trumbore 1997 over every triangle of a mesh; other bodies by themselves. */
  private static double loop(Shape shape, Aquascape alone, double[] ray) {
    if (!(shape instanceof Mesh mesh)) {
      RockHit hit = new RockHit();
      nearest(alone, ray, Double.POSITIVE_INFINITY, hit);
      return hit.distance();
    }
    double nearest = Double.POSITIVE_INFINITY;
    for (int t = 0; t < mesh.triangles(); t++) {
      nearest = Math.min(nearest, moellerTrumbore(mesh, t, ray));
    }
    return nearest;
  }

  private static double moellerTrumbore(Mesh mesh, int t, double[] ray) {
    double[] d = {ray[3], ray[4], ray[5]};
    double[] e1 = new double[3];
    double[] e2 = new double[3];
    double[] s = new double[3];
    for (int axis = 0; axis < 3; axis++) {
      e1[axis] = mesh.coordinate(t, 1, axis) - mesh.coordinate(t, 0, axis);
      e2[axis] = mesh.coordinate(t, 2, axis) - mesh.coordinate(t, 0, axis);
      s[axis] = ray[axis] - mesh.coordinate(t, 0, axis);
    }
    double[] p = cross(d, e2);
    double determinant = dot(e1, p);
    double u = dot(s, p) / determinant;
    double[] q = cross(s, e1);
    double v = dot(d, q) / determinant;
    double distance = dot(e2, q) / determinant;
    boolean inside = u >= -1e-9 && v >= -1e-9 && u + v <= 1 + 1e-9;
    return determinant != 0 && inside && distance > 0 ? distance : Double.POSITIVE_INFINITY;
  }

  private static double[] cross(double[] a, double[] b) {
    return new double[] {
      a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]
    };
  }

  private static double dot(double[] a, double[] b) {
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  }

  /** Rays from within a closed mesh at its corners, along its edges and at its faces' middles. */
  @Test
  void noRaySlipsThroughAnEdgeOrACorner() {
    SeededLaw.holds(
        60,
        random -> {
          Shape body =
              random.nextBoolean()
                  ? Meshes.of(RandomRocks.box(random))
                  : Meshes.of(RandomRocks.ellipsoid(random), random.nextInt(3));
          Mesh mesh = (Mesh) body;
          Aquascape rocks = Aquascape.of(List.of(new Rock("rock", mesh, Reflectance.gray(0.2))));
          Bounds bounds = mesh.bounds();
          double cx = (bounds.fromX() + bounds.toX()) / 2;
          double cy = (bounds.fromY() + bounds.toY()) / 2;
          double cz = (bounds.fromDepth() + bounds.toDepth()) / 2;
          for (int i = 0; i < 300; i++) {
            int t = random.nextInt(mesh.triangles());
            double share = random.nextInt(3) == 0 ? 0 : random.nextDouble();
            double[] end = new double[3];
            for (int axis = 0; axis < 3; axis++) {
              double a = mesh.coordinate(t, 0, axis);
              end[axis] = a + share * (mesh.coordinate(t, 1, axis) - a);
            }
            double[] ray = Rays.between(cx, cy, cz, end[0], end[1], end[2]);
            assertThat(blocks(rocks, ray, Double.POSITIVE_INFINITY)).isTrue();
            assertThat(nearest(rocks, ray, Double.POSITIVE_INFINITY, new RockHit())).isTrue();
          }
        });
  }

  @Test
  void hitsAreNumbersWhateverTheRay() {
    SeededLaw.holds(
        60,
        random -> {
          Aquascape rocks = RandomRocks.draw(random, 6);
          double[] odd = {
            0,
            -0.0,
            1,
            -1,
            1e-300,
            -1e-300,
            Double.MIN_VALUE,
            1e300,
            Double.NaN,
            Double.POSITIVE_INFINITY
          };
          RockHit hit = new RockHit();
          for (int i = 0; i < 500; i++) {
            double[] ray = new double[6];
            for (int k = 0; k < 6; k++) {
              boolean strange = random.nextInt(3) == 0;
              ray[k] = strange ? odd[random.nextInt(odd.length)] : RandomRocks.coordinate(random);
            }
            if (nearest(rocks, ray, 1e3, hit)) {
              assertThat(hit.distance()).isBetween(0.0, 1e3);
              assertThat(Math.hypot(Math.hypot(hit.normalX(), hit.normalY()), hit.normalZ()))
                  .isCloseTo(1, within(1e-9));
            } else {
              assertThat(hit.rock()).isEqualTo(-1);
            }
            blocks(rocks, ray, 1e3);
            rocks.inside(ray[0], ray[1], ray[2]);
          }
        });
  }

  @Test
  void whatIsInsideABodyIsInsideItsMesh() {
    SeededLaw.holds(
        60,
        random -> {
          Box box = RandomRocks.box(random);
          Aquascape closed = Aquascape.of(List.of(new Rock("a", box, Reflectance.gray(0))));
          Aquascape meshed =
              Aquascape.of(List.of(new Rock("a", Meshes.of(box), Reflectance.gray(0))));
          for (int i = 0; i < 300; i++) {
            double x = box.x() + random.nextDouble(-0.3, 0.3);
            double y = box.y() + random.nextDouble(-0.3, 0.3);
            double z = box.depth() + random.nextDouble(-0.25, 0.25);
            assertThat(meshed.inside(x, y, z)).isEqualTo(closed.inside(x, y, z));
          }
        });
  }

  @Test
  void aThousandBodiesInOnePlaceStillMakeAHierarchy() {
    SplittableRandom random = new SplittableRandom(1);
    List<Rock> rocks =
        java.util.stream.IntStream.range(0, 1_000)
            .mapToObj(
                i ->
                    new Rock(
                        "rock " + i,
                        new Box(0.5, 0.5, 0.5, 0.1, 0.1, random.nextDouble(0.1, 0.2), 0),
                        Reflectance.gray(0.1)))
            .toList();
    RockHit hit = new RockHit();
    assertThat(Aquascape.of(rocks).nearest(0.5, 0.5, 0, 0, 0, 1, 9, hit)).isTrue();
    double tallest =
        rocks.stream().mapToDouble(rock -> rock.shape().bounds().sizeZ()).max().orElseThrow();
    assertThat(hit.distance()).isCloseTo(0.5 - tallest / 2, within(1e-12));
  }

  private static boolean nearest(Aquascape rocks, double[] ray, double limit, RockHit hit) {
    return rocks.nearest(ray[0], ray[1], ray[2], ray[3], ray[4], ray[5], limit, hit);
  }

  private static boolean blocks(Aquascape rocks, double[] ray, double limit) {
    return rocks.blocks(ray[0], ray[1], ray[2], ray[3], ray[4], ray[5], limit);
  }
}
