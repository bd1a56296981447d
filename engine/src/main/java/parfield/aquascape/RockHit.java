package parfield.aquascape;

/**
 * Where a ray met a rock: filled by {@link Aquascape#nearest}, used again for every ray. For one
 * thread at a time.
 */
public final class RockHit {
  /** Nodes that wait to be looked at; the hierarchy is never deeper. */
  final int[] waiting = new int[Hierarchy.DEEPEST];

  double distance = Double.POSITIVE_INFINITY;
  int rock = -1;
  double normalX;
  double normalY;
  double normalZ;

  /** Distance along the ray, in lengths of its direction; infinite after a miss. */
  public double distance() {
    return distance;
  }

  /** Index in {@link Aquascape#rocks()}; −1 after a miss. */
  public int rock() {
    return rock;
  }

  /** Unit normal of the surface, turned against the ray: x component. */
  public double normalX() {
    return normalX;
  }

  /** Its y component. */
  public double normalY() {
    return normalY;
  }

  /** Its downward component. */
  public double normalZ() {
    return normalZ;
  }
}
