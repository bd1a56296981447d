package parfield.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parfield.field.FastSolver;
import parfield.fit.FitReport;
import parfield.fit.LightModel;
import parfield.fit.LightModelFit;
import parfield.formats.ModelFile;
import parfield.rig.Rig;
import parfield.survey.Survey;
import parfield.survey.Thinning;
import picocli.CommandLine.Option;

/** Where a command takes its light model from: a file, or a fit made there and then. */
final class Modelling {
  /**
   * More readings than this are thinned before a fit: it takes time and memory in proportion, and
   * the meter's own scale error decides long before.
   */
  static final int MOST_READINGS = 2000;

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

  /**
   * A model and the readings that it was fitted to.
   *
   * @param model the model
   * @param surveys thinned if there were too many readings
   */
  record Fitted(LightModel model, List<Survey> surveys) {
    Fitted {
      surveys = List.copyOf(surveys);
    }
  }

  /** Fits the surveys of a bench; where they had to be thinned, says so, in the model too. */
  static Fitted fit(Bench bench, FastSolver solver, PrintWriter err) {
    List<Survey> all = bench.surveys();
    List<Survey> taken = Thinning.together(all, Math.max(MOST_READINGS, all.size()));
    LightModel model;
    try (StatusLine status = StatusLine.on(err)) {
      status.show(String.format(Locale.ROOT, "fitting %d readings …", count(taken)));
      model = LightModelFit.with(solver).fit(taken);
    }
    if (count(taken) == count(all)) {
      return new Fitted(model, taken);
    }
    String sentence =
        String.format(
            Locale.ROOT,
            "Of %d readings %d were taken for the fit, spread over the tank as all are: more take"
                + " time but tell no more.",
            count(all),
            count(taken));
    err.println(sentence);
    return new Fitted(withStatement(model, sentence), taken);
  }

  private static LightModel withStatement(LightModel model, String sentence) {
    FitReport report = model.report();
    List<String> statements = new ArrayList<>(report.statements());
    statements.add(0, sentence);
    return new LightModel(
        model.best(),
        model.draws(),
        model.discrepancy(),
        new FitReport(
            report.findings(),
            report.residuals(),
            report.crossValidation(),
            statements,
            report.relativeResidual()));
  }

  private static int count(List<Survey> surveys) {
    return surveys.stream().mapToInt(survey -> survey.readings().size()).sum();
  }
}
