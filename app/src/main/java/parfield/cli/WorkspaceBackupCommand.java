package parfield.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import parfield.answer.Json;
import parfield.workspace.Workspace;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield workspace backup}: a copy of one moment. */
@Command(
    name = "backup",
    mixinStandardHelpOptions = true,
    header = "Copy a workspace as it is at this moment.",
    description = {
      "",
      "Works while the workspace is in use, and overwrites nothing. The copy is checked, and is a"
          + " workspace itself."
    })
final class WorkspaceBackupCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private WorkspaceAnswer answer;

  @Parameters(paramLabel = "OUT", description = "The copy, an SQLite file that is not there yet.")
  private Path target;

  @Override
  public Integer call() {
    try (Workspace workspace = workspaceOption.openKnown()) {
      workspace.backup(target);
      ObjectNode json = Json.object();
      json.put("workspace", workspace.location().toString());
      json.put("backup", target.toString());
      answer.print(
          spec.commandLine().getOut(),
          json,
          workspace.location() + " copied to " + target + ", and the copy checked");
      return ExitCode.DONE;
    }
  }
}
