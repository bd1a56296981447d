package parfield.formats;

import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Optional;

/**
 * Whatever the bytes, a photometric file or an exchanged spectrum is read or refused with words,
 * within bounded memory: what the fuzzer and the tests over its kept files both ask.
 */
final class LightFileTrial {
  /** Memory that one file may take [bytes], beyond what its own size explains. */
  private static final long MOST_BYTES = 64L << 20;

  private static final long PER_BYTE = 400;

  private LightFileTrial() {}

  private static void bounded(byte[] bytes, Runnable read) {
    // What loads classes at first takes memory that is no file's: a file is blamed when read twice.
    if (taken(read) > MOST_BYTES + PER_BYTE * bytes.length) {
      long taken = taken(read);
      if (taken > MOST_BYTES + PER_BYTE * bytes.length) {
        throw new AssertionError(taken + " bytes were allocated for " + bytes.length);
      }
    }
  }

  private static long taken(Runnable read) {
    long before = allocated();
    try {
      read.run();
    } catch (InvalidFile e) {
      if (e.faults().isEmpty() || e.getMessage().contains("\0")) {
        throw new AssertionError("a refusal without printable words", e);
      }
      for (Fault fault : e.faults()) {
        if (fault.message().length() > 1000) {
          throw new AssertionError("a message too long to read: " + fault.message(), e);
        }
      }
    }
    return allocated() - before;
  }

  private static long allocated() {
    return ((com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean())
        .getCurrentThreadAllocatedBytes();
  }

  static void photometric(byte[] bytes) {
    bounded(
        bytes,
        () -> {
          PhotometricFile file = PhotometricFile.read("lamp", bytes);
          double flux = file.table().flux();
          double down = file.table().distribution(1).intensity(0.3, 0.4);
          if (!(flux >= 0) || !(down >= 0)) {
            throw new AssertionError("a light of " + flux + " lm, " + down + " cd");
          }
        });
  }

  static void exchangedSpectrum(byte[] bytes) {
    bounded(
        bytes,
        () -> {
          Notes notes = new Notes();
          List<MeasuredSpectrum> read =
              SpectrumFile.read("light.spdx", bytes, Optional.empty(), notes);
          notes.throwIfFaulty();
          read.forEach(MeasuredSpectrum::photons);
        });
  }
}
