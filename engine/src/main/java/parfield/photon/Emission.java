package parfield.photon;

import java.util.SplittableRandom;

/** Where packets come from. Single-threaded. */
interface Emission {
  /**
   * Launches one packet.
   *
   * @param packet takes position, direction, channels and wavebands
   * @param even coordinates of an evenly spread point of the unit cube
   * @param random chance for what goes beyond these
   */
  void launch(Packet packet, double[] even, SplittableRandom random);

  /** Number of channels of all lamps together. */
  int channels();
}
