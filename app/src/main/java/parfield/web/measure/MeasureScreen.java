package parfield.web.measure;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.ContentTooLargeResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import parfield.answer.Json;
import parfield.answer.Numbers;
import parfield.answer.Refusal;
import parfield.formats.InvalidFile;
import parfield.formats.Setup;
import parfield.rig.Hanging;
import parfield.survey.Meter;
import parfield.units.LengthUnit;
import parfield.web.bench.Benches;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.page.Display;
import parfield.web.page.Screen;
import parfield.web.page.Step;
import parfield.workspace.Entry;
import parfield.workspace.ReadingRevision;
import parfield.workspace.ReadingWrite;
import parfield.workspace.Seen;
import parfield.workspace.StaleSetup;
import parfield.workspace.SurveySummary;
import parfield.workspace.WriteResult;

/** The step that measures: a bench's surveys, and one survey while it is taken. */
public final class MeasureScreen implements Screen, AutoCloseable {
  private static final String LIST = "/bench/{id}/measure";
  private static final String SURVEY = LIST + "/{survey}";
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int MOST_BYTES = 1 << 20;
  private static final int MOST_WRITES = 500;

  private final Desk desk;
  private final OpenSurveys surveys;
  private final LiveSurveys live;
  private final Marks marks;

  /** The screen over a desk. */
  public MeasureScreen(Desk desk) {
    this.desk = desk;
    this.surveys = new OpenSurveys(desk);
    this.live =
        new LiveSurveys(
            desk.workspace(),
            id -> SurveyFigures.json(surveys.open(id), desk.workspace().readings().of(id)));
    this.marks = new Marks(desk, surveys, (survey, found) -> live.say(survey, "marks", found));
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get(LIST, context -> list(context, new NewSurvey("", "", "", "", "", ""), Map.of()));
    routes.post(LIST, this::begin);
    routes.get(SURVEY, this::page);
    routes.get(SURVEY + "/data", this::data);
    routes.post(SURVEY + "/readings", this::write);
    routes.post(SURVEY + "/undo", context -> walk(context, true));
    routes.post(SURVEY + "/redo", context -> walk(context, false));
    routes.get(SURVEY + "/history/{reading}", this::history);
    routes.post(SURVEY + "/paste", this::paste);
    routes.get(SURVEY + "/map", this::map);
    routes.get(SURVEY + "/readings.csv", this::csv);
    routes.sse(
        SURVEY + "/events",
        client -> {
          OpenSurvey open = open(client.ctx());
          live.watch(client, open.id(), since(client.ctx()));
          marks.latest(open.id()).ifPresent(found -> client.sendEvent("marks", found.toString()));
          marks.ask(open.id());
        });
    routes.get("/measure-worker.js", MeasureScreen::worker);
  }

  /**
   * The worker that keeps the page of a survey at hand while the server is away. It stands at the
   * root because a worker answers for the addresses below its own.
   */
  private static void worker(Context context) {
    context
        .contentType("text/javascript; charset=utf-8")
        .header("Cache-Control", "no-cache")
        .result(MeasureScreen.class.getResourceAsStream("/parfield/web/scripts/measure-worker.js"));
  }

  private static long since(Context context) {
    String last = context.header("Last-Event-ID");
    String asked = last == null || last.isBlank() ? context.queryParam("since") : last;
    try {
      return asked == null ? 0 : Math.max(0, Long.parseLong(asked));
    } catch (NumberFormatException e) {
      return 0;
    }
  }

  private static UUID id(Context context, String name) {
    String text = context.pathParam(name);
    try {
      return UUID.fromString(text);
    } catch (IllegalArgumentException e) {
      throw new NotFoundResponse("there is no such page");
    }
  }

  private OpenSurvey open(Context context) {
    return surveys.open(id(context, "id"), id(context, "survey"));
  }

  private static String who(Context context) {
    return Benches.who(context);
  }

  // The list of surveys, and a new one.

