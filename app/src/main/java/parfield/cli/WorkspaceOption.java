package parfield.cli;

import java.nio.file.Path;
import parfield.answer.Refusal;
import parfield.workspace.Location;
import parfield.workspace.Workspace;
import parfield.workspace.WorkspaceProblem;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** Which workspace a command works on. */
final class WorkspaceOption {
  static final String NAME = "--workspace";

  @Option(
      names = NAME,
      paramLabel = "WHERE",
      converter = Converter.class,
      description =
          "A file, or a URL as in jdbc:postgresql://host/database. Default:"
              + " parfield/workspace.db in $XDG_DATA_HOME, or in ~/.local/share where that is not"
              + " set.")
  private Location location;

  Location location() {
    return location == null
        ? Location.standard(System.getenv(), Path.of(System.getProperty("user.home")))
        : location;
  }

  /** Opens the workspace; makes it if it is not there. */
  Workspace open() {
    return Workspace.open(location());
  }

  /**
   * Opens the workspace.
   *
   * @throws Refusal if there is none
   */
  Workspace openKnown() {
    if (!Workspace.isThere(location())) {
      throw Refusal.of("there is no workspace " + location(), "name another with " + NAME);
    }
    return open();
  }

  /** Reads a location. */
  static final class Converter implements ITypeConverter<Location> {
    @Override
    public Location convert(String text) {
      try {
        return Location.parse(text);
      } catch (WorkspaceProblem e) {
        throw new TypeConversionException(e.title() + "; " + e.hints().get(0));
      }
    }
  }
}
