package parfield.field;

import parfield.tank.Tank;

/**
 * How soft the edges of shadows are, measured at the surface.
 *
 * <p>Two causes add their variances: the size of the source, seen through the point where the ray
 * crosses (the share of the way in water of it), and the moving surface, which displaces the foot
 * of a ray by (1 − 1/n) times slope times depth (the share of the way in air of that).
 */
final class EdgeBlur {
  /** Beyond this many standard deviations an edge is sharp. */
  private static final double REACH = 2.5;

  private final double sourceVariance;
  private final double surfaceVariance;
  private final double margin;

  private EdgeBlur(double sourceVariance, double surfaceVariance) {
    this.sourceVariance = sourceVariance;
    this.surfaceVariance = surfaceVariance;
    margin = REACH * Math.sqrt(sourceVariance + surfaceVariance);
  }

  /**
   * The blur between one source and one depth.
   *
   * @param size side of the square source [m]; its variance is size²/12 along each axis
   * @param depth of the receivers [m]
   * @param tank whose surface moves
   */
  static EdgeBlur of(double size, double depth, Tank tank) {
    double bend = (1 - 1 / tank.water().refractiveIndex()) * depth;
    return new EdgeBlur(size * size / 12, bend * bend * tank.surface().slopeVariance() / 2);
  }

  /** Distance beyond which no edge matters [m]. */
  double margin() {
    return margin;
  }

  /**
   * Share of a blurred point that lies between two edges, 0 to 1.
   *
   * @param coordinate of the crossing point [m]
   * @param from low edge [m]
   * @param to high edge [m]
   * @param airShare share of the horizontal way that lies in air, 0 to 1
   */
  double between(double coordinate, double from, double to, double airShare) {
    return step(coordinate - from, airShare) * step(to - coordinate, airShare);
  }

  /** Share beyond one edge: a cubic smooth step with the variance of the blur. */
  private double step(double distance, double airShare) {
    if (distance >= margin) {
      return 1;
    }
    if (distance <= -margin) {
      return 0;
    }
    double waterShare = 1 - airShare;
    double variance =
        waterShare * waterShare * sourceVariance + airShare * airShare * surfaceVariance;
    double half = Math.sqrt(5 * variance);
    if (distance >= half) {
      return 1;
    }
    if (distance <= -half) {
      return 0;
    }
    // The parabolic density of half-width √5 σ has variance σ².
    double t = distance / half;
    return 0.5 + t * (0.75 - 0.25 * t * t);
  }
}
