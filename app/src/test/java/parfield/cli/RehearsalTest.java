package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

class RehearsalTest {
  private static long left() throws IOException {
    try (Stream<Path> files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
      return files
          .filter(file -> file.getFileName().toString().startsWith("parfield-rehearsal"))
          .count();
    }
  }

  @Test
  @DisplayName("it runs through, and leaves nothing behind")
  void leavesNothing() throws IOException {
    long before = left();

    Rehearsal.main(new String[0]);

    assertThat(left()).isEqualTo(before);
  }
}
