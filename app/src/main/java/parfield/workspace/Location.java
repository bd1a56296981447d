package parfield.workspace;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/** Where a workspace is stored: a file of this machine, or a PostgreSQL database. */
public sealed interface Location {
  /**
   * An SQLite file.
   *
   * @param path of the file, absolute
   */
  record File(Path path) implements Location {
    public File {
      path = path.toAbsolutePath().normalize();
    }

    @Override
    public String toString() {
      return path.toString();
    }
  }

  /**
   * A PostgreSQL database.
   *
   * @param url as its JDBC driver takes it; may hold a password
   */
  record Postgres(String url) implements Location {
    public Postgres {
      Objects.requireNonNull(url, "url");
    }

    /** The URL without what follows its question mark and without a password before its host. */
    @Override
    public String toString() {
      String plain = url.split("\\?", 2)[0];
      return plain.replaceFirst("//[^/@]*@", "//");
    }
  }

  /**
   * Reads where a workspace is.
   *
   * @param text the path of a file, or a URL that begins with {@code jdbc:postgresql:} or {@code
   *     jdbc:sqlite:}
   * @return the place
   * @throws WorkspaceProblem if it is a URL of another database, or no path
   */
  static Location parse(String text) {
    String lower = text.toLowerCase(Locale.ROOT);
    if (lower.startsWith("jdbc:postgresql:")) {
      return new Postgres(text);
    }
    String path = text;
    if (lower.startsWith("jdbc:sqlite:")) {
      path = text.substring("jdbc:sqlite:".length());
    } else if (lower.startsWith("jdbc:") || lower.matches("[a-z][a-z0-9+.-]+://.*")) {
      throw refused("a workspace is not kept in " + text.split("//", 2)[0]);
    }
    if (path.isBlank() || path.startsWith(":") || path.indexOf('?') >= 0) {
      throw refused(String.format(Locale.ROOT, "\"%s\" names no file for a workspace", path));
    }
    try {
      return new File(Path.of(path));
    } catch (InvalidPathException e) {
      throw refused(String.format(Locale.ROOT, "\"%s\" names no file for a workspace", path));
    }
  }

  private static WorkspaceProblem refused(String title) {
    return new WorkspaceProblem(
        WorkspaceProblem.Kind.REFUSED,
        title,
        List.of("name a file, or a URL as in jdbc:postgresql://host/database?user=name"));
  }

  /**
   * The workspace of a person who named none: {@code parfield/workspace.db} in the folder {@code
   * $XDG_DATA_HOME}, or in {@code ~/.local/share} where that is not set.
   *
   * @param environment variables of the process
   * @param home the person's folder
   * @return the file
   */
  static File standard(Map<String, String> environment, Path home) {
    String data = environment.getOrDefault("XDG_DATA_HOME", "");
    // The base directory specification has relative paths ignored.
    Path folder =
        !data.isEmpty() && Path.of(data).isAbsolute()
            ? Path.of(data)
            : home.resolve(".local/share");
    return new File(folder.resolve("parfield").resolve("workspace.db"));
  }
}
