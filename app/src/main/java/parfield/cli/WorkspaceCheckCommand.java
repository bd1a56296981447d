package parfield.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import parfield.answer.Json;
import parfield.workspace.Holdings;
import parfield.workspace.Workspace;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code parfield workspace check}: reads all of it. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    header = "Read all of a workspace and tell whether it is sound.",
    description = {
      "",
      "Looks at every page of the file and at what must hold between benches, surveys and readings;"
          + " changes nothing of them. Ends with exit code 1 if something does not hold."
    })
final class WorkspaceCheckCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private WorkspaceAnswer answer;

  @Override
  public Integer call() {
    try (Workspace workspace = workspaceOption.openKnown()) {
      List<String> faults = workspace.check();
      Holdings holdings = workspace.holdings();
      ObjectNode json = Json.object();
      json.put("workspace", workspace.location().toString());
      json.put("sound", faults.isEmpty());
      ArrayNode array = json.putArray("faults");
      faults.forEach(array::add);
      json.put("benches", holdings.benches());
      json.put("surveys", holdings.surveys());
      json.put("readings", holdings.readings());
      json.put("revisions", holdings.revisions());
      json.put("results", holdings.results());
      json.put("newest_backup", workspace.newestBackup().map(Object::toString).orElse(null));
      List<String> lines = new ArrayList<>();
      lines.add(workspace.location() + (faults.isEmpty() ? " is sound" : " is not sound"));
      faults.forEach(fault -> lines.add("  " + fault));
      lines.add(
          String.format(
              Locale.ROOT,
              "%d benches, %d surveys, %d readings in %d revisions, %d models and recommendations",
              holdings.benches(),
              holdings.surveys(),
              holdings.readings(),
              holdings.revisions(),
              holdings.results()));
      workspace.newestBackup().ifPresent(backup -> lines.add("newest backup " + backup));
      workspace.notices().forEach(lines::add);
      answer.print(spec.commandLine().getOut(), json, lines.toArray(String[]::new));
      return faults.isEmpty() ? ExitCode.DONE : ExitCode.NEGATIVE;
    }
  }
}
