package parfield;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Whole outputs held against texts that a person has read and approved, under {@code
 * src/test/resources/approved}. With {@code -Dapprove=true} what came is approved instead: read the
 * difference before you commit it.
 */
public final class Approved {
  private static final Path FOLDER = Path.of("src/test/resources/approved");

  private Approved() {}

  /** Holds a text against the approved one of that name. */
  public static void check(String name, String text) {
    Path file = FOLDER.resolve(name);
    try {
      if (Boolean.getBoolean("approve")) {
        Files.createDirectories(file.getParent());
        Files.writeString(file, text);
      }
      assertThat(text).as("output against %s", file).isEqualTo(Files.readString(file));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
