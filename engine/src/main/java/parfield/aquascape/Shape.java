package parfield.aquascape;

/** What a rock looks like; a closed body. */
public sealed interface Shape permits Box, Ellipsoid, Mesh {
  /** The smallest upright box about it. */
  Bounds bounds();

  /** Its volume [m³]. */
  double volume();
}
