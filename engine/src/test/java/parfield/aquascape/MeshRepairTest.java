package parfield.aquascape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.optics.Reflectance;

class MeshRepairTest {
  private static final int MOST = 100_000;
  private static final Box BLOCK = new Box(0.5, 0.5, 0.5, 0.4, 0.2, 0.1, 0.3);
  private static final Ellipsoid BOULDER = new Ellipsoid(0.5, 0.5, 0.5, 0.3, 0.2, 0.1, 0.4);

  /**
   * The triangles of a mesh one by one, each with corners of its own, as an STL file holds them.
   */
  private static double[] soup(Mesh mesh) {
    double[] vertices = new double[9 * mesh.triangles()];
    for (int i = 0; i < vertices.length; i++) {
      vertices[i] = mesh.coordinate(i / 9, i / 3 % 3, i % 3);
    }
    return vertices;
  }

  private static int[] ascending(double[] soup) {
    int[] corners = new int[soup.length / 3];
    Arrays.setAll(corners, i -> i);
    return corners;
  }

  private static MeshRepair.Repaired repair(double[] soup) {
    return MeshRepair.repair(soup, ascending(soup), MOST);
  }

  private static double[] without(double[] soup, int... triangles) {
    double[] rest = new double[soup.length - 9 * triangles.length];
    int at = 0;
    for (int t = 0; t < soup.length / 9; t++) {
      int triangle = t;
      if (Arrays.stream(triangles).noneMatch(i -> i == triangle)) {
        System.arraycopy(soup, 9 * t, rest, at, 9);
        at += 9;
      }
    }
    return rest;
  }

  private static void turn(double[] soup, int triangle) {
    for (int axis = 0; axis < 3; axis++) {
      double kept = soup[9 * triangle + 3 + axis];
      soup[9 * triangle + 3 + axis] = soup[9 * triangle + 6 + axis];
      soup[9 * triangle + 6 + axis] = kept;
    }
  }

  private static double[] joined(double[]... soups) {
    return Arrays.stream(soups).flatMapToDouble(Arrays::stream).toArray();
  }

  @Test
  void aSoundMeshStaysAsItIs() {
    Mesh boulder = Meshes.of(BOULDER, 4);
    MeshRepair.Repaired repaired = repair(soup(boulder));
    assertThat(repaired.mesh().triangles()).isEqualTo(boulder.triangles());
    assertThat(repaired.mesh().volume()).isEqualTo(boulder.volume());
    assertThat(repaired.report())
        .isEqualTo(new MeshRepair.Report(boulder.triangles(), 0, 0, 0, 0, 0, 0, 0));
  }

  @Test
  void aMeshTurnedInsideOutIsTurnedBack() {
    Mesh boulder = Meshes.of(BOULDER, 3);
    double[] soup = soup(boulder);
    for (int t = 0; t < boulder.triangles(); t++) {
      turn(soup, t);
    }
    MeshRepair.Repaired repaired = repair(soup);
    assertThat(repaired.mesh().volume()).isCloseTo(boulder.volume(), within(1e-12));
    assertThat(repaired.report().turned()).isEqualTo(boulder.triangles());
  }

  @Test
  void trianglesThatFaceEitherWayAreTurnedAlike() {
    SeededLaw.holds(
        30,
        random -> {
          Mesh boulder = Meshes.of(BOULDER, 3);
          double[] soup = soup(boulder);
          int turned = 0;
          for (int t = 0; t < boulder.triangles(); t++) {
            if (random.nextInt(4) == 0) {
              turn(soup, t);
              turned++;
            }
          }
          MeshRepair.Repaired repaired = repair(soup);
          assertThat(repaired.mesh().volume()).isCloseTo(boulder.volume(), within(1e-12));
          assertThat(repaired.report().turned()).isEqualTo(turned);
          assertThat(repaired.report().holes()).isZero();
        });
  }

