package parfield.photon;

/** Looks on while the reference solver works, and may have enough. */
@FunctionalInterface
public interface Watch {
  /**
   * Told now and then how far the work has come.
   *
   * @param packets sent and counted so far
   * @param error largest relative standard error of a wanted value, as {@link Effort#target} counts
   *     it
   * @return whether to go on; if not, what is known so far is the answer
   */
  boolean goOn(long packets, double error);

  /** Never has enough. */
  static Watch patient() {
    return (packets, error) -> true;
  }
}
