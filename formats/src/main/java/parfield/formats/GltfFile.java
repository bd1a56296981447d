package parfield.formats;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import de.javagl.jgltf.model.AccessorByteData;
import de.javagl.jgltf.model.AccessorData;
import de.javagl.jgltf.model.AccessorFloatData;
import de.javagl.jgltf.model.AccessorIntData;
import de.javagl.jgltf.model.AccessorModel;
import de.javagl.jgltf.model.AccessorShortData;
import de.javagl.jgltf.model.ElementType;
import de.javagl.jgltf.model.GltfModel;
import de.javagl.jgltf.model.MeshModel;
import de.javagl.jgltf.model.MeshPrimitiveModel;
import de.javagl.jgltf.model.NodeModel;
import de.javagl.jgltf.model.SceneModel;
import de.javagl.jgltf.model.io.GltfModelReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.IntStream;

/**
 * The triangles in a glTF 2.0 file whose geometry lies in the file itself: binary (GLB), or JSON
 * with embedded buffers.
 *
 * <p>Sizes are checked in the JSON before the library sees the file; what it then stumbles over is
 * told as one fault.
 */
final class GltfFile {
  /** The library's own log, silenced: what is wrong is told as a fault. Held, so that it stays. */
  private static final Logger LIBRARY = Logger.getLogger("de.javagl.jgltf");

  static {
    LIBRARY.setLevel(Level.OFF);
  }

  private static final int MAGIC = 0x46546C67;
  private static final int JSON_CHUNK = 0x4E4F534A;
  private static final int HEAD = 12;
  private static final int TRIANGLE_LIST = 4;
  private static final int MOST_NODES = 100_000;
  private static final int DEEPEST = 100;
  private static final String CURE = "export it as GLB, all in one file, without compression";

  private final String file;
  private final Notes notes;
  private final Triangles.Builder found = new Triangles.Builder();
  private int others;

  private GltfFile(String file, Notes notes) {
    this.file = file;
    this.notes = notes;
  }

  /** The triangles; some of them where a fault was noted. */
  static Triangles read(String file, byte[] bytes, Notes notes) {
    GltfFile reader = new GltfFile(file, notes);
    int faults = notes.count();
    try {
      JsonNode json = reader.json(bytes);
      if (notes.count() == faults) {
        reader.check(json);
      }
      if (notes.count() == faults) {
        reader.gather(new GltfModelReader().readWithoutReferences(new ByteArrayInputStream(bytes)));
      }
    } catch (IOException | RuntimeException e) {
      // The library answers broken files with exceptions of all kinds.
      reader.fault(
          "the file is no glTF 2.0 that can be read",
          Notes.shown(String.valueOf(e.getMessage()).lines().findFirst().orElse("")),
          "",
          CURE);
    }
    if (notes.count() == faults && reader.others > 0) {
      notes.assume(
          String.format(
              Locale.ROOT,
              "%s: %d parts that are lines or points are passed over",
              file,
              reader.others));
    }
    return reader.found.build();
  }

  private void fault(String what, String value, String limit, String cure) {
    notes.fault(new Fault(file, 0, 0, what, value, limit, cure));
  }

  /** The JSON part, or an empty object with a fault. */
  private JsonNode json(byte[] bytes) throws IOException {
    ObjectMapper mapper = new ObjectMapper();
    ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    if (bytes.length < HEAD || in.getInt(0) != MAGIC) {
      return mapper.readTree(bytes);
    }
    long stated = Integer.toUnsignedLong(in.getInt(8));
    if (in.getInt(4) != 2) {
      fault("version of glTF", String.valueOf(in.getInt(4)), "2", CURE);
    } else if (stated > bytes.length) {
      fault(
          "length of the file",
          String.format(Locale.ROOT, "%d bytes", bytes.length),
          String.format(Locale.ROOT, "%d bytes, as it states", stated),
          "it was cut short: copy or export it once more");
    } else if (bytes.length < HEAD + 8 || in.getInt(HEAD + 4) != JSON_CHUNK) {
      fault("first part of the file", "something else", "JSON", CURE);
    } else {
      long length = Integer.toUnsignedLong(in.getInt(HEAD));
      if (length > bytes.length - HEAD - 8) {
        fault(
            "length of the JSON part",
            String.format(Locale.ROOT, "%d bytes", length),
            String.format(Locale.ROOT, "at most %d bytes", bytes.length - HEAD - 8),
            "it was cut short: copy or export it once more");
      } else {
        return mapper.readTree(bytes, HEAD + 8, (int) length);
      }
    }
    return mapper.createObjectNode();
  }

  private void check(JsonNode json) {
    for (JsonNode needed : json.path("extensionsRequired")) {
      fault("extension that the file needs", Notes.shown(needed.asText()), "none", CURE);
    }
    for (JsonNode buffer : json.path("buffers")) {
      String uri = buffer.path("uri").asText("");
      if (!uri.isEmpty() && !uri.startsWith("data:")) {
        fault("geometry in another file", Notes.shown(uri), "geometry in the file itself", CURE);
      }
    }
    for (JsonNode accessor : json.path("accessors")) {
      long count = accessor.path("count").asLong();
      if (!(count >= 0 && count <= 3L * Triangles.MOST)) {
        fault(
            "count of an accessor",
            String.valueOf(count),
            String.format(Locale.ROOT, "0 to %d", 3L * Triangles.MOST),
            "thin the mesh in the program that made it; 100000 triangles are plenty for a rock");
      }
    }
    checkNodes(json.path("nodes"));
  }

