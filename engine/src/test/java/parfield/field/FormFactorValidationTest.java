package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.api.Test;
import parfield.ReferenceFolder;
import parfield.SeededLaw;

/** Holds form factors against published ones: closed forms of textbooks on radiative transfer. */
class FormFactorValidationTest {
  private static final double[] UP = {0, 0, 1};
  private static final double[] ALONG_X = {1, 0, 0};
  private static final int DISK_CORNERS = 4000;

  /** A level rectangle at a height, from one corner. */
  private static double[][] level(double x, double y, double sizeX, double sizeY, double height) {
    return new double[][] {
      {x, y, height}, {x + sizeX, y, height}, {x + sizeX, y + sizeY, height}, {x, y + sizeY, height}
    };
  }

  /** A level disk, as a polygon of its area. */
  private static double[][] disk(double centreX, double radius, double height) {
    double sector = 2 * Math.PI / DISK_CORNERS;
    double corner = radius * Math.sqrt(sector / Math.sin(sector));
    double[][] corners = new double[DISK_CORNERS][];
    for (int i = 0; i < DISK_CORNERS; i++) {
      corners[i] =
          new double[] {
            centreX + corner * Math.cos(i * sector), corner * Math.sin(i * sector), height
          };
    }
    return corners;
  }

  private static double fromOrigin(double[] normal, double[][] polygon) {
    return FormFactor.toPolygon(new double[] {0, 0, 0}, normal, polygon);
  }

  /** Between two level rectangles, one above the other: averaged over the lower. */
  private static double parallel(double sizeX, double sizeY) {
    double[][] above = level(0, 0, sizeX, sizeY, 1);
    double flux =
        GaussLegendre.integral(
            0,
            sizeX,
            3,
            x ->
                GaussLegendre.integral(
                    0, sizeY, 3, y -> FormFactor.toPolygon(new double[] {x, y, 0}, UP, above)));
    return flux / (sizeX * sizeY);
  }

  /**
   * From a level rectangle of width W to an upright one of height H along their common edge, where
   * the points stand close: x = W t².
   */
  private static double perpendicular(double width, double height) {
    double[][] upright = {{0, 0, 0}, {0, 1, 0}, {0, 1, height}, {0, 0, height}};
    double flux =
        GaussLegendre.integral(
            0,
            1,
            24,
            t ->
                2
                    * width
                    * t
                    * GaussLegendre.integral(
                        0,
                        1,
                        24,
                        y ->
                            FormFactor.toPolygon(new double[] {width * t * t, y, 0}, UP, upright)));
    return flux / width;
  }

  private static double disks(double from, double to) {
    double[][] above = disk(0, to, 1);
    double flux =
        GaussLegendre.integral(
            0,
            from,
            6,
            r -> 2 * Math.PI * r * FormFactor.toPolygon(new double[] {r, 0, 0}, UP, above));
    return flux / (Math.PI * from * from);
  }

  /** How each row of the published table is laid out. */
  private static final Map<String, DoubleSupplier> LAYOUTS =
      Map.ofEntries(
          Map.entry("parallel_coaxial_rectangles 1x1 at distance 1", () -> parallel(1, 1)),
          Map.entry("parallel_coaxial_rectangles 2x2 at distance 1", () -> parallel(2, 2)),
          Map.entry("parallel_coaxial_rectangles 1x2 at distance 1", () -> parallel(1, 2)),
          Map.entry("parallel_coaxial_rectangles 0.5x0.5 at distance 1", () -> parallel(.5, .5)),
          Map.entry("perpendicular_rectangles_common_edge 1x1 and 1x1", () -> perpendicular(1, 1)),
          Map.entry(
              "perpendicular_rectangles_common_edge W=1 (from) edge length 1 H=2",
              () -> perpendicular(1, 2)),
          Map.entry("perpendicular_rectangles_common_edge H=1 W=2", () -> perpendicular(2, 1)),
          Map.entry(
              "cube_closure F_parallel + 4 F_perp", () -> parallel(1, 1) + 4 * perpendicular(1, 1)),
          Map.entry("coaxial_parallel_disks r1=1 r2=1 h=1", () -> disks(1, 1)),
          Map.entry("coaxial_parallel_disks r1=1 r2=2 h=1", () -> disks(1, 2)),
          Map.entry("element_to_parallel_disk_on_axis r=h", () -> fromOrigin(UP, disk(0, 1, 1))),
          Map.entry("element_to_parallel_disk_on_axis r=h/2", () -> fromOrigin(UP, disk(0, .5, 1))),
          Map.entry(
              "element_to_parallel_disk_off_axis offset a=1 h=1 r=1",
              () -> fromOrigin(UP, disk(1, 1, 1))),
          Map.entry(
              "element_to_parallel_disk_off_axis offset a=2 h=1 r=1",
              () -> fromOrigin(UP, disk(2, 1, 1))),
          Map.entry(
              "element_to_parallel_disk_off_axis offset a=0.5 h=1 r=1",
              () -> fromOrigin(UP, disk(.5, 1, 1))),
          Map.entry(
              "element_to_parallel_rectangle_corner 1x1 at distance 1, element under corner",
              () -> fromOrigin(UP, level(0, 0, 1, 1, 1))),
          Map.entry(
              "element_to_parallel_rectangle_centre 2x2 at distance 1",
              () -> fromOrigin(UP, level(-1, -1, 2, 2, 1))),
          Map.entry(
              "element_to_parallel_rectangle_centre 1x1 at distance 1",
              () -> fromOrigin(UP, level(-.5, -.5, 1, 1, 1))),
          Map.entry(
              "element_to_perpendicular_rectangle_corner 1x1 at distance 1",
              () -> fromOrigin(ALONG_X, level(0, 0, 1, 1, 1))));

