package parfield.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import parfield.answer.Advice;
import parfield.answer.Bench;
import parfield.answer.BenchFit;
import parfield.answer.ChoicePictures;
import parfield.answer.DemoAnswer;
import parfield.answer.FieldAnswer;
import parfield.answer.FieldPictures;
import parfield.answer.FieldPrediction;
import parfield.answer.FitAnswer;
import parfield.answer.Json;
import parfield.answer.Numbers;
import parfield.answer.Problem;
import parfield.answer.RecommendationAnswer;
import parfield.answer.Refusal;
import parfield.demo.DemoBench;
import parfield.field.FastSolver;
import parfield.fit.LightModel;
import parfield.formats.ModelFile;
import parfield.formats.WholeFile;
import parfield.plan.Demand;
import parfield.plan.NamedTank;
import parfield.plan.Planner;
import parfield.plan.Recommendation;
import parfield.plan.Search;
import parfield.plot.Scale;
import parfield.report.Paper;
import parfield.report.ReportPage;
import parfield.report.Reports;
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
          + " recommendation, maps and report, all into one folder. Files of an earlier demo are replaced."
    })
final class DemoCommand implements Callable<Integer> {
  /** Depths of the maps [m]. */
  private static final List<Double> DEPTHS = List.of(0.15, 0.30, 0.45);

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

  /** What was left: the name of each file and what it holds. */
  private final Map<String, String> left = new LinkedHashMap<>();

  @Override
  public Integer call() {
    writeBench();
    Bench bench = Bench.read(folder.resolve(DemoBench.SETUP));
    LengthUnit unit = output.length(bench);
    PrintWriter err = spec.commandLine().getErr();
    FastSolver solver = new FastSolver();

    leave("check.txt", "what it holds and assumes", CheckCommand.answer(bench).text(unit));
    leave("statistics.txt", "statistics of the readings", StatsCommand.answer(bench).text(unit));
    LightModel model = fit(bench, solver, unit, err);
    Recommendation recommendation = recommend(bench, solver, model, err);
    RecommendationAnswer answer = Advice.answer(bench, model, recommendation);
    leave("recommendation.txt", "the answer", answer.text(unit));
    leave("recommendation.json", "the same for programs", Json.text(answer.json()));
    ChoicePictures.heights(recommendation, unit)
        .ifPresent(svg -> leave("heights.svg", "what the mounting height changes", svg));
    ChoicePictures.spacings(recommendation, unit)
        .ifPresent(svg -> leave("spacings.svg", "what the spacing changes", svg));
    drawField(bench, solver, model, recommendation, unit);
    report(bench, solver, model, answer, unit);

    output.print(
        spec.commandLine().getOut(), new DemoAnswer(folder.toString(), left, answer), unit);
    return ExitCode.DONE;
  }

  private void writeBench() {
    Map<String, String> files = DemoBench.files(seed);
    refuseForeignSetup(files.get(DemoBench.SETUP));
    files.forEach(
        (name, text) -> {
          leave(name, what(name) + " (invented)", text);
        });
  }

  private static String what(String name) {
    return switch (name) {
      case DemoBench.SETUP -> "the bench: tank, fixture, rigs, meter, bands, demands";
      case "spectra/reference.csv" -> "spectrum of a lamp to compare with";
      case "spectra/places.csv" -> "spectra of ten places";
      default -> name.startsWith("spectra/") ? "spectrum of a channel" : "readings of a survey";
    };
  }

  private LightModel fit(Bench bench, FastSolver solver, LengthUnit unit, PrintWriter err) {
    BenchFit fitted = Modelling.fit(bench, solver, err);
    String name = "model.json";
    ModelFile.write(fitted.model(), folder.resolve(name));
    left.put(name, "the fitted light model");
    leave(
        "fit.txt",
        "what the fit found",
        new FitAnswer(fitted.surveys(), fitted.model().report(), name).text(unit));
    return fitted.model();
  }

