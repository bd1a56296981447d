package parfield.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import parfield.answer.Json;
import parfield.answer.Refusal;
import parfield.workspace.BenchSummary;
import parfield.workspace.Taken;
import parfield.workspace.Workspace;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield workspace import}: a bench, or a whole workspace, from files. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    header = "Take a bench, or a whole workspace, from files.",
    description = {
      "",
      "Takes a setup with the files it names, a zip archive of those, or an archive of a workspace."
          + " All or nothing is stored, and nothing that is stored changes: a bench of a workspace"
          + " that is there already, by its id, stays as it is."
    })
final class WorkspaceImportCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private WorkspaceOption workspaceOption;
  @Mixin private WorkspaceAnswer answer;

  @Parameters(paramLabel = "FILE", description = "A setup, or a zip archive.")
  private Path file;

  @Option(
      names = "--who",
      paramLabel = "NAME",
      description = "Who brings it, as the history of a bench says. Default: the user's name.")
  private String who = System.getProperty("user.name", "");

  @Override
  public Integer call() {
    if (!Files.isRegularFile(file)) {
      throw Refusal.of("there is no file " + file, "check its name and folder");
    }
    try (Workspace workspace = workspaceOption.open()) {
      ObjectNode json = Json.object();
      json.put("workspace", workspace.location().toString());
      if (Workspace.isArchive(file)) {
        Taken taken = workspace.importFrom(file);
        json.put("benches", taken.benches());
        json.put("known_benches", taken.known());
        json.put("surveys", taken.surveys());
        json.put("readings", taken.readings());
        json.put("results", taken.results());
        json.put("shelf", taken.shelf());
        answer.print(
            spec.commandLine().getOut(),
            json,
            String.format(
                Locale.ROOT,
                "%d benches added with %d surveys, %d readings, %d models and recommendations;"
                    + " %d things put on the shelf",
                taken.benches(),
                taken.surveys(),
                taken.readings(),
                taken.results(),
                taken.shelf()),
            String.format(
                Locale.ROOT, "%d benches were there already and stay as they are", taken.known()));
      } else {
        BenchSummary bench =
            workspace.benches().get(workspace.benchFiles().take(file, who).bench());
        json.put("bench", bench.id().toString());
        json.put("name", bench.name());
        json.put("surveys", bench.surveys());
        json.put("readings", bench.readings());
        answer.print(
            spec.commandLine().getOut(),
            json,
            String.format(
                Locale.ROOT,
                "bench %s added with %d surveys and %d readings",
                bench.name(),
                bench.surveys(),
                bench.readings()));
      }
      return ExitCode.DONE;
    }
  }
}
