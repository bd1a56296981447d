package parfield.photon;

import java.util.List;

/** Flat round sensors at placements: what arrives on their outer face. Single-threaded. */
final class Discs implements Detector {
  private final Placement[] placements;
  private final double radius;
  private final int first;
  private final int channels;
  private final double[] fluxes;

  /**
   * Sensors at placements.
   *
   * @param placements their centres and normals
   * @param radius of each [m]
   * @param first slot that is free
   * @param channels of all lamps together
   */
  Discs(List<Placement> placements, double radius, int first, int channels) {
    this.placements = placements.toArray(Placement[]::new);
    this.radius = radius;
    this.first = first;
    this.channels = channels;
    fluxes = new double[channels];
  }

  @Override
  public int slots() {
    return placements.length;
  }

  @Override
  public void pass(Packet packet, double length, double[] totals) {
    for (int i = 0; i < placements.length; i++) {
      Placement disc = placements[i];
      double facing = packet.dx * disc.nx() + packet.dy * disc.ny() + packet.dz * disc.nz();
      if (facing >= 0) {
        continue;
      }
      double x = disc.place().x() - packet.x;
      double y = disc.place().y() - packet.y;
      double z = disc.place().depth() - packet.z;
      double distance = (x * disc.nx() + y * disc.ny() + z * disc.nz()) / facing;
      if (!(distance >= 0 && distance <= length)) {
        continue;
      }
      double missX = x - distance * packet.dx;
      double missY = y - distance * packet.dy;
      double missZ = z - distance * packet.dz;
      if (missX * missX + missY * missY + missZ * missZ > radius * radius) {
        continue;
      }
      packet.fluxes(distance, fluxes);
      int at = (first + i) * channels + packet.firstChannel;
      for (int c = 0; c < packet.factor.length; c++) {
        totals[at + c] += fluxes[c];
      }
    }
  }
}
