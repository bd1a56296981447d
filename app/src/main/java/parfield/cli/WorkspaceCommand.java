package parfield.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code parfield workspace}: the stored library, kept and moved. */
@Command(
    name = "workspace",
    mixinStandardHelpOptions = true,
    header = "Keep and move what is stored.",
    description = {
      "",
      "Works on the library of benches that the pages in the browser store: one SQLite file, or a"
          + " PostgreSQL database."
    },
    subcommands = {
      WorkspaceBackupCommand.class,
      WorkspaceCheckCommand.class,
      WorkspaceExportCommand.class,
      WorkspaceImportCommand.class
    },
    synopsisSubcommandLabel = "TASK",
    commandListHeading = "%nTasks:%n")
final class WorkspaceCommand implements Runnable {
  @Spec private CommandSpec spec;

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "name a task; none was given");
  }
}
