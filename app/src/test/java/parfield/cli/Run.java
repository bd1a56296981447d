package parfield.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * One run of the program as a person would start it, in this process.
 *
 * @param code the exit code
 * @param out what came on standard output
 * @param err what came on standard error
 */
public record Run(int code, String out, String err) {
  /** Runs the program. */
  public static Run parfield(Object... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code =
        Parfield.run(
            new PrintWriter(out),
            new PrintWriter(err),
            Stream.of(args).map(String::valueOf).toArray(String[]::new));
    return new Run(code, out.toString(), err.toString());
  }

  /** What a run that was refused must be: these lines on standard error, and nothing else. */
  static Run refused(String... lines) {
    return new Run(ExitCode.FAILED, "", String.join("\n", lines) + "\n");
  }

  /** The bench of {@code src/test/resources/parfield/cli/bench}, copied where it may be spoilt. */
  static Path bench(Path folder) {
    for (String name : List.of("setup.yaml", "low.csv", "high.csv", "white.csv")) {
      write(folder.resolve(name), read("bench/" + name));
    }
    return folder.resolve("setup.yaml");
  }

  /** The bench with a part of one of its files replaced; the part must be there. */
  static Path bench(Path folder, String file, String part, String replacement) {
    Path setup = bench(folder);
    String text = read("bench/" + file);
    if (!text.contains(part)) {
      throw new IllegalArgumentException(file + " does not hold: " + part);
    }
    write(folder.resolve(file), text.replace(part, replacement));
    return setup;
  }

  /** A text of the test resources beside this package. */
  static String read(String name) {
    try (var in = Run.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalArgumentException("no test resource " + name);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static void write(Path file, String text) {
    try {
      Files.writeString(file, text);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Names of all files under a folder, sorted. */
  static List<String> files(Path folder) {
    try (Stream<Path> files = Files.walk(folder)) {
      return files
          .filter(Files::isRegularFile)
          .map(file -> folder.relativize(file).toString())
          .sorted()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
