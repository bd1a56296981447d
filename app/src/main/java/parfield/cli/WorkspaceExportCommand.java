package parfield.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import parfield.answer.Json;
import parfield.answer.Refusal;
import parfield.workspace.BenchSummary;
import parfield.workspace.Workspace;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield workspace export}: all of it, or one bench, as an archive. */
@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    header = "Leave a workspace, or one bench of it, as a zip archive.",
    description = {
      "",
      "All of it goes out with every revision, to be imported elsewhere, into a file or into"
          + " PostgreSQL. A bench goes out as a setup with the files it names, as the other commands"
          + " read it."
    })
final class WorkspaceExportCommand implements Callable<Integer> {
  private static final int MOST_NAMED = 10;

  @Spec private CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private WorkspaceAnswer answer;

  @Parameters(paramLabel = "OUT", description = "The archive; one that is there is replaced.")
  private Path target;

  @Option(
      names = "--bench",
      paramLabel = "NAME",
      description = "Only this bench, by its name or id, as a setup with its files.")
  private String bench;

  @Override
  public Integer call() {
    OutputFile.check(target, List.of());
    try (Workspace workspace = workspaceOption.openKnown()) {
      ObjectNode json = Json.object();
      json.put("workspace", workspace.location().toString());
      json.put("archive", target.toString());
      String what = "all of " + workspace.location();
      if (bench == null) {
        workspace.exportTo(target);
      } else {
        BenchSummary found = find(workspace);
        workspace.benchFiles().write(found.id(), target);
        json.put("bench", found.id().toString());
        json.put("name", found.name());
        what = "bench " + found.name();
      }
      answer.print(spec.commandLine().getOut(), json, what + " exported to " + target);
      return ExitCode.DONE;
    }
  }

  private BenchSummary find(Workspace workspace) {
    try {
      return workspace.benches().get(UUID.fromString(bench));
    } catch (IllegalArgumentException e) {
      // It is a name.
    }
    List<BenchSummary> alike = workspace.benches().list(bench, Integer.MAX_VALUE, 0).items();
    List<BenchSummary> named = alike.stream().filter(it -> it.name().equals(bench)).toList();
    List<BenchSummary> found = named.isEmpty() ? alike : named;
    if (found.size() == 1) {
      return found.get(0);
    }
    if (found.isEmpty()) {
      throw Refusal.of(
          "there is no bench " + bench + " in " + workspace.location(),
          "export all of it, or look for its name in the browser");
    }
    throw Refusal.of(
        found.size() + " benches are called " + bench,
        "name one by its id: "
            + found.stream()
                .limit(MOST_NAMED)
                .map(it -> it.id() + " (" + it.name() + ")")
                .collect(Collectors.joining(", ")));
  }
}
