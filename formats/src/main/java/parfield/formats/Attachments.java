package parfield.formats;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
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

  /** Files that are kept as they are read, each under its plain name. */
  static Attachments keeping(Attachments files, Map<String, byte[]> kept) {
    Map<String, String> names = new HashMap<>();
    return new Attachments() {
      @Override
      public String canonical(String name) {
        String canonical = files.canonical(name);
        names.putIfAbsent(canonical, plain(name));
        return canonical;
      }

      @Override
      public byte[] bytes(String name, int limit) throws Unreadable {
        byte[] bytes = files.bytes(name, limit);
        String plain = names.getOrDefault(name, plain(name));
        byte[] known = kept.putIfAbsent(plain, bytes);
        if (known != null && !Arrays.equals(known, bytes)) {
          throw new Unreadable(
              "two files of the name " + Notes.shown(plain),
              "files in the folder of the setup",
              "copy the file into that folder, and give it a name of its own");
        }
        return bytes;
      }
    };
  }

  /** A name with plain slashes and without steps that lead nowhere. */
  private static String plain(String name) {
    return Path.of("/").resolve(name.replace('\\', '/')).normalize().toString().substring(1);
  }
}
