package parfield.formats;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** A block of stone as mesh files: 30 by 20 by 10 of whatever unit, its twelve triangles. */
final class Blocks {
  static final double[][] VERTICES = {
    {0, 0, 0},
    {30, 0, 0},
    {0, 20, 0},
    {30, 20, 0},
    {0, 0, 10},
    {30, 0, 10},
    {0, 20, 10},
    {30, 20, 10}
  };

  static final int[][] TRIANGLES = {
    {0, 2, 3}, {0, 3, 1}, {4, 5, 7}, {4, 7, 6}, {0, 1, 5}, {0, 5, 4},
    {2, 6, 7}, {2, 7, 3}, {0, 4, 6}, {0, 6, 2}, {1, 3, 7}, {1, 7, 5}
  };

  private Blocks() {}

  static String obj() {
    StringBuilder text = new StringBuilder("# a block\no block\n");
    for (double[] v : VERTICES) {
      text.append(String.format(Locale.ROOT, "v %s %s %s%n", v[0], v[1], v[2]));
    }
    text.append("vt 0 0\nvn 0 0 1\n");
    for (int[] t : TRIANGLES) {
      text.append(String.format(Locale.ROOT, "f %d/1/1 %d//1 %d%n", t[0] + 1, t[1] + 1, t[2] + 1));
    }
    return text.toString();
  }

  static String textStl() {
    StringBuilder text = new StringBuilder("solid block\n");
    for (int[] t : TRIANGLES) {
      text.append("  facet normal 0 0 0\n    outer loop\n");
      for (int i : t) {
        double[] v = VERTICES[i];
        text.append(String.format(Locale.ROOT, "      vertex %e %e %e%n", v[0], v[1], v[2]));
      }
      text.append("    endloop\n  endfacet\n");
    }
    return text.append("endsolid block\n").toString();
  }

  static byte[] binaryStl() {
    return binaryStl(1);
  }

  /** The block so many times over, each beside the last. */
  static byte[] binaryStl(int copies) {
    int count = copies * TRIANGLES.length;
    ByteBuffer out = ByteBuffer.allocate(84 + 50 * count).order(ByteOrder.LITTLE_ENDIAN);
    // Some programs begin a binary file with the word that a text one begins with.
    out.put("solid made by a program".getBytes(StandardCharsets.US_ASCII)).position(80);
    out.putInt(count);
    for (int copy = 0; copy < copies; copy++) {
      for (int[] t : TRIANGLES) {
        out.putFloat(0).putFloat(0).putFloat(0);
        for (int i : t) {
          double[] v = VERTICES[i];
          out.putFloat((float) v[0] + 40 * (copy % 100));
          out.putFloat((float) v[1] + 30 * (copy / 100));
          out.putFloat((float) v[2]);
        }
        out.putShort((short) 0);
      }
    }
    return out.array();
  }

  /** As glTF has it: y up, z to the front, metres; the node scales from centimetres. */
  static String gltfJson(String buffer) {
    return """
        {"asset": {"version": "2.0"}, "scene": 0, "scenes": [{"nodes": [0]}],
         "nodes": [{"scale": [0.01, 0.01, 0.01], "children": [1]}, {"mesh": 0}],
         "meshes": [{"primitives": [{"attributes": {"POSITION": 0}, "indices": 1}]}],
         "accessors": [
           {"bufferView": 0, "componentType": 5126, "count": 8, "type": "VEC3",
            "min": [0, 0, -20], "max": [30, 10, 0]},
           {"bufferView": 1, "componentType": 5123, "count": 36, "type": "SCALAR"}],
         "bufferViews": [{"buffer": 0, "byteLength": 96},
           {"buffer": 0, "byteOffset": 96, "byteLength": 72}],
         "buffers": [{%s"byteLength": 168}]}
        """
        .formatted(buffer);
  }

  static byte[] gltfBuffer() {
    ByteBuffer out = ByteBuffer.allocate(168).order(ByteOrder.LITTLE_ENDIAN);
    for (double[] v : VERTICES) {
      out.putFloat((float) v[0]).putFloat((float) v[2]).putFloat((float) -v[1]);
    }
    for (int[] t : TRIANGLES) {
      for (int i : t) {
        out.putShort((short) i);
      }
    }
    return out.array();
  }

  static byte[] gltf() {
    String data = java.util.Base64.getEncoder().encodeToString(gltfBuffer());
    return gltfJson("\"uri\": \"data:application/octet-stream;base64," + data + "\", ")
        .getBytes(StandardCharsets.UTF_8);
  }

  static byte[] glb(String json) {
    StringBuilder padded = new StringBuilder(json);
    while (padded.length() % 4 != 0) {
      padded.append(' ');
    }
    byte[] text = padded.toString().getBytes(StandardCharsets.UTF_8);
    byte[] buffer = gltfBuffer();
    ByteBuffer head = ByteBuffer.allocate(28).order(ByteOrder.LITTLE_ENDIAN);
    head.putInt(0x46546C67).putInt(2).putInt(28 + text.length + buffer.length);
    head.putInt(text.length).putInt(0x4E4F534A);
    head.putInt(buffer.length).putInt(0x004E4942);
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(head.array(), 0, 20);
    out.writeBytes(text);
    out.write(head.array(), 20, 8);
    out.writeBytes(buffer);
    return out.toByteArray();
  }

  static byte[] glb() {
    return glb(gltfJson(""));
  }
}
