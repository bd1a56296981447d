package parfield.photon;

import java.util.SplittableRandom;
import parfield.optics.Interface;

/**
 * The boundary of two media as light meets it: flat, or facets whose slopes are normally
 * distributed.
 *
 * <p>A ray meets a facet as often as the facet's area shows toward the ray. Slopes are cut off at
 * four standard deviations. Single-threaded.
 */
final class Facets {
  private static final double STEEPEST = 4;

  private final double deviation;
  private final double most;
  private final SplittableRandom random;
  private double nx;
  private double ny;
  private double nz;

  /**
   * A boundary.
   *
   * @param slopeVariance total variance of the slope, half of it along each axis; 0 for a flat one
   * @param random chance
   */
  Facets(double slopeVariance, SplittableRandom random) {
    deviation = Math.sqrt(slopeVariance / 2);
    most = STEEPEST * Math.sqrt(slopeVariance);
    this.random = random;
  }

  /**
   * Reflects or refracts a packet at the boundary.
   *
   * @param packet its direction is changed
   * @param from refractive index on its side
   * @param to refractive index beyond
   * @return whether it went through
   */
  boolean split(Packet packet, double from, double to) {
    boolean down = packet.dz > 0;
    if (most == 0) {
      nx = 0;
      ny = 0;
      nz = down ? -1 : 1;
    } else {
      draw(packet);
    }
    double cosine = Math.min(1, -(packet.dx * nx + packet.dy * ny + packet.dz * nz));
    double reflectance = Interface.reflectance(cosine, from, to);
    if (reflectance >= 1 || random.nextDouble() < reflectance) {
      packet.dx += 2 * cosine * nx;
      packet.dy += 2 * cosine * ny;
      packet.dz += 2 * cosine * nz;
      packet.normalise();
      return false;
    }
    double ratio = from / to;
    double along = ratio * cosine - Math.sqrt(1 - ratio * ratio * (1 - cosine * cosine));
    packet.dx = ratio * packet.dx + along * nx;
    packet.dy = ratio * packet.dy + along * ny;
    packet.dz = ratio * packet.dz + along * nz;
    packet.normalise();
    return true;
  }

  /** Draws the normal of a facet that the packet meets, turned against it. */
  private void draw(Packet packet) {
    double flat = Math.sqrt(packet.dx * packet.dx + packet.dy * packet.dy);
    double bound = Math.abs(packet.dz) + flat * most;
    double side = packet.dz > 0 ? 1 : -1;
    while (true) {
      double radius = deviation * Math.sqrt(-2 * Math.log(1 - random.nextDouble()));
      if (radius > most) {
        continue;
      }
      double angle = 2 * Math.PI * random.nextDouble();
      double slopeX = radius * Math.cos(angle);
      double slopeY = radius * Math.sin(angle);
      // The facet's normal upward is (slopeX, slopeY, -1): depth grows downward.
      double shown = side * (packet.dz - packet.dx * slopeX - packet.dy * slopeY);
      if (random.nextDouble() * bound < shown) {
        double scale = side / Math.sqrt(1 + slopeX * slopeX + slopeY * slopeY);
        nx = slopeX * scale;
        ny = slopeY * scale;
        nz = -scale;
        return;
      }
    }
  }
}
