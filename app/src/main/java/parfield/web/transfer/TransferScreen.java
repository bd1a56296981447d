package parfield.web.transfer;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import parfield.answer.Advice;
import parfield.answer.Json;
import parfield.answer.Problem;
import parfield.answer.Refusal;
import parfield.answer.Transferred;
import parfield.fit.LightModel;
import parfield.fit.ModelUpdate;
import parfield.formats.InvalidFile;
import parfield.formats.Setup;
import parfield.plan.Recommendation;
import parfield.units.LengthUnit;
import parfield.web.bench.AdviceDocument;
import parfield.web.bench.Benches;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.page.Frame;
import parfield.web.page.Problems;
import parfield.web.page.Screen;
import parfield.web.page.Step;
import parfield.web.recommend.ChoiceLight;
import parfield.web.work.Job;
import parfield.web.work.Jobs;
import parfield.workspace.Result;
import parfield.workspace.ShelfItem;
import parfield.workspace.StaleSetup;
import parfield.workspace.StoredFile;
import parfield.workspace.WorkspaceProblem;

/** A light model of another tank, applied to a bench. */
public final class TransferScreen implements Screen {
  /** Kind of the work that applies a model. */
  static final String TRANSFER = "transfer";

  private static final String PAGE = "/bench/{id}/transfer";

  /** Earlier transfers that the page lists. */
  private static final int EARLIER = 20;

  /** Share of the work that is done when the search is. */
  private static final double SEARCHED = 0.95;

  private static final String MEANWHILE =
      "readings were taken, or the bench was changed, since this was found; what you typed is not"
          + " stored yet and still stands in its fields";

  private final Desk desk;
  private final ModelShelf shelf;
  private final ConfirmingSurvey confirming;

  /** The screen over a desk. */
  public TransferScreen(Desk desk) {
    this.desk = desk;
    this.shelf = new ModelShelf(desk.workspace());
    this.confirming = new ConfirmingSurvey(desk);
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get(PAGE, context -> show(context, TransferForm.NOTHING));
    routes.post(PAGE + "/models", this::bring);
    routes.post(PAGE + "/models/put-away", this::putAway);
    routes.post(PAGE + "/apply", this::apply);
    routes.post(PAGE + "/again", this::again);
    routes.post(PAGE + "/readings", this::readings);
    routes.post(PAGE + "/prepare", this::prepare);
    routes.post(PAGE + "/adopt", this::adopt);
    routes.get(PAGE + "/{transfer}/answer.json", this::json);
    routes.get(PAGE + "/{transfer}/answer.txt", this::text);
    routes.get(PAGE + "/{transfer}/model.json", this::model);
    routes.get(PAGE + "/{transfer}/pictures/{picture}", this::picture);
  }

  private static String address(OpenBench bench) {
    return "/bench/" + bench.id() + "/transfer";
  }

  // The page.

  private void show(Context context, TransferForm form) {
    OpenBench bench = desk.benches().of(context);
    Frame frame =
        desk.benches()
            .frame(context, bench, Step.MODEL)
            .titled("A light model of another tank · " + bench.name())
            .withScript("work.js")
            .withStyle("transfer.css");
    Optional<KeptTransfer> kept = shown(context, bench);
    Optional<Job> last = desk.jobs().latest(bench.id(), TRANSFER);
    Map<String, Object> values = new HashMap<>();
    values.put("frame", frame);
    values.put("bench", bench);
    values.put("form", form);
    values.put("models", shelf.list());
    values.put("readings", readings(bench));
    values.put("enough", readings(bench) > ModelUpdate.MOST_READINGS);
    values.put("job", last.filter(job -> !job.ended()));
    values.put(
        "failure", last.filter(job -> job.state() == Job.State.FAILED).flatMap(Job::problem));
    values.put("kept", kept);
    values.put("current", kept.map(it -> current(bench, it)).orElse(false));
    values.put("plan", kept.flatMap(it -> plan(bench, it)));
    values.put(
        "own",
        desk.benches()
            .model(bench)
            .map(model -> kept.filter(it -> isModelOf(bench, it)).isPresent() && model.current())
            .orElse(false));
    values.put(
        "earlier", desk.workspace().results().list(bench.id(), Result.Kind.TRANSFER, EARLIER));
    desk.pages().show(context, "transfer/transfer.jte", values);
  }