  private void list(Context context, NewSurvey typed, Map<String, String> faults) {
    OpenBench bench = desk.benches().open(id(context, "id"));
    List<SurveyRow> rows = new ArrayList<>();
    bench
        .setup()
        .ifPresent(
            setup ->
                setup
                    .plans()
                    .forEach(
                        (name, plan) -> {
                          SurveySummary stored = desk.workspace().surveys().named(bench.id(), name);
                          rows.add(
                              new SurveyRow(
                                  stored.id(),
                                  name,
                                  plan.rig().name(),
                                  plan.meter().name(),
                                  plan.grid().map(grid -> grid.places().size()).orElse(0),
                                  stored.readings()));
                        }));
    desk.benches()
        .orphans(bench)
        .forEach(
            name -> {
              SurveySummary stored = bench.surveys().get(name);
              rows.add(new SurveyRow(stored.id(), name, "", "", 0, stored.readings()));
            });
    desk.pages()
        .show(
            context,
            "measure/surveys.jte",
            Map.of(
                "frame",
                desk.benches().frame(context, bench, Step.MEASURE).withStyle("measure.css"),
                "bench",
                bench,
                "rows",
                rows,
                "typed",
                typed,
                "faults",
                faults));
  }

  private void begin(Context context) {
    OpenBench bench = desk.benches().open(id(context, "id"));
    Setup setup = bench.setupOrRefuse();
    NewSurvey typed =
        new NewSurvey(
            field(context, "name"),
            field(context, "rig"),
            field(context, "meter"),
            field(context, "depths"),
            field(context, "columns"),
            field(context, "rows"));
    Map<String, String> faults = new LinkedHashMap<>(typed.faults(setup));
    if (faults.isEmpty()) {
      String text = typed.addedTo(bench.text());
      try {
        desk.benches().preview(bench, text, bench.files());
        desk.workspace().benches().saveSetup(bench.id(), bench.revision(), text, who(context));
        UUID survey = desk.workspace().surveys().named(bench.id(), typed.name().strip()).id();
        context.redirect("/bench/" + bench.id() + "/measure/" + survey, HttpStatus.SEE_OTHER);
        return;
      } catch (InvalidFile e) {
        e.faults().forEach(fault -> faults.putIfAbsent("grid", fault.message()));
      } catch (StaleSetup e) {
        faults.put("grid", e.title() + ". Send it again: it will be added to the new setup.");
      }
    }
    context.status(HttpStatus.UNPROCESSABLE_CONTENT);
    list(context, typed, faults);
  }

  private static String field(Context context, String name) {
    String value = context.formParam(name);
    return value == null ? "" : value;
  }

  // One survey.

  private void page(Context context) {
    OpenSurvey open = open(context);
    OpenBench bench = desk.benches().open(open.summary().bench());
    desk.pages()
        .show(
            context,
            "measure/survey.jte",
            Map.of(
                "frame",
                desk.benches()
                    .frame(context, bench, Step.MEASURE)
                    .withStyle("measure.css")
                    .withScript("measure.js")
                    .withScript("measure-meter.js"),
                "survey",
                open));
  }

  private void data(Context context) {
    OpenSurvey open = open(context);
    List<ReadingRevision> readings = desk.workspace().readings().of(open.id());
    ObjectNode json = ReadingsJson.of(desk.workspace().readings().changesSince(open.id(), 0));
    LengthUnit unit = Display.of(context).unit(open.unit());
    json.put("bench", open.summary().bench().toString());
    json.put("survey", open.id().toString());
    json.put("name", open.summary().name());
    json.put("unit", unit.symbol());
    json.put("metres", unit.toMetres(1));
    json.put("most", TypedNumber.MOST);
    open.tank()
        .ifPresent(
            tank -> {
              ObjectNode told = json.putObject("tank");
              told.put("length", tank.length());
              told.put("width", tank.width());
              told.put("depth", tank.depth());
            });
    open.plan()
        .ifPresent(
            plan -> {
              json.put("rig", plan.rig().name());
              Meter meter = plan.meter();
              ObjectNode told = json.putObject("meter");
              told.put("name", meter.name());
              told.put("repeat", meter.repeatError());
              ArrayNode fixtures = json.putArray("fixtures");
              for (Hanging hanging : plan.rig().hangings()) {
                ObjectNode fixture = fixtures.addObject();
                fixture.put("x", hanging.x());
                fixture.put("y", hanging.y());
                fixture.put("yaw", hanging.yaw());
                fixture.put("length", hanging.fixture().length());
                fixture.put("width", hanging.fixture().width());
              }
            });
    ArrayNode points = json.putArray("points");
    for (GridPoint point : open.points(readings)) {
      ObjectNode told = points.addObject();
      told.put("reading", point.reading().toString());
      told.put("x", point.place().x());
      told.put("y", point.place().y());
      told.put("depth", point.place().depth());
      told.put("order", point.order());
    }
    json.set("figures", SurveyFigures.json(open, readings));
    marks.latest(open.id()).ifPresent(found -> json.set("marks", found.get("marks")));
    answer(context, json);
  }

