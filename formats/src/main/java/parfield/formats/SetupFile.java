package parfield.formats;

import java.nio.file.Path;

/** The setup file: one YAML document that holds a bench. See docs/FORMATS.md for every key. */
public final class SetupFile {
  private SetupFile() {}

  /**
   * Reads a setup and every file it names.
   *
   * @param path the setup file; files it names are found beside it
   * @return the bench
   * @throws InvalidFile with every fault of the setup and of the files it names
   */
  public static Setup read(Path path) {
    throw new UnsupportedOperationException("the reader of setup files follows: " + path);
  }
}
