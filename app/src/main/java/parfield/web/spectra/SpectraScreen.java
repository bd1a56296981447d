package parfield.web.spectra;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UploadedFile;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parfield.answer.Answer;
import parfield.answer.Json;
import parfield.answer.Problem;
import parfield.answer.Refusal;
import parfield.demo.DemoBench;
import parfield.formats.SpectralUnit;
import parfield.web.bench.Benches;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.page.Display;
import parfield.web.page.Frame;
import parfield.web.page.Screen;
import parfield.web.page.Step;

/** Spectra, beside the steps of a bench or without one. */
public final class SpectraScreen implements Screen {
  /** Says that a script asks for what is seen alone. */
  private static final String PART = "Parfield-Part";

  private final Desk desk;
  private final SpectrumShelf shelf;
  private final Lights lights;
  private final LitRigs rigs;
  private final BlendView blend;
  private final MixView mix;

  /** The screen over a desk. */
  public SpectraScreen(Desk desk) {
    this.desk = desk;
    this.shelf = new SpectrumShelf(desk.workspace());
    this.lights = new Lights(shelf);
    this.rigs = new LitRigs(desk.benches());
    this.blend = new BlendView(rigs);
    this.mix = new MixView(rigs);
  }

  @Override
  public void register(RoutesConfig routes) {
    for (String at : List.of("/spectra", "/bench/{id}/spectra")) {
      routes.get(at, this::show);
      routes.get(at + "/answer.json", this::json);
      routes.post(at + "/files", this::take);
      routes.post(at + "/files/put-away", this::putAway);
      routes.post(at + "/invented", this::invented);
    }
  }

  private Optional<OpenBench> bench(Context context) {
    return context.pathParamMap().containsKey("id")
        ? Optional.of(desk.benches().of(context))
        : Optional.empty();
  }

  private Frame frame(Context context, Optional<OpenBench> bench) {
    return bench
        .map(open -> desk.benches().frame(context, open, Step.SPECTRA))
        .orElseGet(() -> Frame.plain("Spectra", Display.of(context)))
        .withScript("spectra/spectra.js")
        .withStyle("spectra.css");
  }

  private void show(Context context) {
    show(context, Asked.of(context), List.of());
  }

  private void show(Context context, Asked typed, List<Problem> refused) {
    Optional<OpenBench> bench = bench(context);
    Frame frame = frame(context, bench);
    Asked asked = typed.shownIn(frame.length());
    boolean part = context.header(PART) != null;
    List<Lights.Group> groups = part ? List.of() : lights.groups(bench);
    List<String> missing = new ArrayList<>();
    Question question =
        new Question(
            bench,
            lights.of(bench, keys(asked, bench, groups), missing),
            asked,
            frame.length(),
            Question.bands(asked));
    View view = View.of(asked.text("view"));
    Optional<MixView.Mixing> mixing = Optional.empty();
    Seen seen;
    try {
      if (view == View.MIX) {
        mixing = Optional.of(mix.mixing(question));
        if (asked.has("find")) {
          mixing = Optional.of(mix.nearest(question, mixing.get()));
        }
      }
      seen = seen(question, view, mixing);
    } catch (Refusal e) {
      seen = Seen.refused(e.problem());
    } catch (IllegalArgumentException e) {
      seen = Seen.refused(Problem.of(e.getMessage()));
    }
    Map<String, Object> values = new HashMap<>();
    values.put("seen", seen);
    values.put("asked", asked);
    values.put("at", bench.map(open -> "/bench/" + open.id() + "/spectra").orElse("/spectra"));
    values.put("query", asked.query());
    // A view that lacks something is still a page; what was typed wrong is not.
    context.status(asked.faults().isEmpty() ? HttpStatus.OK : HttpStatus.UNPROCESSABLE_CONTENT);
    if (part) {
      desk.pages().show(context, "spectra/seen.jte", values);
      return;
    }
    if (!refused.isEmpty()) {
      context.status(HttpStatus.UNPROCESSABLE_CONTENT);
    }
    values.put("frame", frame);
    values.put("view", view);
    values.put("groups", SpectrumGroups.of(groups));
    values.put("missing", missing);
    values.put("refused", refused);
    values.put("controls", new Controls(question, mixing, bench.map(rigs::predicts).orElse(false)));
    values.put("zone", ZoneId.systemDefault());
    desk.pages().show(context, "spectra/spectra.jte", values);
  }

  /** The spectra that were chosen; before anything was, the channels of the first fixture. */
  private static List<String> keys(
      Asked asked, Optional<OpenBench> bench, List<Lights.Group> groups) {
    if (asked.has("s") || asked.has("view") || bench.isEmpty()) {
      return asked.all("s");
    }
    return groups.stream()
        .filter(group -> group.title().startsWith("Channels of fixture"))
        .limit(1)
        .flatMap(group -> group.offered().stream())
        .map(Lights.Offered::key)
        .toList();
  }