  @Test
  void reproducesEveryPublishedRow() {
    for (Map<String, String> row : ReferenceFolder.rows("view_factors.csv")) {
      String layout = row.get("configuration") + " " + row.get("geometry");
      assertThat(LAYOUTS).containsKey(layout);
      assertThat(LAYOUTS.get(layout).getAsDouble())
          .as(layout)
          .isCloseTo(Double.parseDouble(row.get("value")), within(2e-6));
    }
  }

  /** Published as .1998 and .2000; .199825 and .200044 by closed form. */
  @Test
  void reproducesTheUnitSquares() {
    assertThat(parallel(1, 1)).isCloseTo(.199825, within(1e-6));
    assertThat(perpendicular(1, 1)).isCloseTo(.200044, within(1e-6));
  }

  /** From a place inside a box, whichever way it faces, the six faces fill the hemisphere. */
  @Test
  void theFacesOfABoxFillTheHemisphere() {
    SeededLaw.holds(
        500,
        random -> {
          double[] size = {.2 + random.nextDouble(), .2 + random.nextDouble(), random.nextDouble()};
          double[] place = {
            size[0] * random.nextDouble(),
            size[1] * random.nextDouble(),
            size[2] * random.nextDouble()
          };
          double[] normal = direction(random);
          double sum = 0;
          for (int axis = 0; axis < 3; axis++) {
            for (int end = 0; end < 2; end++) {
              sum += FormFactor.toPolygon(place, normal, face(size, axis, end));
            }
          }
          assertThat(sum).isCloseTo(1, within(1e-9));
        });
  }

  /** Cut in two, a polygon sends as much as whole; the sense of its corners does not matter. */
  @Test
  void theWholeIsTheSumOfItsParts() {
    SeededLaw.holds(
        500,
        random -> {
          double[] place = {random.nextDouble(), random.nextDouble(), random.nextDouble()};
          double[] normal = direction(random);
          double[][] whole = level(-.5, -.3, 1.5, 1.1, 2);
          double cut = 1.5 * random.nextDouble();
          double parts =
              FormFactor.toPolygon(place, normal, level(-.5, -.3, cut, 1.1, 2))
                  + FormFactor.toPolygon(place, normal, level(-.5 + cut, -.3, 1.5 - cut, 1.1, 2));
          double all = FormFactor.toPolygon(place, normal, whole);
          assertThat(parts).isCloseTo(all, within(1e-12));
          double[][] backwards = {whole[3], whole[2], whole[1], whole[0]};
          assertThat(FormFactor.toPolygon(place, normal, backwards)).isCloseTo(all, within(1e-12));
        });
  }

  /** Reciprocity: A₁ F₁₂ = A₂ F₂₁, here for the two perpendicular rectangles of the table. */
  @Test
  void isReciprocal() {
    assertThat(1 * perpendicular(1, 2)).isCloseTo(2 * perpendicular(2, 1), within(1e-6));
  }

  @Test
  void seesNothingBehindOrEdgeOn() {
    assertThat(fromOrigin(new double[] {0, 0, -1}, level(-1, -1, 2, 2, 1))).isZero();
    assertThat(fromOrigin(UP, level(-1, -1, 2, 2, 0))).isZero();
  }

  private static double[] direction(SplittableRandom random) {
    double cosine = 2 * random.nextDouble() - 1;
    double sine = Math.sqrt(1 - cosine * cosine);
    double turn = 2 * Math.PI * random.nextDouble();
    return new double[] {sine * Math.cos(turn), sine * Math.sin(turn), cosine};
  }

  private static double[][] face(double[] size, int axis, int end) {
    int u = (axis + 1) % 3;
    int v = (axis + 2) % 3;
    double[][] corners = new double[4][3];
    for (int i = 0; i < 4; i++) {
      corners[i][axis] = end * size[axis];
      corners[i][u] = i == 1 || i == 2 ? size[u] : 0;
      corners[i][v] = i >= 2 ? size[v] : 0;
    }
    return corners;
  }
}
