package parfield.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import parfield.cli.answer.Answer;
import parfield.cli.answer.DemoAnswer;
import parfield.cli.answer.FieldAnswer;
import parfield.cli.answer.FitAnswer;
import parfield.cli.answer.Json;
import parfield.cli.answer.RecommendationAnswer;
import parfield.demo.DemoBench;
import parfield.field.FastSolver;
import parfield.formats.ModelFile;
import parfield.plan.Planner;
import parfield.plan.Recommendation;
import parfield.plan.Search;
import parfield.rig.Rig;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code parfield demo}: the whole job on an invented bench. */
@Command(
    name = "demo",
    mixinStandardHelpOptions = true,
    header = "Do the whole job on an invented bench.",
    description = {
      "",
      "Writes a setup and readings that a generator made, with noise, then check, statistics, fit,"
          + " recommendation and maps, all into one folder."
    })
final class DemoCommand implements Callable<Integer> {
  /** Depths of the maps [m]. */
  private static final List<Double> DEPTHS = List.of(0.10, 0.25, 0.40);

  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;

  @Option(
      names = "--out",
      paramLabel = "DIR",
      defaultValue = "parfield-demo",
      description = "The folder; made if it is not there. Default: ${DEFAULT-VALUE}.")
  private Path folder;

  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "Seed of the noise in the readings. Default: ${DEFAULT-VALUE}.")
  private long seed;

  private final List<String> left = new ArrayList<>();

  @Override
  public Integer call() {
    Map<String, String> files = DemoBench.files(seed);
    refuseForeignSetup(files.get(DemoBench.SETUP));
    files.forEach(this::leave);
    Bench bench = Bench.read(folder.resolve(DemoBench.SETUP));
    LengthUnit unit = output.length(bench);
    PrintWriter err = spec.commandLine().getErr();
    FastSolver solver = new FastSolver();

    leave("check.txt", CheckCommand.answer(bench), unit);
    leave("statistics.txt", StatsCommand.answer(bench), unit);
    Modelling.Fitted fitted = Modelling.fit(bench, solver, err);
    String model = "model.json";
    ModelFile.write(fitted.model(), folder.resolve(model));
    left.add(model);
    leave("fit.txt", new FitAnswer(fitted.surveys(), fitted.model().report(), model), unit);

    Search search =
        Search.around(List.copyOf(bench.setup().rigs().values()), bench.usualDepth())
            .withCeiling(bench.setup().room().height().orElse(Double.POSITIVE_INFINITY));
    Recommendation recommendation;
    try (StatusLine status = StatusLine.on(err)) {
      recommendation =
          new Planner(solver)
              .recommend(
                  fitted.model(),
                  bench.demands(),
                  search,
                  progress -> status.show(progress.share(), "searching"),
                  () -> false);
    }
    RecommendationAnswer answer = RecommendCommand.answer(bench, fitted.model(), recommendation);
    leave("recommendation.txt", answer, unit);
    leave("recommendation.json", Json.text(answer.json()));

    Rig chosen = recommendation.best().over(bench.setup().tank());
    FieldPrediction prediction = new FieldPrediction(fitted.model(), solver, chosen);
    for (double depth : DEPTHS) {
      prediction.addPlane(depth, FieldPrediction.CELL, bench.bands());
    }
    FieldAnswer field = prediction.answer(bench.setup().source(), List.of());
    leave("field.csv", field.csv(unit));

    output.print(
        spec.commandLine().getOut(), new DemoAnswer(folder.toString(), left, answer), unit);
    return ExitCode.DONE;
  }

  private void leave(String name, Answer answer, LengthUnit unit) {
    leave(name, answer.text(unit));
  }

  private void leave(String name, String text) {
    Path target = folder.resolve(name);
    try {
      Files.createDirectories(target.toAbsolutePath().getParent());
    } catch (IOException e) {
      throw new Refusal(
          Problem.unwritable(target, "its folder cannot be made (" + e.getMessage() + ")"));
    }
    OutputFile.write(target, text);
    left.add(name);
  }

  /** A setup that this demo did not leave is a person's own: it stays. */
  private void refuseForeignSetup(String own) {
    Path setup = folder.resolve(DemoBench.SETUP);
    if (!Files.exists(setup)) {
      return;
    }
    try {
      String mark = own.lines().findFirst().orElseThrow();
      try (var lines = Files.lines(setup)) {
        if (lines.findFirst().filter(mark::equals).isPresent()) {
          return;
        }
      }
    } catch (IOException | UncheckedIOException e) {
      throw Refusal.of(setup + " cannot be read", "name another folder with --out");
    }
    throw Refusal.of(
        setup + " is not of this demo's making: it is not overwritten",
        "name another folder with --out");
  }
}
