package parfield.web.publish;

import com.fasterxml.jackson.databind.JsonNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import parfield.answer.Advice;
import parfield.answer.Bench;
import parfield.answer.RecommendationAnswer;
import parfield.answer.Refusal;
import parfield.plan.NamedTank;
import parfield.plan.Planner;
import parfield.plan.Search;
import parfield.report.Paper;
import parfield.report.ReportPage;
import parfield.report.Reports;
import parfield.units.LengthUnit;
import parfield.web.bench.AdviceDocument;
import parfield.web.bench.Benches;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.bench.StoredModel;
import parfield.web.page.Screen;
import parfield.web.page.Step;
import parfield.web.work.Job;
import parfield.web.work.Jobs;
import parfield.workspace.Result;

/**
 * The report of a bench's newest recommendation: made in the background, seen as a page, printed as
 * PDF.
 *
 * <p>A recommendation is kept as what was said of it. Its report wants more, so that it is found
 * again, by the same search, which gives the same; should it not, as after a change of the program,
 * the one that was found now is kept, and the report is of that one.
 */
public final class ReportScreen implements Screen {
  /** Kind of this work. */
  private static final String REPORT = "report";

  /** Share of the work that is done when the recommendation is found again. */
  private static final double SEARCHED = 0.5;

  private final Desk desk;

  ReportScreen(Desk desk) {
    this.desk = desk;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.post("/bench/{id}/publish/report", this::make);
    routes.get("/bench/{id}/publish/report/{report}/report.html", this::page);
    routes.get("/bench/{id}/publish/report/{report}/{paper}", this::print);
  }

  /**
   * What Publish says of reports.
   *
   * @param job that makes one now
   * @param failure why the last could not be made
   * @param newest the newest report
   * @param current whether it is of the newest recommendation, and that still holds
   */
  public record Shown(
      Optional<Job> job, Optional<String> failure, Optional<Result> newest, boolean current) {}

  Shown shown(OpenBench bench) {
    Optional<Result> newest = newest(bench, Result.Kind.REPORT);
    Optional<Job> last = desk.jobs().latest(bench.id(), REPORT);
    return new Shown(
        last.filter(job -> !job.ended()),
        last.filter(job -> job.state() == Job.State.FAILED).flatMap(Job::problem),
        newest,
        newest.isPresent()
            && desk.benches().current(bench, newest.get())
            && newest(bench, Result.Kind.RECOMMENDATION)
                .map(advice -> !advice.when().isAfter(newest.get().when()))
                .orElse(false));
  }

  private Optional<Result> newest(OpenBench bench, Result.Kind kind) {
    return desk.workspace().results().list(bench.id(), kind, 1).stream().findFirst();
  }

  private void make(Context context) {
    OpenBench open = desk.benches().of(context);
    Bench bench = open.bench();
    LengthUnit unit = desk.benches().frame(context, open, Step.PUBLISH).length();
    Result advice =
        newest(open, Result.Kind.RECOMMENDATION)
            .filter(kept -> desk.benches().current(open, kept))
            .orElseThrow(
                () ->
                    Refusal.of(
                        "there is no recommendation that holds for this bench as it is",
                        "ask for one on the page Recommend"));
    StoredModel model =
        desk.benches()
            .model(open)
            .orElseThrow(() -> Refusal.of("there is no light model", "fit one on the page Model"));
    JsonNode kept = AdviceDocument.read(desk.workspace().bytes(advice.document()));
    Search search = AdviceDocument.search(kept, bench);
    String who = Benches.who(context);
    desk.jobs()
        .begin(
            open.id(),
            REPORT,
            advice.id() + " " + unit,
            report -> {
              RecommendationAnswer answer =
                  Advice.answer(
                      bench,
                      model.model(),
                      new Planner(desk.benches().solver())
                          .recommend(
                              model.model(),
                              bench.demands(),
                              search,
                              progress ->
                                  report.say(
                                      SEARCHED * progress.share(), Advice.words(progress, unit)),
                              report::cancelled));
              if (report.cancelled()) {
                return;
              }
              Result told =
                  answer.json().equals(kept.get("answer"))
                      ? advice
                      : desk.benches().keepAdvice(open, model, answer, who);
              report.say(SEARCHED, "drawing the light");
              desk.benches().keepReport(told, page(open, model, answer, unit, report), who);
            });
    context.redirect("/bench/" + open.id() + "/publish");
  }

  private byte[] page(
      OpenBench open,
      StoredModel model,
      RecommendationAnswer answer,
      LengthUnit unit,
      Jobs.Report report) {
    ReportPage page =
        ReportPage.of(
            new Reports(desk.benches().solver())
                .of(
                    "Light of " + open.name(),
                    "Made with Parfield "
                        + desk.benches().version()
                        + (open.sample() ? " from invented readings." : "."),
                    open.bench(),
                    model.model(),
                    answer,
                    NamedTank.common(),
                    unit));
    report.say(1, "kept");
    return page.text().getBytes(StandardCharsets.UTF_8);
  }

  private ReportPage stored(Context context) {
    OpenBench bench = desk.benches().of(context);
    try {
      Result report = desk.workspace().results().get(UUID.fromString(context.pathParam("report")));
      if (report.bench().equals(bench.id()) && report.kind() == Result.Kind.REPORT) {
        return new ReportPage(
            new String(desk.workspace().bytes(report.document()), StandardCharsets.UTF_8));
      }
    } catch (IllegalArgumentException e) {
      // No id at all: not found, as below.
    }
    throw new NotFoundResponse("this bench has no such report");
  }

  /** The page brings its own style, which no other page may: the policy lets just this one in. */
  private void page(Context context) {
    ReportPage page = stored(context);
    context
        .header(
            "Content-Security-Policy",
            "default-src 'none'; style-src "
                + ReportPage.styleHash()
                + "; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'")
        .html(page.html());
  }

  private void print(Context context) {
    for (Paper paper : Paper.values()) {
      if (paper.fileName().equals(context.pathParam("paper"))) {
        context
            .contentType("application/pdf")
            .header(
                "Content-Disposition",
                String.format(Locale.ROOT, "inline; filename=\"%s\"", paper.fileName()))
            .result(stored(context).pdf(paper));
        return;
      }
    }
    throw new NotFoundResponse("a report is printed on A4 or Letter");
  }
}