  /** Readings of the surveys that the setup states: those that an update would use. */
  private static int readings(OpenBench bench) {
    return bench.setup().map(Setup::surveys).orElse(Map.of()).values().stream()
        .mapToInt(survey -> survey.readings().size())
        .sum();
  }

  /** The transfer that was asked for, else the newest. */
  private Optional<KeptTransfer> shown(Context context, OpenBench bench) {
    String asked = context.queryParam("transfer");
    if (asked != null) {
      return Optional.of(kept(bench, asked));
    }
    return desk.workspace().results().list(bench.id(), Result.Kind.TRANSFER, 1).stream()
        .findFirst()
        .map(this::read);
  }

  private KeptTransfer read(Result result) {
    return KeptTransfer.read(result, desk.workspace().bytes(result.document()));
  }

  private KeptTransfer kept(OpenBench bench, String id) {
    try {
      Result result = desk.workspace().results().get(UUID.fromString(id));
      if (result.bench().equals(bench.id()) && result.kind() == Result.Kind.TRANSFER) {
        return read(result);
      }
    } catch (IllegalArgumentException e) {
      // No id at all: not found, as below.
    }
    throw new NotFoundResponse("this bench has no such transfer");
  }

  /** Whether the same would be found again: nothing was changed that it depends on. */
  private static boolean current(OpenBench bench, KeptTransfer kept) {
    return bench.setup().isPresent()
        && kept.result()
            .inputs()
            .digest()
            .equals(Benches.transferInputs(bench, kept.publishedFile()));
  }

  /** Whether a transfer's model is the light model of the bench now. */
  private boolean isModelOf(OpenBench bench, KeptTransfer kept) {
    Result here = desk.workspace().results().get(kept.model());
    return desk.benches()
        .model(bench)
        .map(model -> model.result().document().equals(here.document()))
        .orElse(false);
  }

  /** Where to read; empty if the setup no longer hangs such a fixture. */
  private static Optional<PlacesPlan> plan(OpenBench bench, KeptTransfer kept) {
    try {
      return bench
          .setup()
          .map(setup -> PlacesPlan.of(kept.best().over(setup, "confirming"), kept.places()));
    } catch (Refusal e) {
      return Optional.empty();
    }
  }

  private void refuse(Context context, HttpStatus status, TransferForm form) {
    context.status(status);
    show(context, form);
  }

  // A model is brought in and applied.

  private void bring(Context context) {
    OpenBench bench = desk.benches().of(context);
    String name = TransferForm.text(context, "name");
    ModelShelf.Taken taken = shelf.take(context.uploadedFile("file"), name, Benches.who(context));
    if (taken.problem().isPresent()) {
      refuse(
          context,
          taken.tooLarge() ? HttpStatus.CONTENT_TOO_LARGE : HttpStatus.UNPROCESSABLE_CONTENT,
          TransferForm.wrong(name, taken.field(), taken.problem().get()));
      return;
    }
    ShelfItem item = taken.item().orElseThrow();
    begin(context, bench, item.name(), ModelShelf.file(item));
  }

  private void putAway(Context context) {
    OpenBench bench = desk.benches().of(context);
    shelf.putAway(TransferForm.text(context, "model"));
    context.redirect(address(bench));
  }

  private void apply(Context context) {
    OpenBench bench = desk.benches().of(context);
    ShelfItem item = shelf.get(TransferForm.text(context, "model"));
    begin(context, bench, item.name(), ModelShelf.file(item));
  }