  private static void answer(Context context, JsonNode json) {
    context
        .header("Cache-Control", "no-store")
        .contentType("application/json; charset=utf-8")
        .result(json.toString());
  }

  private static JsonNode body(Context context) {
    if (context.contentLength() > MOST_BYTES) {
      throw new ContentTooLargeResponse(
          String.format(
              Locale.ROOT,
              "the request has %d bytes; at most %d are taken: send it in parts",
              context.contentLength(),
              MOST_BYTES));
    }
    try {
      byte[] bytes = context.bodyInputStream().readNBytes(MOST_BYTES + 1);
      if (bytes.length > MOST_BYTES) {
        throw new ContentTooLargeResponse(
            String.format(
                Locale.ROOT,
                "the request has more than the %d bytes that are taken: send it in parts",
                MOST_BYTES));
      }
      JsonNode json = JSON.readTree(new String(bytes, StandardCharsets.UTF_8));
      if (json != null && json.isObject()) {
        return json;
      }
    } catch (JsonProcessingException e) {
      throw Refusal.of("the request is no JSON: " + e.getOriginalMessage(), "reload the page");
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    throw Refusal.of("the request is no JSON object", "reload the page");
  }

  private void write(Context context) {
    OpenSurvey open = open(context);
    JsonNode body = body(context);
    JsonNode sent = body.path("writes");
    if (!sent.isArray() || sent.size() > MOST_WRITES) {
      throw Refusal.of(
          String.format(
              Locale.ROOT, "a request must hold 1 to %d writes; got %d", MOST_WRITES, sent.size()),
          "reload the page");
    }
    Instant now = Instant.now();
    List<ReadingWrite> writes = new ArrayList<>();
    ArrayNode results = Json.object().arrayNode();
    Map<Integer, String> refused = new LinkedHashMap<>();
    for (int i = 0; i < sent.size(); i++) {
      try {
        writes.add(ReadingsJson.write(sent.get(i), open.tank(), now));
      } catch (ReadingsJson.Unusable | IllegalArgumentException e) {
        refused.put(i, e.getMessage());
      }
    }
    List<WriteResult> written =
        body.path("together").asBoolean(false)
            ? desk.workspace().readings().writeTogether(open.id(), writes, who(context))
            : desk.workspace().readings().write(open.id(), writes, who(context));
    boolean conflict = false;
    int next = 0;
    for (int i = 0; i < sent.size(); i++) {
      ObjectNode result = results.addObject();
      result.put("id", sent.get(i).path("id").asText(""));
      if (refused.containsKey(i)) {
        result.put("state", "refused");
        result.put("problem", refused.get(i));
        continue;
      }
      WriteResult of = written.get(next++);
      if (of instanceof WriteResult.Written done) {
        result.put("state", "saved");
        result.set("reading", ReadingsJson.of(done.revision()));
      } else if (of instanceof WriteResult.Conflict other) {
        conflict = true;
        result.put("state", "conflict");
        other.current().ifPresent(current -> result.set("reading", ReadingsJson.of(current)));
      }
    }
    if (!writes.isEmpty()) {
      changed(open.id());
    }
    ObjectNode answer = Json.object();
    answer.set("results", results);
    if (conflict) {
      context.status(HttpStatus.CONFLICT);
    } else if (!refused.isEmpty()) {
      context.status(HttpStatus.UNPROCESSABLE_CONTENT);
    }
    answer(context, answer);
  }

  private void changed(UUID survey) {
    live.changed(survey);
    marks.ask(survey);
  }

  private void walk(Context context, boolean back) {
    OpenSurvey open = open(context);
    UUID request;
    Seen seen;
    try {
      JsonNode body = body(context);
      request = ReadingsJson.id(body, "id");
      seen = ReadingsJson.seen(body);
    } catch (ReadingsJson.Unusable e) {
      throw Refusal.of(e.getMessage());
    }
    List<ReadingRevision> readings =
        back
            ? desk.workspace().readings().undo(open.id(), request, seen, who(context))
            : desk.workspace().readings().redo(open.id(), request, seen, who(context));
    changed(open.id());
    ObjectNode json = Json.object();
    json.set("readings", ReadingsJson.of(readings));
    answer(context, json);
  }

  private void history(Context context) {
    OpenSurvey open = open(context);
    List<ReadingRevision> all =
        desk.workspace().readings().history(id(context, "reading")).stream()
            .filter(revision -> revision.survey().equals(open.id()))
            .toList();
    if (all.isEmpty()) {
      throw new NotFoundResponse("this survey has no such reading");
    }
    ObjectNode json = Json.object();
    json.set("revisions", ReadingsJson.of(all));
    answer(context, json);
  }

  private void paste(Context context) {
    OpenSurvey open = open(context);
    JsonNode body = body(context);
    List<UUID> way = new ArrayList<>();
    Optional<UUID> start = Optional.empty();
    try {
      for (JsonNode id : body.path("way")) {
        way.add(ReadingsJson.id(Json.object().set("id", id), "id"));
      }
      if (body.hasNonNull("start")) {
        start = Optional.of(ReadingsJson.id(body, "start"));
      }
    } catch (ReadingsJson.Unusable e) {
      throw Refusal.of(e.getMessage());
    }
    PastedBlock.Comma comma =
        switch (body.path("comma").asText("")) {
          case "decimal" -> PastedBlock.Comma.DECIMAL;
          case "separator" -> PastedBlock.Comma.SEPARATOR;
          default -> PastedBlock.Comma.AUTO;
        };
    String text = body.path("text").asText("");
    PastedBlock block =
        PastedBlock.of(
            text,
            comma,
            new PastedBlock.Onto(
                open.points(desk.workspace().readings().of(open.id())),
                body.path("depth").asDouble(),
                Display.of(context).unit(open.unit()),
                way,
                start,
                body.path("frontFirst").asBoolean(false)));
    ObjectNode json = Json.object();
    json.put("layout", block.layout());
    json.put("commas", PastedBlock.commasMayMeanTwoThings(text));
    ArrayNode cells = json.putArray("cells");
    for (PastedBlock.Cell cell : block.cells()) {
      ObjectNode told = cells.addObject();
      told.put("reading", cell.point().reading().toString());
      told.put("typed", cell.typed());
      told.put("value", cell.value());
      told.put("remark", cell.remark());
    }
    ArrayNode problems = json.putArray("problems");
    block.problems().forEach(problems::add);
    answer(context, json);
  }

  private void map(Context context) {
    OpenSurvey open = open(context);
    double depth;
    try {
      depth = Double.parseDouble(String.valueOf(context.queryParam("depth")));
    } catch (NumberFormatException e) {
      throw new NotFoundResponse("a map is of a depth in metres");
    }
    LengthUnit unit = Display.of(context).unit(open.unit());
    Optional<String> svg =
        open.counted(desk.workspace().readings().of(open.id()))
            .flatMap(counted -> ReadingMap.svg(counted.survey(), depth, open.bands(), unit));
    context.header("Cache-Control", "no-store");
    if (svg.isEmpty()) {
      context.status(HttpStatus.NO_CONTENT);
    } else {
      context.contentType("image/svg+xml; charset=utf-8").result(svg.get());
    }
  }

  private void csv(Context context) {
    OpenSurvey open = open(context);
    LengthUnit unit = open.unit();
    StringBuilder text = new StringBuilder();
    text.append(
        String.format(
            Locale.ROOT, "x_%1$s,y_%1$s,depth_%1$s,ppfd,kind,taken,kept\n", unit.symbol()));
    for (ReadingRevision reading : desk.workspace().readings().of(open.id())) {
      Entry entry = reading.entry();
      if (reading.withdrawn() || entry.kind() != Entry.Kind.GRID) {
        continue;
      }
      text.append(
          String.format(
              Locale.ROOT,
              "%s,%s,%s,%s,%s,%s,%s\n",
              Numbers.length(entry.place().x(), unit),
              Numbers.length(entry.place().y(), unit),
              Numbers.length(entry.place().depth(), unit),
              entry.value().getAsDouble(),
              entry.kind().name().toLowerCase(Locale.ROOT),
              reading.when(),
              entry.kept() ? "yes" : "no"));
    }
    String name =
        open.summary().name().replaceAll("[^A-Za-z0-9._-]+", "-").replaceAll("^[.-]+", "");
    context
        .contentType("text/csv; charset=utf-8")
        .header(
            "Content-Disposition",
            "attachment; filename=\"" + (name.isEmpty() ? "survey" : name) + ".csv\"")
        .header("Cache-Control", "no-store")
        .result(text.toString());
  }

  /** Tells the pages that watch a survey something that is no change of it. */
  public void say(UUID survey, String event, ObjectNode what) {
    live.say(survey, event, what);
  }

  /** Ends all that it does by itself, before the server stops. */
  @Override
  public void close() {
    marks.close();
    live.close();
  }
}
