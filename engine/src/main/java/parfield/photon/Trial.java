package parfield.photon;

/** One thread's apparatus: sends batches of packets and counts them. Single-threaded. */
interface Trial {
  /**
   * Sends one batch.
   *
   * @param seed of all chance in this batch
   * @return what was counted: slots by channel, then the ledger; sums over the packets, not means
   */
  double[] send(long seed);
}
