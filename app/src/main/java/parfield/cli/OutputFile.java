package parfield.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import parfield.answer.Problem;
import parfield.answer.Refusal;
import parfield.formats.WholeFile;

/**
 * A file that a command leaves: there whole or not at all. One that is there already is replaced,
 * never an input of the command.
 */
final class OutputFile {
  private OutputFile() {}

  /**
   * Refuses, before anything is computed, what could not be written.
   *
   * @param target where a file shall be left
   * @param inputs files that the command reads
   */
  static void check(Path target, List<Path> inputs) {
    Path folder = target.toAbsolutePath().getParent();
    if (Files.isDirectory(target)) {
      throw new Refusal(Problem.unwritable(target, "it is a folder"));
    }
    if (folder == null || !Files.isDirectory(folder)) {
      throw new Refusal(Problem.unwritable(target, "there is no folder " + folder));
    }
    for (Path input : inputs) {
      if (isSame(target, input)) {
        throw Refusal.of(
            target + " is read by this command: it is not overwritten",
            "name another file to write");
      }
    }
  }

  /**
   * Refuses, before anything is computed, what could not be written of the files that were asked
   * for.
   *
   * @param inputs files that the command reads
   * @param targets where files shall be left; null where one is not wanted
   * @return the names of those that are wanted
   */
  static List<String> check(List<Path> inputs, Path... targets) {
    List<String> wanted = new ArrayList<>();
    for (Path target : targets) {
      if (target != null) {
        check(target, inputs);
        wanted.add(target.toString());
      }
    }
    return wanted;
  }

  /** A name with words before its ending: {@code map.svg} and 15 give {@code map-15.svg}. */
  static Path with(Path target, String words) {
    String name = target.getFileName().toString();
    int dot = name.lastIndexOf('.');
    return target.resolveSibling(
        dot <= 0 ? name + "-" + words : name.substring(0, dot) + "-" + words + name.substring(dot));
  }

  /**
   * Leaves text under a name, as UTF-8.
   *
   * @throws parfield.formats.InvalidFile if it cannot be written there
   */
  static void write(Path target, String text) {
    WholeFile.write(target, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
  }

  private static boolean isSame(Path one, Path other) {
    try {
      return Files.exists(one) && Files.exists(other) && Files.isSameFile(one, other);
    } catch (IOException e) {
      return false;
    }
  }
}
