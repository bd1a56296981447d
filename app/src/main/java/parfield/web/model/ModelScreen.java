package parfield.web.model;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parfield.answer.BenchFit;
import parfield.answer.FitAnswer;
import parfield.answer.Json;
import parfield.rig.Rig;
import parfield.survey.Survey;
import parfield.units.LengthUnit;
import parfield.web.bench.Benches;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.bench.StoredModel;
import parfield.web.page.Frame;
import parfield.web.page.Screen;
import parfield.web.page.Step;
import parfield.web.work.Job;
import parfield.web.work.Jobs;

/** The step Model. */
public final class ModelScreen implements Screen {
  /** Kind of the work that fits. */
  static final String FIT = "fit";

  private final Desk desk;

  /** The screen over a desk. */
  public ModelScreen(Desk desk) {
    this.desk = desk;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get("/bench/{id}/model", this::show);
    routes.post("/bench/{id}/model/fit", this::fit);
    routes.get("/bench/{id}/model/model.json", this::download);
    routes.get("/bench/{id}/model/answer.json", this::answer);
    routes.get("/bench/{id}/model/pictures/{picture}", this::picture);
  }

  private void show(Context context) {
    OpenBench bench = desk.benches().of(context);
    Frame frame = desk.benches().frame(context, bench, Step.MODEL).withScript("work.js");
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("frame", frame);
    values.put("bench", bench);
    values.put("job", desk.jobs().latest(bench.id(), FIT).filter(job -> !job.ended()));
    values.put(
        "failure",
        desk.jobs()
            .latest(bench.id(), FIT)
            .filter(job -> job.state() == Job.State.FAILED)
            .flatMap(Job::problem));
    values.put(
        "transferred", desk.benches().model(bench).map(desk.benches()::transferred).orElse(false));
    values.put(
        "found",
        desk.benches()
            .model(bench)
            .map(model -> new FoundModel(bench, model, frame.length(), desk.benches().solver())));
    desk.pages().show(context, "model/model.jte", values);
  }

  /**
   * Begins a fit; if there is a model of these very inputs already, it is fitted anew all the same.
   */
  private void fit(Context context) {
    OpenBench bench = desk.benches().of(context);
    List<Survey> surveys = bench.bench().surveys();
    String who = Benches.who(context);
    desk.jobs().begin(bench.id(), FIT, bench.inputs(), report -> fit(bench, surveys, who, report));
    context.redirect("/bench/" + bench.id() + "/model");
  }

  private void fit(OpenBench bench, List<Survey> surveys, String who, Jobs.Report report) {
    report.say(0, String.format(Locale.ROOT, "fitting %d readings …", BenchFit.taken(surveys)));
    BenchFit fit = BenchFit.of(surveys, desk.benches().solver());
    if (!report.cancelled()) {
      desk.benches().keepModel(bench, fit.model(), who);
      report.say(1, "fitted");
    }
  }

  private StoredModel model(OpenBench bench) {
    return desk.benches()
        .model(bench)
        .orElseThrow(() -> new NotFoundResponse("this bench has no light model yet: fit one"));
  }

  private void download(Context context) {
    OpenBench bench = desk.benches().of(context);
    context
        .contentType("application/json")
        .header("Content-Disposition", "attachment; filename=\"model.json\"")
        .result(desk.workspace().bytes(model(bench).result().document()));
  }

  private void answer(Context context) {
    OpenBench bench = desk.benches().of(context);
    StoredModel model = model(bench);
    context
        .contentType("application/json")
        .result(
            Json.text(
                new FitAnswer(FoundModel.fitted(bench, model), model.model().report(), "model.json")
                    .json()));
  }

  private void picture(Context context) {
    OpenBench bench = desk.benches().of(context);
    LengthUnit unit = desk.benches().frame(context, bench, Step.MODEL).length();
    ModelPictures pictures = new ModelPictures(bench, model(bench), unit);
    Optional<String> svg = pictures.named(context.pathParam("picture"));
    context
        .contentType("image/svg+xml")
        .header("Cache-Control", "no-cache")
        .result(svg.orElseThrow(() -> new NotFoundResponse("there is no such picture")));
  }

  /** The rig that most readings were taken under. */
  static Optional<Rig> usualRig(OpenBench bench) {
    return bench.setup().stream()
        .flatMap(setup -> setup.surveys().values().stream())
        .max(java.util.Comparator.comparingInt(survey -> survey.readings().size()))
        .map(Survey::rig);
  }
}