  private void again(Context context) {
    OpenBench bench = desk.benches().of(context);
    KeptTransfer kept = kept(bench, TransferForm.text(context, "transfer"));
    begin(context, bench, kept.published(), kept.publishedFile());
  }

  /** Begins to apply a model, or tells what stands in the way. */
  private void begin(Context context, OpenBench open, String name, StoredFile file) {
    LightModel published;
    try {
      if (readings(open) > ModelUpdate.MOST_READINGS) {
        throw Refusal.of(
            String.format(
                Locale.ROOT,
                "this bench holds %d readings, a transferred model is updated by at most %d",
                readings(open),
                ModelUpdate.MOST_READINGS),
            "they are enough for a model of this tank itself: fit it on the page Model",
            "or copy the bench, and take the surveys of the other tank out of the copy's setup");
      }
      published = shelf.read(name, file);
      Transferred.check(open.bench(), published);
      open.bench().demands();
    } catch (Refusal e) {
      refuse(
          context,
          HttpStatus.UNPROCESSABLE_CONTENT,
          TransferForm.NOTHING.withFaults(TransferForm.words(e.problem())));
      return;
    } catch (InvalidFile e) {
      refuse(
          context,
          HttpStatus.UNPROCESSABLE_CONTENT,
          TransferForm.NOTHING.withFaults(TransferForm.words(Problem.of(e))));
      return;
    }
    LengthUnit unit = desk.benches().frame(context, open, Step.MODEL).length();
    String who = Benches.who(context);
    desk.jobs()
        .begin(
            open.id(),
            TRANSFER,
            Benches.transferInputs(open, file) + ' ' + unit,
            report -> apply(open, name, file, published, unit, who, report));
    context.redirect(address(open));
  }

  private void apply(
      OpenBench open,
      String name,
      StoredFile file,
      LightModel published,
      LengthUnit unit,
      String who,
      Jobs.Report report) {
    report.say(0, "hanging its lamps over this tank …");
    Transferred transferred = Transferred.of(open.bench(), published, desk.benches().solver());
    Recommendation recommendation =
        transferred.recommend(
            desk.benches().solver(),
            progress -> report.say(SEARCHED * progress.share(), Advice.words(progress, unit)),
            report::cancelled);
    desk.benches()
        .keepTransfer(
            open,
            file,
            transferred.model(),
            here ->
                KeptTransfer.document(
                    transferred.answer(
                        name, desk.benches().solver(), recommendation, Optional.empty()),
                    file,
                    here),
            who);
    report.say(1, "kept");
  }

  // The readings that would confirm it.

  private void readings(Context context) {
    OpenBench bench = desk.benches().of(context);
    KeptTransfer kept = kept(bench, TransferForm.text(context, "transfer"));
    TransferForm form = TransferForm.readings(context, bench.setupOrRefuse(), true);
    if (form.isWrong()) {
      refuse(context, HttpStatus.UNPROCESSABLE_CONTENT, form);
      return;
    }
    Optional<UUID> survey = prepared(context, bench, kept, form);
    if (survey.isEmpty()) {
      return;
    }
    String who = Benches.who(context);
    if (!confirming.store(survey.get(), desk.benches().open(bench.id()), form.values(), who)) {
      refuse(context, HttpStatus.CONFLICT, form.withFaults(List.of(MEANWHILE)));
      return;
    }
    begin(context, desk.benches().open(bench.id()), kept.published(), kept.publishedFile());
  }

  /** States the survey and goes to where it is measured, on a phone maybe. */
  private void prepare(Context context) {
    OpenBench bench = desk.benches().of(context);
    KeptTransfer kept = kept(bench, TransferForm.text(context, "transfer"));
    TransferForm form = TransferForm.readings(context, bench.setupOrRefuse(), false);
    if (form.isWrong()) {
      refuse(context, HttpStatus.UNPROCESSABLE_CONTENT, form);
      return;
    }
    prepared(context, bench, kept, form)
        .ifPresent(survey -> context.redirect("/bench/" + bench.id() + "/measure/" + survey));
  }

