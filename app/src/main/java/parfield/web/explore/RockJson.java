package parfield.web.explore;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import parfield.answer.Json;
import parfield.aquascape.Bounds;
import parfield.aquascape.Box;
import parfield.aquascape.Ellipsoid;
import parfield.aquascape.Mesh;
import parfield.aquascape.MeshRepair;
import parfield.aquascape.Rock;

/**
 * A rock as a page draws it: name, kind, the box about it and its own shape; lengths in metres, yaw
 * in radians. A mesh comes as triangles, nine whole tenths of a millimetre each: x, y, depth of its
 * corners.
 */
final class RockJson {
  /**
   * A mesh of more triangles is thinned for the picture; the light is computed with all of them.
   */
  private static final int MOST_TRIANGLES = 6_000;

  private static final int MOST_KEPT = 16;
  private static final double PER_METRE = 10_000;

  /** Thinning takes up to a second: meshes are thinned once. */
  private static final Map<Mesh, Mesh> THINNED =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Mesh, Mesh> eldest) {
          return size() > MOST_KEPT;
        }
      };

  private RockJson() {}

  static ObjectNode of(Rock rock) {
    ObjectNode json = Json.object();
    json.put("name", rock.name());
    Bounds bounds = rock.shape().bounds();
    json.putArray("x").add(bounds.fromX()).add(bounds.toX());
    json.putArray("y").add(bounds.fromY()).add(bounds.toY());
    json.putArray("depth").add(bounds.fromDepth()).add(bounds.toDepth());
    if (rock.shape() instanceof Box box) {
      json.put("kind", "box").put("yaw", box.yaw());
      json.putArray("size").add(box.sizeX()).add(box.sizeY()).add(box.sizeZ());
    } else if (rock.shape() instanceof Ellipsoid body) {
      json.put("kind", "ellipsoid").put("yaw", body.yaw());
      json.putArray("size").add(2 * body.semiX()).add(2 * body.semiY()).add(2 * body.semiZ());
    } else if (rock.shape() instanceof Mesh mesh) {
      json.put("kind", "mesh").put("yaw", 0);
      ArrayNode triangles = json.putArray("triangles");
      Mesh drawn = thinned(mesh);
      for (int t = 0; t < drawn.triangles(); t++) {
        for (int corner = 0; corner < 3; corner++) {
          for (int axis = 0; axis < 3; axis++) {
            triangles.add(Math.round(PER_METRE * drawn.coordinate(t, corner, axis)));
          }
        }
      }
    }
    return json;
  }

  private static Mesh thinned(Mesh mesh) {
    if (mesh.triangles() <= MOST_TRIANGLES) {
      return mesh;
    }
    synchronized (THINNED) {
      return THINNED.computeIfAbsent(mesh, RockJson::thin);
    }
  }

  private static Mesh thin(Mesh mesh) {
    double[] vertices = new double[9 * mesh.triangles()];
    int[] corners = new int[3 * mesh.triangles()];
    for (int i = 0; i < corners.length; i++) {
      corners[i] = i;
      for (int axis = 0; axis < 3; axis++) {
        vertices[3 * i + axis] = mesh.coordinate(i / 3, i % 3, axis);
      }
    }
    try {
      return MeshRepair.repair(vertices, corners, MOST_TRIANGLES).mesh();
    } catch (IllegalArgumentException e) {
      // So thin a body that nothing of it would be left: it is drawn as it is.
      return mesh;
    }
  }
}
