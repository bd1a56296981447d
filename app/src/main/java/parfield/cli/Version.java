package parfield.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine.IVersionProvider;

/** The version of this build, as the build wrote it into the class path. */
final class Version implements IVersionProvider {
  @Override
  public String[] getVersion() {
    return new String[] {"parfield " + number()};
  }

  /** Returns the version number alone, for example {@code 0.1.0}. */
  static String number() {
    try (InputStream in = Version.class.getResourceAsStream("version.txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
    } catch (IOException e) {
      throw new UncheckedIOException("version.txt of this build cannot be read", e);
    }
  }
}