  private static Recommendation recommend(
      Bench bench, FastSolver solver, LightModel model, PrintWriter err) {
    Search search = Advice.search(bench, bench.usualDepth());
    try (StatusLine status = StatusLine.on(err)) {
      return new Planner(solver)
          .recommend(
              model,
              bench.demands(),
              search,
              progress -> status.show(progress.share(), "looking for a rig"),
              () -> false);
    }
  }

  private void report(
      Bench bench,
      FastSolver solver,
      LightModel model,
      RecommendationAnswer answer,
      LengthUnit unit) {
    ReportPage page =
        ReportPage.of(
            new Reports(solver)
                .of(
                    "Light for an invented reef tank",
                    "Made with Parfield "
                        + Version.number()
                        + " from invented readings: nothing of it was measured.",
                    bench,
                    model,
                    answer,
                    NamedTank.common(),
                    unit));
    leave("report.html", "the advice as a page that needs no other file", page.html());
    Paper paper = Paper.usualFor(unit);
    byte[] pdf = page.pdf(paper);
    WholeFile.write(folder.resolve(paper.fileName()), out -> out.write(pdf));
    left.put(paper.fileName(), "the same, to print");
  }

  /** Maps of the recommended rig, all on one scale. */
  private void drawField(
      Bench bench,
      FastSolver solver,
      LightModel model,
      Recommendation recommendation,
      LengthUnit unit) {
    Rig rig = recommendation.best().over(bench.setup().tank());
    FieldPrediction prediction = new FieldPrediction(model, solver, rig);
    for (double depth : DEPTHS) {
      prediction.addPlane(depth, FieldPrediction.CELL, bench.bands());
    }
    FieldAnswer field = prediction.answer(bench.setup().source(), List.of());
    leave("field.csv", "predicted PPFD of the recommended rig", field.csv(unit));
    FieldPictures pictures = new FieldPictures(bench.setup(), rig, unit);
    Scale scale = FieldPictures.scale(field);
    for (int plane = 0; plane < DEPTHS.size(); plane++) {
      String depth = Numbers.length(DEPTHS.get(plane), unit);
      leave(
          "map-" + depth + ".svg",
          "its PPFD " + Numbers.withUnit(DEPTHS.get(plane), unit) + " deep",
          pictures.map(field, plane, scale));
    }
    int middle = DEPTHS.size() / 2;
    demanded(bench)
        .forEach(
            demand ->
                leave(
                    "band-" + demand.band().name() + ".svg",
                    "where it is in that band",
                    pictures.bandMap(field, middle, demand.band())));
    leave(
        "section.svg",
        "its PPFD from the front",
        pictures.section(prediction.section(FieldPrediction.CELL), bench.bands()));
  }

  private static Stream<Demand.Coverage> demanded(Bench bench) {
    return bench.demands().all().stream()
        .filter(Demand.Coverage.class::isInstance)
        .map(Demand.Coverage.class::cast);
  }

  private void leave(String name, String what, String text) {
    Path target = folder.resolve(name);
    try {
      Files.createDirectories(target.toAbsolutePath().getParent());
    } catch (IOException e) {
      throw new Refusal(
          Problem.unwritable(target, "its folder cannot be made (" + e.getMessage() + ")"));
    }
    OutputFile.write(target, text);
    left.put(name, what);
  }

  /** A setup that no demo left is a person's own: it stays. */
  private void refuseForeignSetup(String own) {
    Path setup = folder.resolve(DemoBench.SETUP);
    if (!Files.exists(setup)) {
      return;
    }
    String mark = own.lines().findFirst().orElseThrow();
    try (Stream<String> lines = Files.lines(setup)) {
      if (lines.findFirst().filter(mark::equals).isPresent()) {
        return;
      }
    } catch (IOException | UncheckedIOException e) {
      throw Refusal.of(setup + " cannot be read", "name another folder with --out");
    }
    throw Refusal.of(
        setup + " is not of this demo's making: it is not overwritten",
        "name another folder with --out");
  }
}
