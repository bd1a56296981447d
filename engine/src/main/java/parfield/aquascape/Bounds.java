package parfield.aquascape;

/**
 * The smallest upright box about something.
 *
 * @param fromX least x [m]
 * @param toX greatest x [m]
 * @param fromY least y [m]
 * @param toY greatest y [m]
 * @param fromDepth depth of its top [m]
 * @param toDepth depth of its foot [m]
 */
public record Bounds(
    double fromX, double toX, double fromY, double toY, double fromDepth, double toDepth) {
  /** The smallest box about this one and another. */
  public Bounds and(Bounds other) {
    return new Bounds(
        Math.min(fromX, other.fromX),
        Math.max(toX, other.toX),
        Math.min(fromY, other.fromY),
        Math.max(toY, other.toY),
        Math.min(fromDepth, other.fromDepth),
        Math.max(toDepth, other.toDepth));
  }

  /** Size along x [m]. */
  public double sizeX() {
    return toX - fromX;
  }

  /** Size along y [m]. */
  public double sizeY() {
    return toY - fromY;
  }

  /** Size downward [m]. */
  public double sizeZ() {
    return toDepth - fromDepth;
  }

  /** The longest of the three sizes [m]. */
  public double longest() {
    return Math.max(sizeX(), Math.max(sizeY(), sizeZ()));
  }
}
