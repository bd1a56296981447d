package parfield.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import parfield.answer.Advice;
import parfield.answer.Bench;
import parfield.answer.Json;
import parfield.answer.Problem;
import parfield.answer.RecommendationAnswer;
import parfield.answer.Refusal;
import parfield.answer.ReportAnswer;
import parfield.fit.LightModel;
import parfield.formats.TanksFile;
import parfield.formats.WholeFile;
import parfield.parallel.SideBySide;
import parfield.plan.NamedTank;
import parfield.plan.Planner;
import parfield.plan.Recommendation;
import parfield.plan.Search;
import parfield.plan.Verdict;
import parfield.report.Paper;
import parfield.report.Printing;
import parfield.report.Report;
import parfield.report.ReportPage;
import parfield.report.Reports;
import parfield.units.LengthUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code parfield report}: the published advice. */
@Command(
    name = "report",
    mixinStandardHelpOptions = true,
    header = "Set the advice as a page and as printed paper.",
    description = {
      "",
      "Recommends as recommend does and leaves the answer with its maps, conditions, errors and"
          + " cautions in a folder: report.html, which needs no other file, a PDF for each paper,"
          + " and the numbers as recommendation.json. Files of these names are replaced."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:left, and an option meets all demands (probability 0.9 or more)",
      "1:left, but no option surely does",
      "2:not done: a fault in a file or on the command line"
    })
final class ReportCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private OutputOptions output;
  @Mixin private Modelling modelling;
  @Mixin private Searching searching;

  @Parameters(paramLabel = "SETUP", description = "The setup file (YAML).")
  private Path file;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "DIR",
      description = "The folder; made if it is not there.")
  private Path folder;

  @Option(
      names = "--title",
      paramLabel = "WORDS",
      description = "Title of the report; default: the size of the tank that it is about.")
  private String title;

  @Option(
      names = "--date",
      paramLabel = "WORDS",
      description = "When it was made, as it shall be printed; default: no date is.")
  private String date;

  @Option(
      names = "--tanks",
      paramLabel = "FILE",
      description =
          "Tanks to tell starting points for: separated values with the columns name, length, width"
              + " and water; default: five of common sizes.")
  private Path tanks;

  @Option(
      names = "--paper",
      paramLabel = "a4|letter",
      split = ",",
      hideParamSyntax = true,
      converter = PaperConverter.class,
      description = "Papers to print on; default: A4, and Letter where lengths are in inches.")
  private List<Paper> papers = List.of();

  @Override
  public Integer call() {
    if (Files.exists(folder) && !Files.isDirectory(folder)) {
      throw new Refusal(Problem.unwritable(folder, "it is no folder"));
    }
    // Fonts and the many classes of printing are read while the light is computed.
    CompletableFuture<Void> ready = CompletableFuture.runAsync(Printing::prepare);
    Bench bench = Bench.read(file);
    LengthUnit unit = output.length(bench);
    Search search = searching.search(bench, unit);
    List<NamedTank> elsewhere = tanks == null ? NamedTank.common() : TanksFile.read(tanks, unit);
    PrintWriter err = spec.commandLine().getErr();
    LightModel model = modelling.model(bench, err);
    Recommendation recommendation;
    try (StatusLine status = StatusLine.on(err)) {
      recommendation =
          new Planner(modelling.solver())
              .recommend(
                  model,
                  bench.demands(),
                  search,
                  progress -> status.show(progress.share(), Advice.words(progress, unit)),
                  () -> false);
      status.show("drawing and printing …");
    }
    RecommendationAnswer advice = Advice.answer(bench, model, recommendation);
    Report report =
        new Reports(modelling.solver())
            .of(
                title == null ? Reports.title(bench, unit) : title,
                "Made with Parfield " + Version.number() + (date == null ? "." : ", " + date + "."),
                bench,
                model,
                advice,
                elsewhere,
                unit);
    ready.join();
    output.print(
        spec.commandLine().getOut(),
        new ReportAnswer(folder.toString(), leave(report, unit), advice),
        unit);
    return recommendation.best().standing() == Verdict.Standing.MET
        ? ExitCode.DONE
        : ExitCode.NEGATIVE;
  }

  /** What was left: the name of each file and what it holds. */
  private Map<String, String> leave(Report report, LengthUnit unit) {
    try {
      Files.createDirectories(folder);
    } catch (IOException e) {
      throw new Refusal(
          Problem.unwritable(folder, "the folder cannot be made (" + e.getMessage() + ")"));
    }
    ReportPage page = ReportPage.of(report);
    List<Paper> chosen = papers.isEmpty() ? List.of(Paper.usualFor(unit)) : papers;
    Supplier<List<byte[]>> printed =
        SideBySide.ahead(() -> chosen.stream().map(page::pdf).toList());
    Map<String, String> left = new LinkedHashMap<>();
    OutputFile.write(folder.resolve("report.html"), page.html());
    left.put("report.html", "the report as one page");
    OutputFile.write(folder.resolve("recommendation.json"), Json.text(report.advice().json()));
    for (int p = 0; p < chosen.size(); p++) {
      Paper paper = chosen.get(p);
      byte[] pdf = printed.get().get(p);
      WholeFile.write(folder.resolve(paper.fileName()), out -> out.write(pdf));
      left.put(paper.fileName(), "the report on " + paper.title());
    }
    left.put("recommendation.json", "its numbers for programs");
    return left;
  }
}
