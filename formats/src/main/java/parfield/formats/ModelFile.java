package parfield.formats;

import java.nio.file.Path;
import parfield.fit.LightModel;

/** The model file: a fitted light model as JSON. See docs/FORMATS.md for every key. */
public final class ModelFile {
  private ModelFile() {}

  /**
   * Reads a light model.
   *
   * @param path the model file
   * @throws InvalidFile if it cannot be read or is not a model file of a known version
   */
  public static LightModel read(Path path) {
    throw new UnsupportedOperationException("the reader of model files follows: " + path);
  }

  /**
   * Writes a light model: the file is replaced whole, or left as it was.
   *
   * @param model what to write
   * @param path where; its folder must exist
   * @throws InvalidFile if it cannot be written
   */
  public static void write(LightModel model, Path path) {
    throw new UnsupportedOperationException("the writer of model files follows: " + path);
  }
}
