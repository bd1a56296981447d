package parfield.web.care;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import parfield.answer.CalendarAnswer;
import parfield.answer.CarePictures;
import parfield.answer.DayAnswer;
import parfield.answer.DayPlane;
import parfield.units.LengthUnit;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.bench.StoredModel;
import parfield.web.page.Frame;
import parfield.web.page.Screen;
import parfield.web.page.Step;

/** The page Care, beside the steps of a bench. */
public final class CareScreen implements Screen {
  /** So many answers are kept, so that pictures and files beside a page cost nothing anew. */
  private static final int KEPT = 8;

  private final Desk desk;
  private final Map<String, CareAnswers> kept =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, CareAnswers> eldest) {
          return size() > KEPT;
        }
      };

  /** The screen over a desk. */
  public CareScreen(Desk desk) {
    this.desk = desk;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get("/bench/{id}/care", this::show);
    routes.get("/bench/{id}/care/day.svg", this::curve);
    routes.get("/bench/{id}/care/dose.svg", this::dose);
    routes.get("/bench/{id}/care/homes.svg", this::homes);
    routes.get("/bench/{id}/care/section.svg", this::section);
    routes.get("/bench/{id}/care/light.ics", this::calendar);
    routes.get("/bench/{id}/care/schedule.csv", this::schedule);
  }

  private void show(Context context) {
    OpenBench bench = desk.benches().of(context);
    Frame frame = desk.benches().frame(context, bench, Step.CARE).withStyle("care.css");
    Optional<StoredModel> model = desk.benches().model(bench);
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("frame", frame);
    values.put("bench", bench);
    values.put("model", model);
    Optional<AskedCare> asked = Optional.empty();
    Optional<CareAnswers> found = Optional.empty();
    Map<String, String> faults = Map.of();
    if (model.isPresent() && bench.setup().isPresent()) {
      AskedCare form = AskedCare.of(context, bench.bench(), frame.length());
      asked = Optional.of(form);
      faults = form.faults(bench.bench(), frame.length());
      if (!AskedCare.hindersTheDay(faults)) {
        found = Optional.of(answers(bench, model.get(), form, frame.length()));
      }
    }
    values.put("faults", faults);
    values.put("asked", asked);
    values.put("found", found);
    values.put("query", Optional.ofNullable(context.queryString()).orElse(""));
    desk.pages().show(context, "care/care.jte", values);
  }

  private CareAnswers answers(
      OpenBench bench, StoredModel model, AskedCare asked, LengthUnit unit) {
    String key =
        String.join(
            "|",
            bench.id().toString(),
            Long.toString(bench.revision()),
            model.result().id().toString(),
            unit.symbol(),
            new TreeMap<>(asked.typed()).toString());
    synchronized (kept) {
      CareAnswers known = kept.get(key);
      if (known == null) {
        known = CareAnswers.of(bench.bench(), model.model(), desk.benches().solver(), asked, unit);
        kept.put(key, known);
      }
      return known;
    }
  }

  /** The answers of a request that is no page: a refusal is told by the frame. */
  private CareAnswers answers(Context context) {
    OpenBench bench = desk.benches().of(context);
    LengthUnit unit = unit(context, bench);
    return answers(bench, model(bench), AskedCare.of(context, bench.bench(), unit), unit);
  }

  private StoredModel model(OpenBench bench) {
    return desk.benches()
        .model(bench)
        .orElseThrow(() -> new NotFoundResponse("this bench has no light model yet: fit one"));
  }

  private LengthUnit unit(Context context, OpenBench bench) {
    return desk.benches().frame(context, bench, Step.PUBLISH).length();
  }

  private void curve(Context context) {
    OpenBench bench = desk.benches().of(context);
    picture(context, CarePictures.curve(answers(context).day(), unit(context, bench)));
  }

  private void dose(Context context) {
    OpenBench bench = desk.benches().of(context);
    DayAnswer day = answers(context).day();
    picture(
        context,
        CarePictures.map(
            day.rig(),
            day.planes().get(0),
            CarePictures.scale(day.planes()),
            unit(context, bench)));
  }

  private void homes(Context context) {
    homes(context, answers(context).homes().planes().get(0));
  }

  private void section(Context context) {
    homes(context, answers(context).homes().section().orElseThrow());
  }

  private void homes(Context context, DayPlane plane) {
    OpenBench bench = desk.benches().of(context);
    LengthUnit unit = unit(context, bench);
    AskedCare asked = AskedCare.of(context, bench.bench(), unit);
    picture(
        context,
        CarePictures.homes(
            bench.bench().rig(asked.text("rig")), plane, asked.group(bench.bench()), unit));
  }

  private static void picture(Context context, String svg) {
    context.contentType("image/svg+xml").header("Cache-Control", "no-cache").result(svg);
  }

  private CalendarAnswer calendar(Context context, OpenBench bench) {
    LengthUnit unit = unit(context, bench);
    AskedCare asked = AskedCare.of(context, bench.bench(), unit);
    return CareAnswers.calendar(
        CareAnswers.steps(
            bench.bench(), model(bench).model(), desk.benches().solver(), asked, unit),
        asked.revision());
  }

  private void calendar(Context context) {
    CalendarAnswer answer = calendar(context, desk.benches().of(context));
    context
        .contentType("text/calendar; charset=utf-8")
        .header("Content-Disposition", "attachment; filename=\"light.ics\"")
        .result(answer.calendar(Instant.now().truncatedTo(ChronoUnit.SECONDS)));
  }

  private void schedule(Context context) {
    context
        .contentType("text/csv; charset=utf-8")
        .header("Content-Disposition", "attachment; filename=\"schedule.csv\"")
        .result(calendar(context, desk.benches().of(context)).csv());
  }
}
