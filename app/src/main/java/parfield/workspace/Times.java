package parfield.workspace;

import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** Times as they are stored: whole microseconds. */
final class Times {
  private static final long MICROS = 1_000_000;

  private Times() {}

  static long micros(Instant when) {
    return ChronoUnit.MICROS.between(Instant.EPOCH, when);
  }

  static Instant instant(long micros) {
    return Instant.ofEpochSecond(
        Math.floorDiv(micros, MICROS), Math.floorMod(micros, MICROS) * 1000);
  }
}