  /** Nodes must form trees, not too deep: else following them would never end. */
  private void checkNodes(JsonNode nodes) {
    int count = nodes.size();
    if (count > MOST_NODES) {
      fault("number of nodes", String.valueOf(count), "at most " + MOST_NODES, CURE);
      return;
    }
    int[] parent = new int[count];
    Arrays.fill(parent, -1);
    for (int i = 0; i < count; i++) {
      for (JsonNode child : nodes.get(i).path("children")) {
        int c = child.asInt(-1);
        if (c < 0 || c >= count || parent[c] >= 0) {
          fault("child of node " + i, Notes.shown(child.asText()), "a node of its own", CURE);
          return;
        }
        parent[c] = i;
      }
    }
    for (int i = 0; i < count; i++) {
      int steps = 0;
      for (int at = i; at >= 0; at = parent[at]) {
        if (++steps > DEEPEST) {
          fault("nesting of nodes", "more", "at most " + DEEPEST + " levels, no circle", CURE);
          return;
        }
      }
    }
  }

  private void gather(GltfModel model) {
    List<SceneModel> scenes = model.getSceneModels();
    Set<NodeModel> shown = Collections.newSetFromMap(new IdentityHashMap<>());
    for (SceneModel scene : scenes.subList(0, Math.min(1, scenes.size()))) {
      scene.getNodeModels().forEach(node -> gather(node, shown));
    }
    if (scenes.isEmpty()) {
      model.getNodeModels().forEach(node -> gather(node, shown));
    }
  }

  private void gather(NodeModel node, Set<NodeModel> shown) {
    if (!shown.add(node) || found.full()) {
      return;
    }
    float[] matrix = node.computeGlobalTransform(null);
    for (MeshModel mesh : node.getMeshModels()) {
      for (MeshPrimitiveModel primitive : mesh.getMeshPrimitiveModels()) {
        add(primitive, matrix);
      }
    }
    node.getChildren().forEach(child -> gather(child, shown));
  }

  private void add(MeshPrimitiveModel primitive, float[] matrix) {
    if (primitive.getMode() < TRIANGLE_LIST) {
      others++;
      return;
    }
    AccessorModel positions = primitive.getAttributes().get("POSITION");
    if (primitive.getMode() != TRIANGLE_LIST
        || positions == null
        || positions.getElementType() != ElementType.VEC3
        || !(positions.getAccessorData() instanceof AccessorFloatData vertices)) {
      fault("part of the mesh", "strips, fans or packed positions", "plain triangles", CURE);
      return;
    }
    int first = found.vertices();
    int count = vertices.getNumElements();
    int[] corners = corners(primitive.getIndices(), count);
    if (found.triangles() + (long) corners.length / 3 > Triangles.MOST) {
      notes.fault(Triangles.tooMany(file, 0));
      return;
    }
    for (int i = 0; i < count; i++) {
      double x = vertices.get(i, 0);
      double y = vertices.get(i, 1);
      double z = vertices.get(i, 2);
      double u = matrix[0] * x + matrix[4] * y + matrix[8] * z + matrix[12];
      double v = matrix[1] * x + matrix[5] * y + matrix[9] * z + matrix[13];
      double w = matrix[2] * x + matrix[6] * y + matrix[10] * z + matrix[14];
      if (!Double.isFinite(u) || !Double.isFinite(v) || !Double.isFinite(w)) {
        fault(
            "vertex " + (i + 1),
            u + ", " + v + ", " + w,
            "finite numbers",
            "mend the mesh in the program that made it, and export it once more");
        return;
      }
      found.vertex(u, v, w);
    }
    for (int i = 0; i + 2 < corners.length; i += 3) {
      for (int k = i; k < i + 3; k++) {
        if (corners[k] < 0 || corners[k] >= count) {
          fault(
              "corner of triangle " + (i / 3 + 1),
              String.valueOf(corners[k]),
              String.format(Locale.ROOT, "a vertex, 0 to %d", count - 1),
              "the file may be cut short or mixed up: export the mesh once more");
          return;
        }
      }
      found.triangle(first + corners[i], first + corners[i + 1], first + corners[i + 2]);
    }
  }

  private static int[] corners(AccessorModel indices, int count) {
    if (indices == null) {
      return IntStream.range(0, count - count % 3).toArray();
    }
    AccessorData data = indices.getAccessorData();
    int[] corners = new int[data.getNumElements()];
    for (int i = 0; i < corners.length; i++) {
      if (data instanceof AccessorIntData ints) {
        corners[i] = ints.get(i);
      } else if (data instanceof AccessorShortData shorts) {
        corners[i] = Short.toUnsignedInt(shorts.get(i));
      } else if (data instanceof AccessorByteData bytes) {
        corners[i] = Byte.toUnsignedInt(bytes.get(i));
      } else {
        throw new IllegalArgumentException("indices are of no whole-number type");
      }
    }
    return corners;
  }
}
