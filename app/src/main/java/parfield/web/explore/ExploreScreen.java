package parfield.web.explore;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import parfield.answer.FieldAnswer;
import parfield.answer.FieldPrediction;
import parfield.answer.Json;
import parfield.answer.Refusal;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.formats.Setup;
import parfield.photon.Effort;
import parfield.photon.PhotonTracer;
import parfield.photon.TracedField;
import parfield.photon.Wanted;
import parfield.rig.Rig;
import parfield.units.Estimate;
import parfield.units.LengthUnit;
import parfield.web.bench.Benches;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.web.bench.SetupBlocks;
import parfield.web.bench.SetupLines;
import parfield.web.bench.StoredModel;
import parfield.web.page.Frame;
import parfield.web.page.Screen;
import parfield.web.page.Step;
import parfield.web.work.Job;
import parfield.web.work.Jobs;

/** The step Explore. */
public final class ExploreScreen implements Screen {
  /** Cells of the water once the hand rests, and while it moves. */
  private static final int FINE = 24_000;

  private static final int COARSE = 5_000;

  /** Greatest standard error of the reference solver's check. */
  private static final double REFERENCE_ERROR = 0.02;

  private static final ObjectMapper MAPPER = new ObjectMapper();

  private final Desk desk;
  private final VolumeFields fields = new VolumeFields();

  /** The screen over a desk. */
  public ExploreScreen(Desk desk) {
    this.desk = desk;
  }

  @Override
  public void register(RoutesConfig routes) {
    routes.get("/bench/{id}/explore", this::show);
    routes.get("/bench/{id}/explore/data/scene.json", this::scene);
    routes.post("/bench/{id}/explore/data/field", this::field);
    routes.post("/bench/{id}/explore/data/figures", this::figures);
    routes.post("/bench/{id}/explore/data/field.csv", this::csv);
    routes.post("/bench/{id}/explore/reference", this::reference);
    routes.post("/bench/{id}/explore/take", this::take);
  }

  private void show(Context context) {
    OpenBench bench = desk.benches().of(context);
    Frame frame =
        desk.benches()
            .frame(context, bench, Step.EXPLORE)
            .withLibrary("d3-array.js")
            .withLibrary("d3-contour.js")
            .withScript("explore/explore.js")
            .withStyle("explore.css");
    Map<String, Object> values = new HashMap<>();
    values.put("frame", frame);
    values.put("bench", bench);
    values.put("model", desk.benches().model(bench));
    values.put("stated", bench.setup().map(ExploreScreen::stated).orElse(false));
    desk.pages().show(context, "explore/explore.jte", values);
  }

  private static boolean stated(Setup setup) {
    return setup.fixtures().values().stream()
        .flatMap(fixture -> fixture.channels().stream())
        .allMatch(channel -> channel.distribution().isPresent());
  }

  private void scene(Context context) {
    OpenBench bench = desk.benches().of(context);
    Setup setup = bench.setupOrRefuse();
    LengthUnit unit = desk.benches().frame(context, bench, Step.EXPLORE).length();
    context
        .contentType("application/json")
        .result(
            SceneJson.of(
                    setup,
                    unit,
                    VolumeFields.Lattice.of(setup.tank(), FINE),
                    VolumeFields.Lattice.of(setup.tank(), COARSE))
                .toString());
  }

  private static JsonNode body(Context context) {
    try {
      JsonNode json = MAPPER.readTree(context.body());
      if (json != null && json.isObject()) {
        return json;
      }
    } catch (JsonProcessingException e) {
      // Told below.
    }
    throw Refusal.of("the request is no JSON object", "load the page again");
  }

  private LightModel model(OpenBench bench) {
    return model(desk.benches().model(bench));
  }

  private static LightModel model(Optional<StoredModel> stored) {
    return stored
        .map(StoredModel::model)
        .orElseThrow(() -> Refusal.of("there is no light model yet", "fit one on the page Model"));
  }

  /**
   * The rig as it would be in truth; as stated where there is no model but every lamp is stated.
   */
  private static Rig lit(Optional<StoredModel> model, Setup setup, Rig rig) {
    return model.isEmpty() && stated(setup) ? rig : model(model).best().applyTo(rig);
  }

  private void field(Context context) {
    OpenBench bench = desk.benches().of(context);
    JsonNode asked = body(context);
    Setup setup = bench.setupOrRefuse();
    Rig rig = AskedRig.read(asked, setup);
    Optional<StoredModel> model = desk.benches().model(bench);
    String fitted = model.map(stored -> stored.result().id().toString()).orElse("");
    VolumeFields.Lattice lattice =
        VolumeFields.Lattice.of(rig.tank(), asked.path("fine").asBoolean() ? FINE : COARSE);
    // Floats hardly shrink, and shrinking them takes longer than the solver and the way here.
    context
        .disableCompression()
        .contentType("application/octet-stream")
        .result(
            fields.of(
                bench.id() + " " + bench.revision() + " " + fitted,
                lit(model, setup, rig),
                lattice,
                desk.benches().solver()));
  }

