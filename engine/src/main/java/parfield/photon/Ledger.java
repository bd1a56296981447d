package parfield.photon;

/** Where the launched photons went. Mutable and single-threaded. */
final class Ledger {
  private final double[] ended;
  private final double[] inLayers;
  private double launched;

  /**
   * Starts an empty ledger.
   *
   * @param layers number of layers whose absorption is told apart
   */
  Ledger(int layers) {
    ended = new double[Fate.values().length];
    inLayers = new double[layers];
  }

  void launch(double flux) {
    launched += flux;
  }

  void end(Fate fate, double flux) {
    ended[fate.ordinal()] += flux;
  }

  void absorb(int layer, double flux) {
    inLayers[layer] += flux;
    ended[Fate.WATER.ordinal()] += flux;
  }

  /** Number of figures that {@link #copyTo} writes. */
  int size() {
    return 1 + ended.length + inLayers.length;
  }

  /** Appends launched, each fate and each layer to an array. */
  void copyTo(double[] target, int from) {
    target[from] = launched;
    System.arraycopy(ended, 0, target, from + 1, ended.length);
    System.arraycopy(inLayers, 0, target, from + 1 + ended.length, inLayers.length);
  }
}
