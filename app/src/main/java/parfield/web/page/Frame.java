package parfield.web.page;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import parfield.units.LengthUnit;

/**
 * What stands about the content of a page.
 *
 * @param title of the page
 * @param bench that it is about, if it is about one
 * @param display what the person chose
 * @param length unit of lengths on this page
 * @param libraries names of files of {@link Libraries} that the scripts use
 * @param scripts names of modules under {@code /scripts/} that the page runs
 * @param styles names of sheets under {@code /styles/} beside the common one
 */
public record Frame(
    String title,
    Optional<BenchHead> bench,
    Display display,
    LengthUnit length,
    List<String> libraries,
    List<String> scripts,
    List<String> styles) {
  public Frame {
    libraries = List.copyOf(libraries);
    scripts = List.copyOf(scripts);
    styles = List.copyOf(styles);
  }

  /** A page about no bench. */
  public static Frame plain(String title, Display display) {
    return new Frame(
        title,
        Optional.empty(),
        display,
        display.unit(LengthUnit.CM),
        List.of(),
        List.of(),
        List.of());
  }

  /** This frame under another title. */
  public Frame titled(String newTitle) {
    return new Frame(newTitle, bench, display, length, libraries, scripts, styles);
  }

  /** This frame with one more library, before its scripts. */
  public Frame withLibrary(String name) {
    return new Frame(title, bench, display, length, plus(libraries, name), scripts, styles);
  }

  /** This frame with one more script. */
  public Frame withScript(String name) {
    return new Frame(title, bench, display, length, libraries, plus(scripts, name), styles);
  }

  /** This frame with one more style sheet. */
  public Frame withStyle(String name) {
    return new Frame(title, bench, display, length, libraries, scripts, plus(styles, name));
  }

  private static List<String> plus(List<String> names, String name) {
    return Stream.concat(names.stream(), Stream.of(name)).toList();
  }
}
