package parfield.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import parfield.answer.Bench;
import parfield.answer.BenchFit;
import parfield.answer.FitAnswer;
import parfield.field.FastSolver;
import parfield.formats.ModelFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield fit}: a light model from all surveys of a setup. */
@Command(
    name = "fit",
    mixinStandardHelpOptions = true,
    header = "Fit a light model to all surveys of a setup.",
    description = {
      "",
      "Intensity of the fixtures, condition of panes, bottom and water, each with what the readings"
          + " leave open; the model is written to a file."
    })
final class FitCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;

  @Parameters(paramLabel = "SETUP", description = "The setup file (YAML).")
  private Path file;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "MODEL",
      description = "Where to leave the model (JSON); a file of that name is replaced.")
  private Path model;

  @Override
  public Integer call() {
    OutputFile.check(model, List.of(file));
    Bench bench = Bench.read(file);
    BenchFit fitted = Modelling.fit(bench, new FastSolver(), spec.commandLine().getErr());
    ModelFile.write(fitted.model(), model);
    output.print(
        spec.commandLine().getOut(),
        new FitAnswer(fitted.surveys(), fitted.model().report(), model.toString()),
        output.length(bench));
    return ExitCode.DONE;
  }
}
