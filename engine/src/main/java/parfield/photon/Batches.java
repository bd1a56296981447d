package parfield.photon;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;

/**
 * Sends batches until the wanted figures are known well enough, and keeps their mean and spread.
 *
 * <p>Batch k has the k-th seed and is the k-th to be counted, whoever sent it, and whether to stop
 * is asked after fixed numbers of batches: so the answer depends on the seed alone. A batch is a
 * random sample of its own, so that the spread of the batches gives the error of the mean.
 */
final class Batches {
  /** Batches between two looks at the error. */
  private static final int LOOK_EVERY = 16;

  /** A value below this share of the mean of its kind need not be known relative to itself. */
  private static final double DARK = 0.1;

  /** Packets of one batch: a power of two. */
  private static final int PACKETS = 8192;

  /** Where there is so much to add up that adding takes long, batches are larger. */
  private static final int LARGE = 4;

  private static final int MANY_FIGURES = 20_000;

  /** Where there is little to add up they are smaller: more of them show their spread better. */
  private static final int SMALL = 8;

  private static final int FEW_FIGURES = 64;

  private final int channels;
  private final double[] outputs;
  private final int ledgerSize;
  private final List<int[]> wanted;

  /** Sum of each figure over all batches. */
  private final double[] sums;

  private final int packetsPerBatch;

  /** Mean over the batches of each slot at the outputs, and sum of squared deviations. */
  private final double[] mean;

  private final double[] spread;
  private final double[] ledgerMean;
  private final double[] ledgerSpread;
  private long batches;

  /**
   * Prepares to count.
   *
   * @param slots number of slots
   * @param outputs share of its full output at which each channel counts toward the error
   * @param ledgerSize figures of the ledger behind the slots
   * @param wanted kinds of slots whose errors decide when to stop: {first, count} each
   */
  Batches(int slots, double[] outputs, int ledgerSize, List<int[]> wanted) {
    channels = outputs.length;
    this.outputs = outputs;
    this.ledgerSize = ledgerSize;
    this.wanted = wanted;
    sums = new double[slots * channels];
    packetsPerBatch = packetsPerBatch(sums.length);
    mean = new double[slots];
    spread = new double[slots];
    ledgerMean = new double[ledgerSize];
    ledgerSpread = new double[ledgerSize];
  }

  private static int packetsPerBatch(int figures) {
    if (figures > MANY_FIGURES) {
      return LARGE * PACKETS;
    }
    return figures < FEW_FIGURES ? PACKETS / SMALL : PACKETS;
  }

  /**
   * Sends batches.
   *
   * @param trials gives each thread its own
   * @param effort when to stop
   * @param watch told of the progress; may stop it
   */
  void run(Supplier<Trial> trials, Effort effort, Watch watch) {
    ThreadLocal<Trial> trial = ThreadLocal.withInitial(trials);
    SplittableRandom seeds = new SplittableRandom(effort.seed());
    long most = (effort.mostPackets() - 1) / packetsPerBatch + 1;
    ExecutorService workers =
        Executors.newFixedThreadPool(
            effort.threads(),
            task -> {
              Thread thread = new Thread(task, "photons");
              thread.setDaemon(true);
              return thread;
            });
    try {
      Deque<Future<double[]>> sent = new ArrayDeque<>();
      long submitted = 0;
      while (batches < most) {
        while (submitted < most && sent.size() < 3 * effort.threads()) {
          long seed = seeds.nextLong();
          sent.add(workers.submit(() -> trial.get().send(seed)));
          submitted++;
        }
        count(sent.remove().get());
        if (batches % LOOK_EVERY == 0) {
          double error = worstError();
          if (!watch.goOn(batches * packetsPerBatch, error) || error <= effort.target()) {
            break;
          }
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while packets were under way", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("a batch of packets failed", e.getCause());
    } finally {
      workers.shutdownNow();
    }
  }

  private void count(double[] batch) {
    batches++;
    for (int i = 0; i < sums.length; i++) {
      sums[i] += batch[i];
    }
    for (int slot = 0; slot < mean.length; slot++) {
      double value = 0;
      int at = slot * channels;
      for (int c = 0; c < channels; c++) {
        value += outputs[c] * batch[at + c];
      }
      double change = value - mean[slot];
      mean[slot] += change / batches;
      spread[slot] += change * (value - mean[slot]);
    }
    for (int i = 0; i < ledgerSize; i++) {
      double value = batch[sums.length + i];
      double change = value - ledgerMean[i];
      ledgerMean[i] += change / batches;
      ledgerSpread[i] += change * (value - ledgerMean[i]);
    }
  }

  /**
   * Largest standard error of a wanted slot, relative to its value or to a tenth of the mean;
   * infinite where nothing is wanted.
   */
  double worstError() {
    if (batches < 2 || wanted.isEmpty()) {
      return Double.POSITIVE_INFINITY;
    }
    double worst = 0;
    for (int[] kind : wanted) {
      double all = 0;
      for (int slot = kind[0]; slot < kind[0] + kind[1]; slot++) {
        all += mean[slot];
      }
      double floor = DARK * all / kind[1];
      for (int slot = kind[0]; slot < kind[0] + kind[1]; slot++) {
        double of = Math.max(floor, mean[slot]);
        worst = Math.max(worst, of > 0 ? batchError(spread[slot]) / of : 0);
      }
    }
    return worst;
  }

  private double batchError(double sumOfSquares) {
    return batches < 2 ? Double.NaN : Math.sqrt(sumOfSquares / (batches - 1.0) / batches);
  }

  /** Number of packets that a trial must send in one batch. */
  int packetsPerBatch() {
    return packetsPerBatch;
  }

  long packets() {
    return batches * packetsPerBatch;
  }

  /** Mean per packet of one slot in one channel at full output. */
  double unit(int slot, int channel) {
    return sums[slot * channels + channel] / packets();
  }

  /** Mean per packet of one slot at the outputs. */
  double mean(int slot) {
    return mean[slot] / packetsPerBatch;
  }

  /** Standard error of {@link #mean}. */
  double error(int slot) {
    return batchError(spread[slot]) / packetsPerBatch;
  }

  /** Mean per packet of one figure of the ledger. */
  double ledger(int i) {
    return ledgerMean[i] / packetsPerBatch;
  }

  /** Standard error of {@link #ledger}. */
  double ledgerError(int i) {
    return batchError(ledgerSpread[i]) / packetsPerBatch;
  }
}
