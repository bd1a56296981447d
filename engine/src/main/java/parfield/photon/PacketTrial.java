package parfield.photon;

import java.util.SplittableRandom;
import java.util.function.Function;

/** Sends packets of an emission through a scene, past detectors. Single-threaded. */
final class PacketTrial implements Trial {
  private final Scene scene;
  private final Emission emission;
  private final Detector[] detectors;
  private final double faint;
  private final int count;
  private final int size;
  private final Packet packet;
  private final QuasiRandom sequence = new QuasiRandom();
  private final double[] even = new double[QuasiRandom.DIMENSIONS];

  /**
   * Prepares an apparatus.
   *
   * @param scene what packets meet
   * @param bands number of wavebands
   * @param emission where they come from
   * @param detectors what counts them, one after another, given the number of channels
   * @param faint share of its first energy below which a packet plays for its life
   * @param count packets of one batch: a power of two, which the evenly spread points are best at
   */
  PacketTrial(
      Scene scene,
      int bands,
      Emission emission,
      Function<Integer, Detector[]> detectors,
      double faint,
      int count) {
    this.scene = scene;
    this.emission = emission;
    this.detectors = detectors.apply(emission.channels());
    this.faint = faint;
    this.count = count;
    packet = new Packet(bands);
    int slots = 0;
    for (Detector detector : this.detectors) {
      slots += detector.slots();
    }
    size = slots * emission.channels();
  }

  @Override
  public double[] send(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    sequence.restart(random);
    Ledger ledger = new Ledger(scene.layers().length);
    double[] totals = new double[size + ledger.size()];
    Walk walk = new Walk(scene, detectors, totals, ledger, random, faint);
    for (int i = 0; i < count; i++) {
      sequence.next(even);
      emission.launch(packet, even, random);
      walk.follow(packet);
    }
    ledger.copyTo(totals, size);
    return totals;
  }
}
