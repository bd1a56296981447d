package parfield.photon;

/** Counts light on its way through water. Single-threaded. */
interface Detector {
  /**
   * A packet is about to go straight on.
   *
   * @param packet where it is, before it moves; its fluxes ahead can be asked for
   * @param length of the straight way [m]
   * @param totals takes what is counted: one figure a slot and channel, the channels of a slot side
   *     by side
   */
  void pass(Packet packet, double length, double[] totals);

  /** Number of slots it counts into, from the first it was given. */
  int slots();
}