  private Seen seen(Question question, View view, Optional<MixView.Mixing> mixing) {
    boolean ofBench =
        view == View.MIX || (view == View.BLEND && question.asked().text("places").isPresent());
    if (question.chosen().isEmpty() && !ofBench) {
      throw Refusal.of("no spectrum is chosen", "tick one or more in the list");
    }
    if (!question.asked().fault("bands").isEmpty()) {
      LightViews.refuseFaults(question.asked());
    }
    return switch (view) {
      case OVERLAY -> LightViews.overlay(question);
      case BANDS -> LightViews.bands(question);
      case WATER -> LightViews.water(question);
      case BLEND -> blend.seen(question);
      case MIX -> mix.seen(question, mixing.orElseThrow());
      case PARTS -> LightViews.parts(question);
      case EYES -> LightViews.eyes(question);
    };
  }

  /** The answer that a view shows, as the command prints it. */
  private void json(Context context) {
    Optional<OpenBench> bench = bench(context);
    Asked asked = Asked.of(context).shownIn(frame(context, bench).length());
    Question question =
        new Question(
            bench,
            lights.of(bench, asked.all("s"), new ArrayList<>()),
            asked,
            frame(context, bench).length(),
            Question.bands(asked));
    View view = View.of(asked.text("view"));
    try {
      Optional<MixView.Mixing> mixing = Optional.empty();
      if (view == View.MIX) {
        MixView.Mixing dialled = mix.mixing(question);
        mixing = Optional.of(asked.has("find") ? mix.nearest(question, dialled) : dialled);
      }
      Answer answer = seen(question, view, mixing).answer().orElseThrow();
      context.contentType("application/json; charset=utf-8").result(Json.text(answer.json()));
    } catch (IllegalArgumentException e) {
      throw Refusal.of(String.valueOf(e.getMessage()));
    }
  }

  private void take(Context context) {
    List<UploadedFile> uploads =
        context.uploadedFiles("files").stream().filter(upload -> upload.size() > 0).toList();
    String unit = Optional.ofNullable(context.formParam("unit")).orElse("").strip();
    Map<String, List<String>> chosen = new LinkedHashMap<>();
    chosen.put("s", new ArrayList<>(context.formParams("s")));
    chosen.put("view", context.formParams("view"));
    if (uploads.isEmpty() || uploads.size() > SpectrumShelf.MOST_FILES) {
      refuse(
          context,
          HttpStatus.UNPROCESSABLE_CONTENT,
          chosen,
          List.of(
              Problem.of(
                  uploads.isEmpty()
                      ? "no file was chosen, or an empty one"
                      : String.format(
                          Locale.ROOT,
                          "%d files were chosen; 1 to %d can be taken at once",
                          uploads.size(),
                          SpectrumShelf.MOST_FILES),
                  "choose files of spectra: CSV, XLSX, or the XML of IES TM-27")));
      return;
    }
    if (!unit.isEmpty() && SpectralUnit.of(unit).isEmpty()) {
      throw Refusal.of(
          "a unit of spectra is none of those that are known", "choose one of the list");
    }
    SpectrumShelf.Taken taken = shelf.take(uploads, unit, Benches.who(context));
    for (String name : taken.stored()) {
      lights.ofShelf(name).forEach(one -> chosen.get("s").add(one.key()));
    }
    if (taken.problems().isEmpty()) {
      context.redirect(address(context) + "?" + new Asked(chosen).query());
      return;
    }
    refuse(
        context,
        taken.tooLarge() ? HttpStatus.CONTENT_TOO_LARGE : HttpStatus.UNPROCESSABLE_CONTENT,
        chosen,
        taken.problems());
  }

  private void refuse(
      Context context, HttpStatus status, Map<String, List<String>> chosen, List<Problem> why) {
    show(context, new Asked(chosen), why);
    context.status(status);
  }

  private String address(Context context) {
    return bench(context).map(open -> "/bench/" + open.id() + "/spectra").orElse("/spectra");
  }

  private void putAway(Context context) {
    shelf.putAway(String.valueOf(context.formParam("name")));
    context.redirect(address(context));
  }

  /** The spectra of the sample bench, marked as invented. */
  private void invented(Context context) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    DemoBench.files(1)
        .forEach(
            (name, text) -> {
              if (name.startsWith("spectra/")) {
                files.put(
                    "invented-" + name.substring(name.indexOf('/') + 1),
                    text.getBytes(StandardCharsets.UTF_8));
              }
            });
    shelf.putInvented(files, Benches.who(context));
    Map<String, List<String>> chosen = new LinkedHashMap<>();
    chosen.put("s", new ArrayList<>());
    chosen.put("view", List.of());
    for (String name : files.keySet()) {
      if (!name.contains("places")) {
        lights.ofShelf(name).forEach(one -> chosen.get("s").add(one.key()));
      }
    }
    context.redirect(address(context) + "?" + new Asked(chosen).query());
  }
}
