package parfield.aquascape;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class MeshTest {
  private static final double[] TETRAHEDRON = {0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1};
  private static final int[] FACES = {0, 2, 1, 0, 1, 3, 1, 2, 3, 0, 3, 2};

  @Test
  void knowsItsVolumeBoundsAndAreas() {
    Mesh mesh = Mesh.of(TETRAHEDRON, FACES);
    assertThat(mesh.volume()).isCloseTo(1.0 / 6, within(1e-15));
    assertThat(mesh.bounds()).isEqualTo(new Bounds(0, 1, 0, 1, 0, 1));
    assertThat(mesh.triangles()).isEqualTo(4);
    assertThat(mesh.area(0)).isEqualTo(0.5);
    assertThat(mesh.area(2)).isCloseTo(Math.sqrt(3) / 2, within(1e-15));
  }

  @Test
  void hidesItsArrays() {
    double[] vertices = TETRAHEDRON.clone();
    int[] corners = FACES.clone();
    Mesh mesh = Mesh.of(vertices, corners);
    vertices[3] = 9;
    corners[0] = 3;
    assertThat(mesh).isEqualTo(Mesh.of(TETRAHEDRON, FACES));
    assertThat(mesh.coordinate(0, 2, 0)).isEqualTo(1);
  }

  @Test
  void whatIsNoClosedBodyIsRefused() {
    assertThatThrownBy(() -> Mesh.of(new double[] {0, 0}, FACES))
        .hasMessageStartingWith("a mesh needs three numbers a vertex");
    assertThatThrownBy(() -> Mesh.of(TETRAHEDRON, new int[0]))
        .hasMessageStartingWith("a mesh needs three numbers a vertex");
    double[] broken = TETRAHEDRON.clone();
    broken[4] = Double.NaN;
    assertThatThrownBy(() -> Mesh.of(broken, FACES))
        .hasMessage("vertex 2 of a mesh is not finite: NaN");
    assertThatThrownBy(() -> Mesh.of(TETRAHEDRON, new int[] {0, 1, 4}))
        .hasMessage("triangle 1 of a mesh has corner 4 where vertices run from 0 to 3");
    assertThatThrownBy(() -> Mesh.of(TETRAHEDRON, new int[] {0, 1, 1}))
        .hasMessage("triangle 1 of a mesh has a corner twice: 0, 1, 1");
    assertThatThrownBy(() -> Mesh.of(TETRAHEDRON, new int[] {0, 2, 1}))
        .hasMessage(
            "a mesh must be closed; 3 of its edges are not run through as often one way as the"
                + " other");
    int[] inward = {0, 1, 2, 0, 3, 1, 1, 3, 2, 0, 2, 3};
    assertThatThrownBy(() -> Mesh.of(TETRAHEDRON, inward))
        .hasMessageStartingWith(
            "a mesh must enclose some volume, its triangles facing outward; got");
  }

  @Test
  void finerMeshesOfAnEllipsoidFillIt() {
    Ellipsoid ellipsoid = new Ellipsoid(0.5, 0.5, 0.5, 0.3, 0.2, 0.1, 0.4);
    double before = 0;
    for (int n = 0; n < 6; n++) {
      Mesh mesh = Meshes.of(ellipsoid, n);
      assertThat(mesh.triangles()).isEqualTo(20 << (2 * n));
      assertThat(mesh.volume()).isGreaterThan(before).isLessThan(ellipsoid.volume());
      before = mesh.volume();
    }
    assertThat(before).isCloseTo(ellipsoid.volume(), within(0.002 * ellipsoid.volume()));
  }
}
