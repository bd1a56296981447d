package parfield.formats;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Locale;

/** Writes files whole or not at all: whoever reads one never sees a part of it. */
public final class WholeFile {
  private WholeFile() {}

  /** Writes what a file shall hold. */
  @FunctionalInterface
  public interface Content {
    /**
     * Writes everything to a stream, which the caller closes.
     *
     * @throws IOException if the stream cannot be written
     */
    void writeTo(OutputStream out) throws IOException;
  }

  /**
   * Writes a file beside its place, then moves it there; a file that was there is replaced, and
   * stays as it was if anything goes wrong.
   *
   * @param path where; its folder must exist; a link is followed
   * @param content what
   * @throws InvalidFile if it cannot be written there
   */
  public static void write(Path path, Content content) {
    Path name = path.getFileName();
    String file = name == null ? path.toString() : name.toString();
    try {
      if (Files.isDirectory(path)) {
        throw refused(file, "a directory", "the name of a file", "name a file inside it");
      }
      if (Files.exists(path) && !Files.isRegularFile(path)) {
        throw refused(file, "a device or a pipe", "a regular file", "name another file");
      }
      Path target = Files.exists(path) ? path.toRealPath() : path.toAbsolutePath();
      Path folder = target.getParent();
      if (folder == null || !Files.isDirectory(folder)) {
        throw refused(file, "no such folder", "a folder that exists", "make the folder first");
      }
      Path part =
          folder.resolve(String.format(Locale.ROOT, ".%s.%x.part", file, System.nanoTime()));
      try {
        fill(part, content);
        move(part, target);
      } finally {
        Files.deleteIfExists(part);
      }
    } catch (AccessDeniedException e) {
      throw refused(file, "no permission", "a folder that you may write to", "name another folder");
    } catch (IOException e) {
      throw refused(
          file,
          "an error of the disk: " + Notes.shown(String.valueOf(e.getMessage())),
          "a disk with room on it",
          "free some room, or name another folder");
    }
  }

  private static void fill(Path part, Content content) throws IOException {
    try (FileChannel channel =
            FileChannel.open(part, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel), 1 << 16)) {
      content.writeTo(out);
      out.flush();
      channel.force(true);
    }
  }

  private static void move(Path part, Path target) throws IOException {
    try {
      Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static InvalidFile refused(String file, String value, String limit, String cure) {
    return new InvalidFile(
        List.of(new Fault(file, 0, 0, "the file cannot be written", value, limit, cure)));
  }
}
