package parfield.web.recommend;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import parfield.answer.Advice;
import parfield.answer.Bench;
import parfield.answer.Json;
import parfield.answer.Numbers;
import parfield.answer.Problem;
import parfield.answer.Refusal;
import parfield.fit.LightModel;
import parfield.formats.InvalidFile;
import parfield.formats.Setup;
import parfield.plan.Demands;
import parfield.plan.Planner;
import parfield.plan.Recommendation;
import parfield.plan.Search;
import parfield.rig.Rig;
import parfield.units.LengthUnit;
import parfield.web.bench.Benches;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.bench.SetupBlocks;
import parfield.web.bench.SetupLines;
import parfield.web.bench.StoredModel;
import parfield.web.page.Frame;
import parfield.web.page.Problems;
import parfield.web.page.Screen;
import parfield.web.page.Step;
import parfield.web.work.Job;
import parfield.web.work.Jobs;
import parfield.workspace.Result;
import parfield.workspace.SetupRevision;
import parfield.workspace.StaleSetup;
import parfield.workspace.WorkspaceProblem;

/** The step Recommend. */
public final class RecommendScreen implements Screen {
  /** Kind of the work that recommends. */
  static final String RECOMMEND = "recommend";

  private final Desk desk;
  private final Map<UUID, Remembered> lastAsked = new ConcurrentHashMap<>();

  /** The screen over a desk. */
  public RecommendScreen(Desk desk) {
    this.desk = desk;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get("/bench/{id}/recommend", context -> show(context, Typed.NOTHING));
    routes.post("/bench/{id}/recommend/demands", this::saveDemands);
    routes.post("/bench/{id}/recommend/run", this::run);
    routes.post("/bench/{id}/recommend/take", this::takeRig);
    routes.get("/bench/{id}/recommend/{advice}/answer.json", this::json);
    routes.get("/bench/{id}/recommend/{advice}/answer.txt", this::text);
    routes.get("/bench/{id}/recommend/{advice}/pictures/{picture}", this::picture);
  }

  /**
   * What was typed and not taken, to be shown again.
   *
   * @param demands the form of bands and demands
   * @param asked the form of the search
   * @param faults what is wrong with the demands, or why they were not stored
   * @param fields what is wrong with the search, by field
   * @param theirs what somebody else stored meanwhile
   */
  private record Typed(
      Optional<DemandForm> demands,
      Optional<Asked> asked,
      List<String> faults,
      Map<String, String> fields,
      List<String> theirs) {
    static final Typed NOTHING =
        new Typed(Optional.empty(), Optional.empty(), List.of(), Map.of(), List.of());

    static Typed demands(DemandForm typed, List<String> faults, List<String> theirs) {
      return new Typed(Optional.of(typed), Optional.empty(), faults, Map.of(), theirs);
    }

    static Typed asked(Asked typed, List<String> faults, Map<String, String> fields) {
      return new Typed(Optional.empty(), Optional.of(typed), faults, fields, List.of());
    }
  }

  /** What was last looked for on a bench, in the unit that it was typed in. */
  private record Remembered(Asked asked, LengthUnit unit) {}

  private void show(Context context, Typed typed) {
    OpenBench bench = desk.benches().of(context);
    Frame frame =
        desk.benches()
            .frame(context, bench, Step.RECOMMEND)
            .withScript("work.js")
            .withScript("recommend.js")
            .withStyle("recommend.css");
    Optional<StoredModel> model = desk.benches().model(bench);
    Optional<KeptAdvice> advice = advice(context, bench);
    Map<String, Object> values = new HashMap<>();
    values.put("frame", frame);
    values.put("bench", bench);
    values.put("model", model);
    values.put("faults", typed.faults());
    values.put("fields", typed.fields());
    values.put("theirs", typed.theirs());
    values.put("demands", typed.demands().or(() -> bench.setup().map(DemandForm::of)));
    values.put(
        "asked",
        typed
            .asked()
            .or(() -> remembered(bench, frame.length()))
            .or(
                () ->
                    bench
                        .setup()
                        .filter(setup -> !setup.rigs().isEmpty())
                        .map(setup -> Asked.byItself(bench.bench(), frame.length()))));
    values.put("job", desk.jobs().latest(bench.id(), RECOMMEND).filter(job -> !job.ended()));
    values.put(
        "failure",
        desk.jobs()
            .latest(bench.id(), RECOMMEND)
            .filter(job -> job.state() == Job.State.FAILED)
            .flatMap(Job::problem));
    values.put("advice", advice);
    values.put("choice", advice.map(kept -> kept.choice(context.queryParam("option"))));
    values.put("chart", advice.map(kept -> TradeOffChart.of(kept, frame.length())));
    values.put(
        "earlier", desk.workspace().results().list(bench.id(), Result.Kind.RECOMMENDATION, 20));
    values.put(
        "current", advice.map(kept -> desk.benches().current(bench, kept.result())).orElse(false));
    desk.pages().show(context, "recommend/recommend.jte", values);
  }