  /** The figures of one plane with their intervals, and the interval at each of its cells. */
  private void figures(Context context) {
    OpenBench bench = desk.benches().of(context);
    JsonNode asked = body(context);
    FieldAnswer field = predicted(bench, asked);
    ObjectNode json = Json.object();
    json.set("answer", field.json());
    FieldAnswer.Plane plane = field.planes().get(0);
    json.put("columns", plane.cells().columns());
    json.put("rows", plane.cells().rows());
    for (String end : List.of("best", "low", "high")) {
      ArrayNode values = json.putArray(end);
      double[] whole =
          plane
              .cells()
              .whole(
                  field.withMeterScale().stream().mapToDouble(value -> of(value, end)).toArray());
      for (double value : whole) {
        values.add(Math.round(10 * value) / 10.0);
      }
    }
    context.contentType("application/json").result(json.toString());
  }

  private static double of(Estimate estimate, String end) {
    return switch (end) {
      case "low" -> estimate.low();
      case "high" -> estimate.high();
      default -> estimate.value();
    };
  }

  private FieldAnswer predicted(OpenBench bench, JsonNode asked) {
    Setup setup = bench.setupOrRefuse();
    Rig rig = AskedRig.read(asked, setup);
    double depth = AskedRig.number(asked, "depth", 0, setup.tank().depth());
    FieldPrediction prediction = new FieldPrediction(model(bench), desk.benches().solver(), rig);
    prediction.addPlane(depth, FieldPrediction.CELL, bench.bench().bands());
    return prediction.answer(setup.source(), List.of());
  }

  private void csv(Context context) {
    OpenBench bench = desk.benches().of(context);
    JsonNode asked;
    try {
      asked = MAPPER.readTree(String.valueOf(context.formParam("rig")));
    } catch (JsonProcessingException e) {
      throw Refusal.of("the rig cannot be read", "load the page again");
    }
    LengthUnit unit = desk.benches().frame(context, bench, Step.EXPLORE).length();
    context
        .contentType("text/csv; charset=utf-8")
        .header("Content-Disposition", "attachment; filename=\"field.csv\"")
        .result(predicted(bench, asked).csv(unit));
  }

  /** Counts one plane by the reference solver, and says how far the fast one is off. */
  private void reference(Context context) {
    OpenBench bench = desk.benches().of(context);
    JsonNode asked = body(context);
    Setup setup = bench.setupOrRefuse();
    Rig rig = lit(desk.benches().model(bench), setup, AskedRig.read(asked, setup));
    double depth = AskedRig.number(asked, "depth", 0, rig.tank().depth());
    Job job =
        desk.jobs()
            .begin(
                bench.id(), "reference", asked.toString(), report -> compare(rig, depth, report));
    context.json(Map.of("job", job.id().toString()));
  }

  private void compare(Rig rig, double depth, Jobs.Report report) {
    Places places = Places.plane(rig.tank(), depth, 12, 8);
    double sensor = Math.min(rig.tank().length() / 12, rig.tank().width() / 8);
    TracedField counted =
        new PhotonTracer(Effort.until(REFERENCE_ERROR, 1))
            .trace(
                rig,
                Wanted.at(places).withSensor(sensor),
                (packets, error) -> {
                  report.say(
                      Math.min(1, REFERENCE_ERROR * REFERENCE_ERROR / (error * error)),
                      String.format(
                          Locale.ROOT,
                          "%.1f million packets, standard error at most %.1f %%",
                          packets / 1e6,
                          100 * error));
                  return !report.cancelled();
                });
    double[] fast = desk.benches().solver().solve(rig, places).ppfd();
    double[] differences =
        IntStream.range(0, fast.length)
            .filter(i -> counted.downwelling(i) > 0)
            .mapToDouble(i -> Math.abs(fast[i] / counted.downwelling(i) - 1))
            .sorted()
            .toArray();
    report.say(
        1,
        String.format(
            Locale.ROOT,
            "The reference solver, %.1f million packets, standard error at most %.1f %%: the fast"
                + " one differs from it by %.1f %% in the median and %.1f %% at the 95th percentile"
                + " of this plane.",
            counted.packets() / 1e6,
            100 * counted.worstError(),
            100 * Estimate.quantile(differences, 0.5),
            100 * Estimate.quantile(differences, 0.95)));
  }

  private void take(Context context) {
    OpenBench bench = desk.benches().of(context);
    Setup setup = bench.setupOrRefuse();
    JsonNode asked = body(context);
    String name = asked.path("name").asText("").strip();
    if (!name.matches("[A-Za-z][A-Za-z0-9_-]{0,39}")) {
      throw Refusal.of(
          "the name of a rig: got " + (name.isEmpty() ? "nothing" : name),
          "begin with a letter; letters, digits, - and _ may follow");
    }
    if (setup.rigs().containsKey(name)) {
      throw Refusal.of("the setup has a rig named " + name, "choose another name");
    }
    Rig rig = AskedRig.read(asked, setup);
    String text =
        SetupBlocks.append(
            bench.text(),
            "rigs",
            name,
            SetupLines.rig(name, rig, setup.length()),
            SetupLines.rigInLine(name, rig, setup.length()));
    desk.benches().preview(bench, text, bench.files());
    desk.workspace().benches().saveSetup(bench.id(), bench.revision(), text, Benches.who(context));
    context.json(Map.of("rig", name));
  }
}
