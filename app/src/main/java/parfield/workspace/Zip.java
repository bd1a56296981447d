package parfield.workspace;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.time.LocalDateTime;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Archives, read within bounds: an archive that would fill memory or disk is refused. */
final class Zip {
  /** An archive may hold this much however small it is [bytes]. */
  private static final long ALWAYS = 16L << 20;

  /** How many times its own size an archive may hold beyond that. */
  private static final long RATIO = 200;

  private Zip() {}

  /**
   * How much an archive may hold.
   *
   * @param entries most files
   * @param bytes most bytes of all files together
   */
  record Bounds(int entries, long bytes) {}

  /** Takes the files of an archive, one after the other. */
  @FunctionalInterface
  interface Visitor {
    /**
     * Takes a file.
     *
     * @param name of it, sound and not seen before
     * @param content of it, to be read before this returns
     */
    void file(String name, InputStream content) throws IOException;
  }

  /**
   * Reads an archive.
   *
   * @param file its name, for messages
   * @throws WorkspaceProblem if it is damaged, too big, or holds a name that leads out of it
   */
  static void read(String file, InputStream in, Bounds bounds, Visitor visitor) {
    Counted packed = new Counted(in, Long.MAX_VALUE, 0, null, file);
    Set<String> names = new HashSet<>();
    long total = 0;
    try {
      ZipInputStream zip = new ZipInputStream(packed);
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        if (names.size() >= bounds.entries()) {
          throw tooBig(file, String.format(Locale.ROOT, "%d files", bounds.entries()));
        }
        String name = entry.getName();
        if (entry.isDirectory()) {
          continue;
        }
        try {
          FileNames.check(name);
        } catch (IllegalArgumentException e) {
          throw refused(file, e.getMessage());
        }
        if (!names.add(name)) {
          throw refused(file, "it holds " + name + " twice");
        }
        Counted content = new Counted(zip, bounds.bytes() - total, total, packed, file);
        visitor.file(name, content);
        content.skipRest();
        total += content.count;
      }
    } catch (ZipException e) {
      throw refused(file, String.valueOf(e.getMessage()));
    } catch (IOException e) {
      throw refused(file, "it ends early or cannot be read (" + e.getMessage() + ")");
    } catch (IllegalArgumentException e) {
      throw refused(file, String.valueOf(e.getMessage()));
    }
    if (names.isEmpty()) {
      throw refused(file, "it holds no file");
    }
  }

  /** Counts what passes, and refuses what is too much. */
  private static final class Counted extends FilterInputStream {
    private final long limit;
    private final long before;
    private final Counted packed;
    private final String file;
    private long count;

    Counted(InputStream in, long limit, long before, Counted packed, String file) {
      super(in);
      this.limit = limit;
      this.before = before;
      this.packed = packed;
      this.file = file;
    }

    private void add(long read) {
      count += Math.max(0, read);
      if (count > limit) {
        throw tooBig(file, "its limit of bytes in all files");
      }
      if (packed != null && before + count > ALWAYS + RATIO * packed.count) {
        throw tooBig(file, String.format(Locale.ROOT, "%d times its own size", RATIO));
      }
    }

    @Override
    public int read() throws IOException {
      int read = in.read();
      add(read < 0 ? 0 : 1);
      return read;
    }

    @Override
    public int read(byte[] bytes, int from, int length) throws IOException {
      int read = in.read(bytes, from, length);
      add(read);
      return read;
    }

    @Override
    public long skip(long bytes) throws IOException {
      long skipped = in.skip(bytes);
      add(skipped);
      return skipped;
    }

    void skipRest() throws IOException {
      byte[] bytes = new byte[1 << 13];
      while (read(bytes, 0, bytes.length) >= 0) {
        // Counted on the way.
      }
    }

    @Override
    public void close() {
      // Whoever opened the archive closes it.
    }
  }

  static WorkspaceProblem refused(String file, String reason) {
    return WorkspaceProblem.refused(
        String.format(Locale.ROOT, "%s is no archive that can be taken: %s", file, reason),
        "export or pack it anew; nothing was stored");
  }

  private static WorkspaceProblem tooBig(String file, String limit) {
    return WorkspaceProblem.refused(
        String.format(Locale.ROOT, "%s holds more than %s", file, limit),
        "check that it is the file you mean; nothing was stored");
  }

  /** Starts a file of an archive; the same content gives the same archive. */
  static OutputStream begin(ZipOutputStream zip, String name) throws IOException {
    ZipEntry entry = new ZipEntry(name);
    // The first moment that an archive can tell, without a zone.
    entry.setTimeLocal(LocalDateTime.of(1980, 1, 1, 0, 0));
    zip.putNextEntry(entry);
    return zip;
  }
}
