package parfield.formats;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;

/** Bytes and text of files, within limits that are checked before anything is read. */
final class Source {
  private static final int MEBI = 1 << 20;

  private Source() {}

  /**
   * Reads a whole file.
   *
   * @param path the file
   * @param limit most bytes, a whole number of MiB
   * @throws Unreadable if it is missing, not a regular file, too big or not readable
   */
  static byte[] bytes(Path path, int limit) throws Unreadable {
    if (!Files.exists(path)) {
      throw new Unreadable("no such file", "a file that exists", "check its name and folder");
    }
    if (Files.isDirectory(path)) {
      throw new Unreadable("a directory", "a file", "name a file inside it");
    }
    if (!Files.isRegularFile(path)) {
      throw new Unreadable("a device or a pipe", "a regular file", "save the data to a file first");
    }
    try (InputStream in = Files.newInputStream(path)) {
      long size = Files.size(path);
      if (size > limit) {
        throw tooBig(String.format(Locale.ROOT, "%d bytes", size), limit);
      }
      // A file may grow, or tell no size, while it is read.
      byte[] bytes = in.readNBytes(limit + 1);
      if (bytes.length > limit) {
        throw tooBig("more", limit);
      }
      return bytes;
    } catch (AccessDeniedException e) {
      throw new Unreadable("no permission", "a file that you may read", "change its permissions");
    } catch (IOException e) {
      throw new Unreadable(
          "an error of the disk or network", "a readable file", "copy it to another place");
    }
  }

  /** Bytes that are held already, within the same limit. */
  static byte[] checked(byte[] bytes, int limit) throws Unreadable {
    if (bytes.length > limit) {
      throw tooBig(String.format(Locale.ROOT, "%d bytes", bytes.length), limit);
    }
    return bytes;
  }

  private static Unreadable tooBig(String size, int limit) {
    return new Unreadable(
        size,
        String.format(Locale.ROOT, "at most %d MiB (%d bytes)", limit / MEBI, limit),
        "check that it is the file you mean, or split it");
  }

  /**
   * Decodes UTF-8, with or without a byte order mark.
   *
   * @throws Unreadable if the bytes are something else; it names the line
   */
  static String text(byte[] bytes) throws Unreadable {
    if (bytes.length >= 2
        && ((bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF)
            || (bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE))) {
      throw new Unreadable("text in UTF-16", "text in UTF-8", "save it as UTF-8");
    }
    CharsetDecoder decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    ByteBuffer in = ByteBuffer.wrap(bytes);
    CharBuffer out = CharBuffer.allocate(bytes.length);
    CoderResult result = decoder.decode(in, out, true);
    if (result.isError()) {
      int line = 1;
      for (int i = 0; i < in.position(); i++) {
        if (bytes[i] == '\n') {
          line++;
        }
      }
      throw new Unreadable(
          line,
          String.format(Locale.ROOT, "the byte 0x%02X", bytes[in.position()] & 0xFF),
          "text in UTF-8",
          "save it as UTF-8");
    }
    String text = out.flip().toString();
    return text.startsWith("\uFEFF") ? text.substring(1) : text;
  }
}