  @Test
  void holesAreClosedAndTold() {
    double[] soup = soup(Meshes.of(BLOCK));
    // Both triangles of the top, which is 0.4 m by 0.2 m, turned by 0.3 rad.
    MeshRepair.Repaired repaired = repair(without(soup, 0, 1));
    assertThat(repaired.mesh().volume()).isCloseTo(BLOCK.volume(), within(1e-12));
    assertThat(repaired.report().holes()).isEqualTo(1);
    assertThat(repaired.report().widestHole())
        .isCloseTo(0.4 * Math.cos(0.3) + 0.2 * Math.sin(0.3), within(1e-12));
    // One triangle each of top and foot: two holes.
    assertThat(repair(without(soup, 0, 2)).report().holes()).isEqualTo(2);
  }

  @Test
  void manyHolesAndTurnedTrianglesTogetherStillCloseUp() {
    SeededLaw.holds(
        60,
        random -> {
          Mesh boulder = Meshes.of(BOULDER, 3);
          double[] soup = soup(boulder);
          for (int t = 0; t < boulder.triangles(); t++) {
            if (random.nextInt(5) == 0) {
              turn(soup, t);
            }
          }
          int[] gone = random.ints(60, 0, boulder.triangles()).distinct().toArray();
          MeshRepair.Repaired repaired = repair(without(soup, gone));
          assertThat(repaired.report().holes()).isPositive();
          assertThat(repaired.mesh().volume())
              .isCloseTo(boulder.volume(), within(0.02 * boulder.volume()));
          insideAgrees(random, repaired.mesh());
        });
  }

  private static void insideAgrees(SplittableRandom random, Mesh mesh) {
    Aquascape rocks = Aquascape.of(List.of(new Rock("rock", mesh, Reflectance.gray(0))));
    for (int i = 0; i < 50; i++) {
      double u = random.nextDouble(-0.3, 0.3);
      double v = random.nextDouble(-0.2, 0.2);
      double w = random.nextDouble(-0.1, 0.1);
      double r = Math.sqrt(u * u / 0.09 + v * v / 0.04 + w * w / 0.01);
      double x = 0.5 + Math.cos(0.4) * u - Math.sin(0.4) * v;
      double y = 0.5 + Math.sin(0.4) * u + Math.cos(0.4) * v;
      if (r < 0.85 || r > 1.02) {
        assertThat(rocks.inside(x, y, 0.5 + w)).isEqualTo(r < 1);
      }
    }
  }

  @Test
  void doubleAndCollapsedTrianglesAreDropped() {
    double[] soup = soup(Meshes.of(BLOCK));
    double[] twice = joined(soup, soup);
    // Each triangle there and back: facing either way, all of it.
    for (int t = 0; t < 12; t++) {
      turn(twice, t);
    }
    double[] collapsed = {0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.6, 0.5, 0.5};
    MeshRepair.Repaired repaired = repair(joined(soup, collapsed));
    assertThat(repaired.report()).isEqualTo(new MeshRepair.Report(13, 1, 0, 0, 0, 0, 0, 0));
    assertThat(repaired.mesh().volume()).isCloseTo(BLOCK.volume(), within(1e-12));
    assertThat(repair(twice).mesh().volume()).isCloseTo(BLOCK.volume(), within(1e-12));
    assertThat(repair(twice).report().dropped()).isEqualTo(12);
    repaired = repair(joined(soup, Arrays.copyOf(soup, 9)));
    assertThat(repaired.report().dropped()).isEqualTo(1);
    assertThat(repaired.report().holes()).isZero();
  }

  @Test
  void aHollowBodyIsFilled() {
    double[] outer = soup(Meshes.of(BOULDER, 3));
    double[] inner = soup(Meshes.of(new Ellipsoid(0.5, 0.5, 0.5, 0.1, 0.1, 0.05, 0), 2));
    for (int t = 0; t < inner.length / 9; t++) {
      turn(inner, t);
    }
    Mesh mesh = repair(joined(outer, inner)).mesh();
    assertThat(Aquascape.of(List.of(new Rock("r", mesh, Reflectance.gray(0)))).inside(.5, .5, .5))
        .isTrue();
  }

