package parfield.formats;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import parfield.fit.LightModel;

/**
 * The model file: a fitted light model as JSON, the units of its numbers named in it. See
 * docs/FORMATS.md for every key.
 *
 * <p>What is written is read back exactly: every number to its last bit.
 */
public final class ModelFile {
  /** Version of the format, raised whenever a file of the old one would be misread. */
  static final int VERSION = 1;

  /** Most bytes of a model file. */
  static final int MOST_BYTES = 64 << 20;

  private static final int DEEPEST = 50;

  private static final JsonFactory JSON =
      JsonFactory.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .streamReadConstraints(StreamReadConstraints.builder().maxNestingDepth(DEEPEST).build())
          .build();

  private ModelFile() {}

  /**
   * Reads a light model.
   *
   * @param path the model file
   * @return the model
   * @throws InvalidFile if it cannot be read, or is not a model file of a known version; it names
   *     the first fault, for a program wrote the file
   */
  public static LightModel read(Path path) {
    Path name = path.getFileName();
    String file = name == null ? path.toString() : name.toString();
    try {
      return read(file, Source.bytes(path, MOST_BYTES));
    } catch (Unreadable e) {
      throw new Notes().fatal(e.of(file));
    }
  }

  /**
   * Reads a light model that is held in memory.
   *
   * @param file what it is called in messages
   * @param bytes of the model file
   * @return the model
   * @throws InvalidFile as {@link #read(Path)}
   */
  public static LightModel read(String file, byte[] bytes) {
    Notes notes = new Notes();
    try (JsonParser parser = JSON.createParser(bytes)) {
      return new ModelReader(file, parser, notes).model();
    } catch (IOException e) {
      throw notes.fatal(
          new Fault(
              file,
              0,
              0,
              "this is no JSON of a light model",
              Notes.shown(String.valueOf(e.getMessage())),
              "",
              ModelReader.AGAIN));
    }
  }

  /**
   * Writes a light model: the file is replaced whole, or left as it was.
   *
   * @param model what to write
   * @param path where; its folder must exist
   * @throws InvalidFile if it cannot be written
   * @throws IllegalArgumentException if the model holds a kind of distribution that the format does
   *     not know
   */
  public static void write(LightModel model, Path path) {
    WholeFile.write(path, out -> write(model, out));
  }

  /** What a model's file holds. */
  public static byte[] bytes(LightModel model) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try {
      write(model, out);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toByteArray();
  }

  private static void write(LightModel model, OutputStream out) throws IOException {
    try (JsonGenerator generator =
        JSON.createGenerator(out).disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET)) {
      new ModelWriter(generator).model(model);
    }
  }
}