  private Optional<Asked> remembered(OpenBench bench, LengthUnit unit) {
    return Optional.ofNullable(lastAsked.get(bench.id()))
        .filter(last -> last.unit() == unit)
        .map(Remembered::asked);
  }

  /** The recommendation that was asked for, else the newest. */
  private Optional<KeptAdvice> advice(Context context, OpenBench bench) {
    String asked = context.queryParam("advice");
    if (asked != null) {
      return Optional.of(kept(bench, asked));
    }
    return desk.workspace().results().list(bench.id(), Result.Kind.RECOMMENDATION, 1).stream()
        .findFirst()
        .map(result -> KeptAdvice.read(result, desk.workspace().bytes(result.document())));
  }

  private KeptAdvice kept(OpenBench bench, String id) {
    try {
      Result result = desk.workspace().results().get(UUID.fromString(id));
      if (result.bench().equals(bench.id()) && result.kind() == Result.Kind.RECOMMENDATION) {
        return KeptAdvice.read(result, desk.workspace().bytes(result.document()));
      }
    } catch (IllegalArgumentException e) {
      // No id at all: not found, as below.
    }
    throw new NotFoundResponse("there is no such recommendation");
  }

  /**
   * What was typed is stored; if it cannot be, or if somebody changed bands or demands meanwhile,
   * it stays on the page with the reason.
   */
  private void saveDemands(Context context) {
    OpenBench bench = desk.benches().of(context);
    DemandForm typed = DemandForm.typed(context);
    long basedOn = basedOn(context, bench);
    try {
      if (basedOn != bench.revision() && !desk.benches().sameAims(bench, basedOn)) {
        conflict(context, typed, bench.document());
        return;
      }
      String text = typed.into(bench.text(), bench.setup().map(DemandForm::of));
      desk.benches().preview(bench, text, bench.files());
      if (!text.equals(bench.text())) {
        desk.workspace()
            .benches()
            .saveSetup(bench.id(), bench.revision(), text, Benches.who(context));
      }
    } catch (Refusal e) {
      context.status(HttpStatus.UNPROCESSABLE_CONTENT);
      show(context, Typed.demands(typed, words(e.problem()), List.of()));
      return;
    } catch (InvalidFile e) {
      context.status(HttpStatus.UNPROCESSABLE_CONTENT);
      show(context, Typed.demands(typed, words(Problem.of(e)), List.of()));
      return;
    } catch (StaleSetup e) {
      conflict(context, typed, e.current());
      return;
    } catch (WorkspaceProblem e) {
      context.status(Problems.status(e.kind()));
      show(context, Typed.demands(typed, words(Problems.problem(e)), List.of()));
      return;
    }
    context.redirect("/bench/" + bench.id() + "/recommend");
  }

  private void conflict(Context context, DemandForm typed, SetupRevision current) {
    OpenBench now = desk.benches().of(context);
    LengthUnit unit = desk.benches().frame(context, now, Step.RECOMMEND).length();
    context.status(HttpStatus.CONFLICT);
    show(
        context,
        Typed.demands(
            typed,
            List.of(
                current.who()
                    + " changed bands or demands meanwhile (revision "
                    + current.revision()
                    + "). What you typed is below and not stored yet; what is stored stands beside"
                    + " it. Save again to put yours in its place."),
            now.setup().map(setup -> aims(setup, unit)).orElse(List.of())));
  }

  private static List<String> aims(Setup setup, LengthUnit unit) {
    List<String> aims = new ArrayList<>();
    setup
        .bands()
        .values()
        .forEach(
            band ->
                aims.add(
                    String.format(
                        Locale.ROOT,
                        "%s: %s to %s %s",
                        band.name(),
                        Numbers.plain(band.from(), 2),
                        Numbers.plain(band.to(), 2),
                        Numbers.PPFD)));
    setup.demands().forEach(demand -> aims.add(demand.inWords(unit)));
    return aims;
  }

  private static long basedOn(Context context, OpenBench bench) {
    try {
      long revision = Long.parseLong(String.valueOf(context.formParam("revision")));
      return revision >= 1 && revision <= bench.revision() ? revision : bench.revision();
    } catch (NumberFormatException e) {
      return bench.revision();
    }
  }

  private static List<String> words(Problem problem) {
    return problem.hints().isEmpty()
        ? List.of(problem.title())
        : Stream.concat(
                Stream.of(problem.title()), problem.hints().stream().map(Problem.Hint::message))
            .toList();
  }

