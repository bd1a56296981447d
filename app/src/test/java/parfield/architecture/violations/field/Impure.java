package parfield.architecture.violations.field;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.FileReader;
import java.net.URI;
import java.nio.file.Path;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Instant;
import java.util.SplittableRandom;

/** Computes with everything that an engine should not know. */
final class Impure {
  File file;
  FileReader reader;
  Path path;
  URI address;
  Timestamp stored;
  Clock clock;
  ObjectMapper json;

  double value() {
    System.out.println("out");
    System.err.println("err");
    return System.nanoTime()
        + Instant.now().getEpochSecond()
        + Math.random()
        + new SplittableRandom().nextDouble();
  }
}