  /** The survey of the readings; empty if it cannot be stated, which is told. */
  private Optional<UUID> prepared(
      Context context, OpenBench bench, KeptTransfer kept, TransferForm form) {
    if (!current(bench, kept)) {
      refuse(context, HttpStatus.CONFLICT, form.withFaults(List.of(MEANWHILE)));
      return Optional.empty();
    }
    try {
      return Optional.of(confirming.prepare(bench, kept, form.meter(), Benches.who(context)));
    } catch (StaleSetup e) {
      refuse(context, HttpStatus.CONFLICT, form.withFaults(List.of(MEANWHILE)));
    } catch (Refusal e) {
      refuse(
          context,
          HttpStatus.UNPROCESSABLE_CONTENT,
          form.withFaults(TransferForm.words(e.problem())));
    } catch (InvalidFile e) {
      refuse(
          context,
          HttpStatus.UNPROCESSABLE_CONTENT,
          form.withFaults(TransferForm.words(Problem.of(e))));
    } catch (WorkspaceProblem e) {
      refuse(
          context,
          Problems.status(e.kind()),
          form.withFaults(TransferForm.words(Problems.problem(e))));
    }
    return Optional.empty();
  }

  // What becomes of it.

  /** Makes its model the bench's light model, and its advice the bench's recommendation. */
  private void adopt(Context context) {
    OpenBench bench = desk.benches().of(context);
    KeptTransfer kept = kept(bench, TransferForm.text(context, "transfer"));
    if (!current(bench, kept)) {
      refuse(
          context,
          HttpStatus.CONFLICT,
          TransferForm.NOTHING.withFaults(
              List.of("the bench was changed since this was found; apply the model again first")));
      return;
    }
    String who = Benches.who(context);
    desk.benches().keepModel(bench, model(kept), who);
    desk.benches().keepAdvice(bench, AdviceDocument.bytes(kept.advice().document()), who);
    context.redirect("/bench/" + bench.id() + "/model");
  }

  private LightModel model(KeptTransfer kept) {
    return desk.benches().model(desk.workspace().results().get(kept.model()));
  }

  private KeptTransfer named(Context context) {
    return kept(desk.benches().of(context), context.pathParam("transfer"));
  }

  private void json(Context context) {
    context.contentType("application/json").result(Json.text(named(context).answer()));
  }

  private void text(Context context) {
    OpenBench bench = desk.benches().of(context);
    LengthUnit unit = desk.benches().frame(context, bench, Step.MODEL).length();
    context.contentType("text/plain; charset=utf-8").result(named(context).text(unit));
  }

  private void model(Context context) {
    context
        .contentType("application/json")
        .header("Content-Disposition", "attachment; filename=\"model.json\"")
        .result(
            desk.workspace()
                .bytes(desk.workspace().results().get(named(context).model()).document()));
  }

  private void picture(Context context) {
    OpenBench bench = desk.benches().of(context);
    KeptTransfer kept = named(context);
    LengthUnit unit = desk.benches().frame(context, bench, Step.MODEL).length();
    String name = context.pathParam("picture").replace(".svg", "");
    if (!ChoiceLight.NAMES.contains(name)) {
      throw new NotFoundResponse("there is no such picture");
    }
    context
        .contentType("image/svg+xml")
        .header("Cache-Control", "private, max-age=600")
        .result(
            new ChoiceLight(bench, model(kept), desk.benches().solver(), unit)
                .svg(kept.best(), name, Optional.empty()));
  }

  /** Meters of a bench by name, for the page. */
  public static List<String> meters(OpenBench bench) {
    return bench.setup().map(Setup::meters).map(all -> List.copyOf(all.keySet())).orElse(List.of());
  }
}