  private void run(Context context) {
    OpenBench open = desk.benches().of(context);
    Bench bench = open.bench();
    LengthUnit unit = desk.benches().frame(context, open, Step.RECOMMEND).length();
    Asked asked = Asked.typed(context);
    Map<String, String> fields = asked.faults(bench, unit);
    if (!fields.isEmpty()) {
      refuse(context, asked, List.of(), fields);
      return;
    }
    StoredModel stored;
    Demands demands;
    Search search;
    try {
      stored =
          desk.benches()
              .model(open)
              .orElseThrow(
                  () -> Refusal.of("there is no light model yet", "fit one on the page Model"));
      demands = bench.demands();
      search = asked.search(bench, unit);
    } catch (Refusal e) {
      refuse(context, asked, words(e.problem()), fields);
      return;
    } catch (IllegalArgumentException e) {
      refuse(context, asked, List.of(e.getMessage()), fields);
      return;
    }
    lastAsked.put(open.id(), new Remembered(asked, unit));
    LightModel model = stored.model();
    String who = Benches.who(context);
    desk.jobs()
        .begin(
            open.id(),
            RECOMMEND,
            open.advised() + " " + unit + " " + asked,
            report -> {
              Recommendation recommendation =
                  new Planner(desk.benches().solver())
                      .recommend(
                          model,
                          demands,
                          search,
                          progress -> report.say(progress.share(), Advice.words(progress, unit)),
                          report::cancelled);
              keep(open, bench, stored, recommendation, who, report);
            });
    context.redirect("/bench/" + open.id() + "/recommend");
  }

  private void refuse(
      Context context, Asked asked, List<String> faults, Map<String, String> fields) {
    context.status(HttpStatus.UNPROCESSABLE_CONTENT);
    show(context, Typed.asked(asked, faults, fields));
  }

  private void keep(
      OpenBench open,
      Bench bench,
      StoredModel model,
      Recommendation recommendation,
      String who,
      Jobs.Report report) {
    desk.benches()
        .keepAdvice(open, model, Advice.answer(bench, model.model(), recommendation), who);
    report.say(1, "kept");
  }

  private void takeRig(Context context) {
    OpenBench bench = desk.benches().of(context);
    Setup setup = bench.setupOrRefuse();
    KeptAdvice advice = kept(bench, String.valueOf(context.formParam("advice")));
    Choice choice = advice.choice(context.formParam("option"));
    String name = free("advised", setup);
    Rig rig = choice.over(setup, name);
    String text =
        SetupBlocks.append(
            bench.text(),
            "rigs",
            name,
            SetupLines.rig(name, rig, setup.length()),
            SetupLines.rigInLine(name, rig, setup.length()));
    desk.benches().preview(bench, text, bench.files());
    desk.workspace().benches().saveSetup(bench.id(), bench.revision(), text, Benches.who(context));
    context.redirect("/bench/" + bench.id() + "/explore?rig=" + name);
  }

  private static String free(String stem, Setup setup) {
    int number = 1;
    while (setup.rigs().containsKey(stem + "-" + number)) {
      number++;
    }
    return stem + "-" + number;
  }

  private void json(Context context) {
    KeptAdvice advice = kept(desk.benches().of(context), context.pathParam("advice"));
    context.contentType("application/json").result(Json.text(advice.answer()));
  }

  private void text(Context context) {
    OpenBench bench = desk.benches().of(context);
    KeptAdvice advice = kept(bench, context.pathParam("advice"));
    LengthUnit unit = desk.benches().frame(context, bench, Step.RECOMMEND).length();
    context.contentType("text/plain; charset=utf-8").result(advice.text(unit));
  }

  private void picture(Context context) {
    OpenBench bench = desk.benches().of(context);
    KeptAdvice advice = kept(bench, context.pathParam("advice"));
    LengthUnit unit = desk.benches().frame(context, bench, Step.RECOMMEND).length();
    String name = context.pathParam("picture").replace(".svg", "");
    Optional<String> svg =
        ChoiceLight.NAMES.contains(name)
            ? Optional.of(
                field(bench, advice.choice(context.queryParam("option")), name, unit, context))
            : advice.picture(name, unit);
    context
        .contentType("image/svg+xml")
        .header("Cache-Control", "private, max-age=600")
        .result(svg.orElseThrow(() -> new NotFoundResponse("there is no such picture")));
  }

  private String field(
      OpenBench bench, Choice choice, String name, LengthUnit unit, Context context) {
    LightModel model =
        desk.benches()
            .model(bench)
            .orElseThrow(() -> Refusal.of("there is no light model", "fit one"))
            .model();
    return new ChoiceLight(bench, model, desk.benches().solver(), unit)
        .svg(choice, name, Optional.ofNullable(context.queryParam("depth")));
  }
}
