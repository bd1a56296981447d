package parfield.plot;

import java.awt.image.IndexColorModel;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The colours of PPFD: viridis, whose lightness rises evenly, so that it also reads in grey. */
final class Viridis {
  /** Number of colours. */
  static final int SIZE = 256;

  private static final int[] RGB = read();

  private Viridis() {}

  /** The colour at a share of the scale, 0 to 1, as 0xRRGGBB. */
  static int rgb(double share) {
    return RGB[index(share)];
  }

  /** The number of the colour at a share of the scale, 0 to 1. */
  static int index(double share) {
    return (int) Math.round(share * (SIZE - 1));
  }

  /** The colours as the palette of an image. */
  static IndexColorModel palette() {
    return new IndexColorModel(8, SIZE, RGB, 0, false, -1, java.awt.image.DataBuffer.TYPE_BYTE);
  }

  private static int[] read() {
    try (InputStream in = Viridis.class.getResourceAsStream("viridis.txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .flatMap(line -> java.util.Arrays.stream(line.strip().split(" +")))
          .mapToInt(hex -> Integer.parseInt(hex, 16))
          .toArray();
    } catch (IOException e) {
      throw new UncheckedIOException("viridis.txt of this build cannot be read", e);
    }
  }
}
