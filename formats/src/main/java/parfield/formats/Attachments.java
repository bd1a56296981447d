package parfield.formats;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/** The files that lie beside a setup: a folder, or files held in memory. */
interface Attachments {
  /**
   * One name for a file however it is written, so that each is read once.
   *
   * @throws InvalidPathException if it cannot be the name of a file
   */
  String canonical(String name);

  /**
   * What a file holds.
   *
   * @param name as the setup writes it
   * @param limit most bytes
   */
  byte[] bytes(String name, int limit) throws Unreadable;

  /** The files of a folder. */
  static Attachments of(Path folder) {
    return new Attachments() {
      @Override
      public String canonical(String name) {
        return folder.resolve(name).normalize().toString();
      }

      @Override
      public byte[] bytes(String name, int limit) throws Unreadable {
        return Source.bytes(folder.resolve(name).normalize(), limit);
      }
    };
  }

  /**
   * Files in memory. No name reaches the file system.
   *
   * @param files by name; kept
   */
  static Attachments of(Map<String, byte[]> files) {
    Map<String, byte[]> named = new LinkedHashMap<>();
    files.forEach((name, bytes) -> named.put(plain(name), bytes));
    return new Attachments() {
      @Override
      public String canonical(String name) {
        return plain(name);
      }

      @Override
      public byte[] bytes(String name, int limit) throws Unreadable {
        byte[] bytes = named.get(plain(name));
        if (bytes == null) {
          throw new Unreadable(
              "no such file",
              "one of the bench's files",
              Nearest.of(plain(name), named.keySet())
                  .map(nearest -> "did you mean " + nearest + "?")
                  .orElse("add the file to the bench"));
        }
        return Source.checked(bytes, limit);
      }
    };
  }

  /** A name with plain slashes and without steps that lead nowhere. */
  private static String plain(String name) {
    return Path.of("/").resolve(name.replace('\\', '/')).normalize().toString().substring(1);
  }
}
