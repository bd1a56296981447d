package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import parfield.answer.Bench;
import parfield.answer.BenchFit;
import parfield.field.FastSolver;
import parfield.fit.LightModel;
import parfield.formats.ModelFile;
import parfield.rig.Rig;
import parfield.survey.Survey;
import picocli.CommandLine.Option;

/** Where a command takes its light model from: a file, or a fit made there and then. */
final class Modelling {
  @Option(
      names = "--model",
      paramLabel = "MODEL",
      description = "A model that fit left; default: the surveys of the setup are fitted first.")
  private Path file;

  private final FastSolver solver = new FastSolver();

  FastSolver solver() {
    return solver;
  }

  /** Files that are read beside the setup. */
  List<Path> inputs() {
    return file == null ? List.of() : List.of(file);
  }

  /** The model of a bench. */
  LightModel model(Bench bench, PrintWriter err) {
    return file == null ? fit(bench, solver, err).model() : ModelFile.read(file);
  }

  /**
   * A rig whose channels all have a distribution: as stated, where every one is and no model was
   * named, else by the model's best estimate.
   */
  Rig lit(Bench bench, Rig rig, PrintWriter err) {
    boolean stated =
        rig.hangings().stream()
            .flatMap(hanging -> hanging.fixture().channels().stream())
            .allMatch(channel -> channel.distribution().isPresent());
    return stated && file == null ? rig : model(bench, err).best().applyTo(rig);
  }

  /** Fits the surveys of a bench; where they had to be thinned, says so, in the model too. */
  static BenchFit fit(Bench bench, FastSolver solver, PrintWriter err) {
    List<Survey> surveys = bench.surveys();
    BenchFit fit;
    try (StatusLine status = StatusLine.on(err)) {
      status.show(String.format(Locale.ROOT, "fitting %d readings …", BenchFit.taken(surveys)));
      fit = BenchFit.of(surveys, solver);
    }
    fit.thinned().ifPresent(err::println);
    return fit;
  }
}
