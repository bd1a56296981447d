package parfield.formats;

import java.util.Locale;
import java.util.Optional;

/** A mesh file by its ending: OBJ, STL, glTF or GLB. */
final class MeshFile {
  /** Most bytes of a mesh: two million triangles of a binary STL. */
  static final int MOST_BYTES = 96 << 20;

  private MeshFile() {}

  /** The kinds of mesh file. */
  enum Kind {
    OBJ,
    STL,
    GLTF;

    /** Which axis is up where the setup does not say: fixed by glTF, custom in the others. */
    Triangles.Up up() {
      return this == STL ? Triangles.Up.Z : Triangles.Up.Y;
    }

    /** The kind that a file's name tells; empty if none. */
    static Optional<Kind> of(String name) {
      String lower = name.toLowerCase(Locale.ROOT);
      if (lower.endsWith(".obj")) {
        return Optional.of(OBJ);
      }
      if (lower.endsWith(".stl")) {
        return Optional.of(STL);
      }
      return lower.endsWith(".glb") || lower.endsWith(".gltf")
          ? Optional.of(GLTF)
          : Optional.empty();
    }
  }

  /**
   * Reads the triangles of a mesh.
   *
   * @param file its name, for faults
   * @param kind which reader
   * @param bytes what it holds
   * @param notes where faults and assumptions go
   * @return the triangles, one at least; empty if a fault was noted
   */
  static Optional<Triangles> read(String file, Kind kind, byte[] bytes, Notes notes) {
    int faults = notes.count();
    if (bytes.length == 0) {
      notes.fault(new Fault(file, 0, 0, "the file is empty", "", "", "export the mesh once more"));
      return Optional.empty();
    }
    Triangles triangles =
        switch (kind) {
          case OBJ -> ObjFile.read(file, bytes, notes);
          case STL -> StlFile.read(file, bytes, notes);
          case GLTF -> GltfFile.read(file, bytes, notes);
        };
    if (notes.count() > faults) {
      return Optional.empty();
    }
    if (triangles.corners().length == 0) {
      notes.fault(
          new Fault(
              file,
              0,
              0,
              "number of triangles",
              "0",
              "1 or more",
              "export the surface of the rock, not its outline or its points"));
      return Optional.empty();
    }
    return Optional.of(triangles);
  }
}
