package parfield.aquascape;

import java.util.Locale;
import java.util.Objects;

/**
 * Makes a closed mesh out of the triangles that a file holds, and tells what it did.
 *
 * <p>Vertices that lie together are one; triangles without three corners are left out; where the
 * surface is open or its triangles face both ways, doubles are left out, neighbours are turned
 * alike and every hole gets a flat cap; each part is turned outward; and a mesh of too many
 * triangles is thinned by joining the vertices of small cells. Pure; the order of the input decides
 * nothing but the order of the output.
 */
public final class MeshRepair {
  /** Vertices closer than about this share of the mesh's diagonal are one. */
  private static final double TOGETHER = 1e-6;

  /** A body fills at least this share of its surface to the power 3/2; a sphere fills 0.094. */
  private static final double LEAST_FILLING = 1e-4;

  /** Cells grow by this factor until the thinned mesh is small enough. */
  private static final double COARSER = 1.25;

  private MeshRepair() {}

  /**
   * What a repair did.
   *
   * @param given triangles in the file
   * @param dropped triangles left out for want of three different corners, or as doubles
   * @param turned triangles that faced inward and were turned
   * @param holes that were closed
   * @param widestHole length of the longest side of the box about the widest of them [m]; 0 if none
   * @param thinned triangles before thinning; 0 if it was not needed
   * @param moved the farthest that thinning moved a vertex [m]
   * @param crossings edges that pass through other triangles of the mesh
   */
  public record Report(
      int given,
      int dropped,
      int turned,
      int holes,
      double widestHole,
      int thinned,
      double moved,
      int crossings) {}

  /**
   * A repaired mesh.
   *
   * @param mesh closed, its triangles facing outward
   * @param report what was done
   */
  public record Repaired(Mesh mesh, Report report) {
    public Repaired {
      Objects.requireNonNull(mesh, "mesh");
      Objects.requireNonNull(report, "report");
    }
  }

  /**
   * Repairs a mesh.
   *
   * @param vertices x, y, depth of each vertex in turn [m]; kept
   * @param corners three vertex numbers a triangle, in range; kept
   * @param most triangles that the result may have, 4 or more
   * @throws IllegalArgumentException if a vertex is not finite, no triangle has three corners
   *     apart, or no volume is enclosed even with all holes closed; the message says which
   */
  public static Repaired repair(double[] vertices, int[] corners, int most) {
    for (int i = 0; i < vertices.length; i++) {
      if (!Double.isFinite(vertices[i])) {
        throw new IllegalArgumentException(
            String.format(Locale.ROOT, "vertex %d is not finite: %s", i / 3 + 1, vertices[i]));
      }
    }
    int given = corners.length / 3;
    VertexCells together =
        VertexCells.of(vertices, corners, TOGETHER * diagonal(vertices, corners));
    double[] points = together.vertices();
    int[] kept = together.corners();
    if (kept.length == 0) {
      throw new IllegalArgumentException(
          "none of its " + given + " triangles has three corners apart");
    }
    boolean open = new EdgeTable(kept).unbalanced().length > 0;
    HoleCaps caps = new HoleCaps(points, kept, 0, 0);
    int turned = 0;
    // A surface that was written once for either side encloses nothing as a whole.
    if (open || !fills(points, kept)) {
      kept = Facing.once(kept);
      turned = Facing.alike(kept);
      caps = HoleCaps.of(points, kept);
    }
    int dropped = given - kept.length / 3;
    VertexCells thin = thin(caps.vertices(), caps.corners(), most);
    int thinned = thin.corners().length < caps.corners().length ? caps.corners().length / 3 : 0;
    points = thin.vertices();
    kept = thin.corners();
    turned += Facing.outward(points, kept);
    if (!fills(points, kept)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "its %d triangles enclose no volume (%.3g m³ within %.3g m² of surface)",
              given,
              kept.length == 0 ? 0 : Mesh.volume(points, kept),
              area(points, kept)));
    }
    Mesh mesh = Mesh.of(points, kept);
    int crossings = Hierarchy.of(mesh).selfCrossings(mesh);
    return new Repaired(
        mesh,
        new Report(
            given, dropped, turned, caps.holes(), caps.widest(), thinned, thin.moved(), crossings));
  }

  /** Whether the enclosed volume, on whichever side, is worth the surface about it. */
  private static boolean fills(double[] vertices, int[] corners) {
    double area = area(vertices, corners);
    return corners.length > 0
        && Math.abs(Mesh.volume(vertices, corners)) > LEAST_FILLING * area * Math.sqrt(area);
  }

  /** Joins the vertices of cells just big enough for the triangles to be few; none if they are. */
  private static VertexCells thin(double[] vertices, int[] corners, int most) {
    VertexCells thin = new VertexCells(vertices, corners, 0);
    // A surface crosses about one cell a cell's face of its area, with two triangles each.
    double cell = Math.sqrt(2 * area(vertices, corners) / most);
    while (thin.corners().length / 3 > most) {
      thin = VertexCells.of(vertices, corners, cell);
      cell *= COARSER;
    }
    return thin;
  }

  private static double area(double[] vertices, int[] corners) {
    double sum = 0;
    for (int t = 0; t < corners.length / 3; t++) {
      sum += Mesh.area(vertices, corners, t);
    }
    return sum;
  }

  private static double diagonal(double[] vertices, int[] corners) {
    double square = 0;
    for (int axis = 0; axis < 3; axis++) {
      double low = Double.POSITIVE_INFINITY;
      double high = Double.NEGATIVE_INFINITY;
      for (int corner : corners) {
        low = Math.min(low, vertices[3 * corner + axis]);
        high = Math.max(high, vertices[3 * corner + axis]);
      }
      square += corners.length == 0 ? 0 : (high - low) * (high - low);
    }
    return Math.sqrt(square);
  }
}
