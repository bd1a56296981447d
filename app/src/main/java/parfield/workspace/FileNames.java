package parfield.workspace;

import java.util.Locale;

/** Names of files inside a workspace: relative, and never outside of their folder. */
final class FileNames {
  private FileNames() {}

  /**
   * Refuses a name that could leave its folder.
   *
   * @throws IllegalArgumentException if it is empty, absolute, holds a backslash, a colon, a
   *     control character or an empty, {@code .} or {@code ..} part
   */
  static String check(String name) {
    Texts.check("the name of a file", name, 300);
    boolean sound =
        name.chars().noneMatch(letter -> letter == '\\' || letter == ':' || letter < ' ');
    for (String part : name.split("/", -1)) {
      sound &= !part.isBlank() && !part.equals(".") && !part.equals("..");
    }
    if (!sound) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "\"%s\" is no name of a file beside a setup; allowed are names as in"
                  + " spectra/blue.csv: rename it",
              name));
    }
    return name;
  }
}