  @Test
  void twoBlocksThatShareAnEdgeStayTwoBlocks() {
    double[] soup =
        joined(
            soup(Meshes.of(new Box(0.5, 0.5, 0.5, 0.2, 0.2, 0.2, 0))),
            soup(Meshes.of(new Box(0.7, 0.7, 0.5, 0.2, 0.2, 0.2, 0))));
    MeshRepair.Repaired repaired = repair(soup);
    assertThat(repaired.report().holes()).isZero();
    assertThat(repaired.mesh().volume()).isCloseTo(0.016, within(1e-12));
  }

  @Test
  void aBodyThatPassesThroughItselfIsTold() {
    double[] soup =
        joined(
            soup(Meshes.of(new Box(0.5, 0.5, 0.5, 0.4, 0.1, 0.1, 0))),
            soup(Meshes.of(new Box(0.5, 0.51, 0.52, 0.1, 0.4, 0.1, 0))));
    MeshRepair.Repaired repaired = repair(soup);
    assertThat(repaired.report().crossings()).isGreaterThanOrEqualTo(8);
    Aquascape cross =
        Aquascape.of(List.of(new Rock("cross", repaired.mesh(), Reflectance.gray(0.1))));
    assertThat(cross.inside(0.5, 0.5, 0.51)).isTrue();
    assertThat(cross.inside(0.65, 0.5, 0.51)).isTrue();
    assertThat(cross.inside(0.65, 0.6, 0.51)).isFalse();
  }

  @Test
  void tooManyTrianglesAreThinned() {
    Mesh fine = Meshes.of(BOULDER, 6);
    double[] soup = soup(fine);
    MeshRepair.Repaired repaired = MeshRepair.repair(soup, ascending(soup), 5_000);
    assertThat(repaired.report().thinned()).isEqualTo(fine.triangles());
    assertThat(repaired.mesh().triangles()).isBetween(1_500, 5_000);
    assertThat(repaired.report().moved()).isBetween(1e-4, 0.02);
    assertThat(repaired.mesh().volume()).isCloseTo(fine.volume(), within(0.02 * fine.volume()));
    Bounds bounds = repaired.mesh().bounds();
    assertThat(bounds.fromDepth()).isCloseTo(0.4, within(repaired.report().moved()));
  }

  @Test
  void whatEnclosesNothingIsRefused() {
    double[] sheet = {0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 0, 0, 1, 1, 0, 0, 1, 0};
    assertThatThrownBy(() -> repair(sheet))
        .hasMessage("its 2 triangles enclose no volume (0.00 m³ within 2.00 m² of surface)");
    double[] points = {0, 0, 0, 0, 0, 0, 1, 1, 1};
    assertThatThrownBy(() -> repair(points))
        .hasMessage("none of its 1 triangles has three corners apart");
    double[] broken = soup(Meshes.of(BLOCK));
    broken[13] = Double.POSITIVE_INFINITY;
    assertThatThrownBy(() -> repair(broken)).hasMessage("vertex 5 is not finite: Infinity");
    double[] same = new double[90];
    assertThatThrownBy(() -> repair(same))
        .hasMessage("none of its 10 triangles has three corners apart");
  }

  /** Triangles anywhere: a closed mesh or a refusal, never anything else. */
  @Test
  void anyTrianglesGiveAClosedMeshOrARefusal() {
    SeededLaw.holds(
        300,
        random -> {
          int count = random.nextInt(1, 60);
          int points = random.nextInt(3, 20);
          double[] vertices = new double[3 * points];
          for (int i = 0; i < vertices.length; i++) {
            vertices[i] = random.nextBoolean() ? random.nextInt(3) : random.nextDouble();
          }
          int[] corners = random.ints(3L * count, 0, points).toArray();
          try {
            MeshRepair.Repaired repaired =
                MeshRepair.repair(vertices, corners, random.nextInt(4, 40));
            assertThat(repaired.mesh().volume()).isPositive();
          } catch (IllegalArgumentException e) {
            assertThat(e.getMessage()).containsAnyOf("enclose no volume", "three corners apart");
          }
        });
  }
}
