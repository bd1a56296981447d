package parfield.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.answer.Bench;
import parfield.answer.FieldAnswer;
import parfield.answer.FieldPrediction;
import parfield.cli.Run;
import parfield.field.FastSolver;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.formats.ModelFile;
import parfield.rig.Rig;
import parfield.web.work.Job;
import parfield.workspace.Result;

/** The screens over the sample bench: the same numbers as the command line gives. */
class ScreensTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private static Path folder;
  private static TestServer server;
  private static UUID id;
  private static Path setup;
  private static LightModel model;

  @BeforeAll
  static void start() throws IOException, InterruptedException {
    server = TestServer.start(folder);
    id = server.sample();
    Path bench = Files.createDirectory(folder.resolve("bench"));
    for (Map.Entry<String, byte[]> file : server.workspace().benchFiles().files(id).entrySet()) {
      Path target = bench.resolve(file.getKey());
      Files.createDirectories(target.getParent());
      Files.write(target, file.getValue());
    }
    setup = bench.resolve("setup.yaml");
    assertThat(server.post("/bench/" + id + "/model/fit", Map.of()).statusCode()).isEqualTo(302);
    waitFor("fit");
    Result result = server.workspace().results().list(id, Result.Kind.MODEL, 1).get(0);
    model = ModelFile.read("model", server.workspace().bytes(result.document()));
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  private static void waitFor(String kind) throws InterruptedException {
    for (int i = 0; i < 600; i++) {
      Optional<Job> job = server.server().desk().jobs().latest(id, kind);
      if (job.map(Job::ended).orElse(false)) {
        assertThat(job.get().problem()).isEmpty();
        return;
      }
      Thread.sleep(100);
    }
    throw new IllegalStateException(kind + " did not end within a minute");
  }

  @Test
  @DisplayName("every step of the bench is a page")
  void pages() {
    for (String step : List.of("setup", "measure", "model", "explore", "recommend", "publish")) {
      HttpResponse<String> page = server.get("/bench/" + id + "/" + step);
      assertThat(page.statusCode()).as(step).isEqualTo(200);
      assertThat(page.body()).as(step).contains("Sample bench").contains("aria-current=\"page\"");
      assertThat(page.body()).as(step).doesNotContain("style=\"").doesNotContain("onclick");
    }
  }

  @Test
  @DisplayName("the fixture's light is taken away as the command line writes it")
  void photometricFiles() throws IOException {
    Path target = folder.resolve("bar.ies");
    Path stored = folder.resolve("stored-model.json");
    ModelFile.write(model, stored);
    String publish = "/bench/" + id + "/publish";
    assertThat(server.get(publish).body())
        .contains(publish + "/light?as=lm63&amp;fixture=bar\"")
        .contains("violet alone");
    for (String format : List.of("lm63", "eulumdat")) {
      Run run =
          Run.parfield("lamp", "write", setup, "--model", stored, "--as", format, "--out", target);
      assertThat(run.code()).isZero();
      HttpResponse<String> file = server.get(publish + "/light?as=" + format + "&fixture=bar");
      assertThat(file.headers().firstValue("Content-Disposition").orElseThrow())
          .contains("bar." + (format.equals("lm63") ? "ies" : "ldt"));
      // But for the date: of the model here, of today there.
      String date = "\\d{4}-\\d{2}-\\d{2}";
      assertThat(file.body().replaceAll(date, ""))
          .isEqualTo(Files.readString(target).replaceAll(date, ""));
    }
    assertThat(server.get(publish + "/light?as=pdf&fixture=bar").body())
        .contains("no such photometric format");
    assertThat(server.get(publish + "/light?as=lm63&fixture=baar").body())
        .contains("did you mean bar?");
  }

  @Test
  void whatIsNotThere() {
    String unknown = "/bench/" + UUID.randomUUID();
    assertThat(server.get(unknown + "/setup").statusCode()).isEqualTo(404);
    assertThat(server.get("/bench/nonsense/model").statusCode()).isEqualTo(404);
    assertThat(server.get("/bench/" + id + "/model/pictures/no.svg").statusCode()).isEqualTo(404);
  }

  @Test
  @DisplayName("the model's pictures are drawn, each with its words")
  void pictures() {
    String page = server.get("/bench/" + id + "/model").body();
    java.util.regex.Matcher image =
        java.util.regex.Pattern.compile("src=\"(/bench/[^\"]*/pictures/[^\"]*)\" alt=\"([^\"]+)\"")
            .matcher(page);
    int count = 0;
    while (image.find()) {
      HttpResponse<String> svg = server.get(image.group(1));
      assertThat(svg.headers().firstValue("Content-Type")).hasValue("image/svg+xml");
      assertThat(svg.body()).startsWith("<svg").contains("<title>");
      count++;
    }
    assertThat(count).isGreaterThanOrEqualTo(5);
  }

  @Test
  @DisplayName("a fit of the same readings on the command line finds the same conditions")
  void sameFit() throws IOException {
    Path left = folder.resolve("model.json");
    JsonNode told = run("fit", setup.toString(), "--out", left.toString(), "--json");
    JsonNode page = JSON.readTree(server.get("/bench/" + id + "/model/answer.json").body());

    assertThat(page.get("conditions")).isEqualTo(told.get("conditions"));
    assertThat(page.get("cross_validation")).isEqualTo(told.get("cross_validation"));
  }

  private static JsonNode run(String... arguments) throws IOException {
    Run run = Run.parfield((Object[]) arguments);
    assertThat(run.code()).as(run.err()).isIn(0, 1);
    return JSON.readTree(run.out());
  }

  @Test
  @DisplayName("a recommendation is the command line's, number by number")
  void sameRecommendation() throws IOException, InterruptedException {
    server.post("/bench/" + id + "/recommend/run", Map.of("counts", "2", "heights", "18, 25, 32"));
    waitFor("recommend");
    String page = server.get("/bench/" + id + "/recommend").body();
    String advice = page.replaceAll("(?s).*/recommend/([0-9a-f-]{36})/answer.json.*", "$1");
    JsonNode kept =
        JSON.readTree(server.get("/bench/" + id + "/recommend/" + advice + "/answer.json").body());
    JsonNode told =
        run("recommend", setup.toString(), "--counts", "2", "--heights", "18,25,32", "--json");

    assertThat(kept.get("options")).isEqualTo(told.get("options"));
    assertThat(kept.get("trade_off")).isEqualTo(told.get("trade_off"));
    for (String picture : List.of("map.svg", "band.svg", "section.svg", "heights.svg")) {
      assertThat(
              server.get("/bench/" + id + "/recommend/" + advice + "/pictures/" + picture).body())
          .as(picture)
          .startsWith("<svg");
    }
  }

  private static String rig() {
    return "{\"name\": \"x\", \"depth\": 0.15, \"fine\": false, \"hangings\": [{\"fixture\": \"bar\","
        + " \"x\": 0.32, \"y\": 0.275, \"height\": 0.25}, {\"fixture\": \"bar\", \"x\": 0.88,"
        + " \"y\": 0.275, \"height\": 0.25}], \"dials\": {\"bar\": {\"blue\": 80, \"white\": 100,"
        + " \"violet\": 60, \"overall\": 90}}}";
  }

  @Test
  @DisplayName("the light of each channel, summed by the outputs, is the solver's field")
  void weightedSums() throws IOException, InterruptedException {
    HttpResponse<byte[]> answer =
        java.net.http.HttpClient.newHttpClient()
            .send(
                server
                    .request("/bench/" + id + "/explore/data/field")
                    .header("Origin", server.server().address())
                    .POST(BodyPublishers.ofString(rig()))
                    .build(),
                BodyHandlers.ofByteArray());
    JsonNode scene = JSON.readTree(server.get("/bench/" + id + "/explore/data/scene.json").body());
    int columns = scene.at("/coarse/columns").asInt();
    int rows = scene.at("/coarse/rows").asInt();
    int layers = scene.at("/coarse/layers").asInt();
    int cells = columns * rows * layers;
    ByteBuffer bytes = ByteBuffer.wrap(answer.body()).order(ByteOrder.LITTLE_ENDIAN);
    assertThat(answer.body().length).isEqualTo(3 * 4 * cells);

    Bench bench = Bench.read(setup);
    Rig stated = bench.rig("low");
    Rig rig =
        new Rig(
                "x",
                stated.tank(),
                List.of(
                    stated.hangings().get(0).at(0.32, 0.275, 0.25),
                    stated.hangings().get(1).at(0.88, 0.275, 0.25)))
            .withSetting(
                new parfield.lamp.Setting(
                    Map.of("blue", 80.0, "white", 100.0, "violet", 60.0, "overall", 90.0)));
    double[] outputs = rig.hangings().get(0).fixture().outputs(rig.hangings().get(0).setting());
    double[] field =
        new FastSolver()
            .solve(model.best().applyTo(rig), Places.volume(rig.tank(), columns, rows, layers))
            .ppfd();
    for (int i = 0; i < cells; i++) {
      double sum = 0;
      for (int c = 0; c < outputs.length; c++) {
        sum += outputs[c] * bytes.getFloat(4 * (c * cells + i));
      }
      assertThat(sum).isCloseTo(field[i], org.assertj.core.data.Percentage.withPercentage(1e-3));
    }
  }

  @Test
  @DisplayName("the figures of a plane are those of the command field")
  void sameFigures() throws IOException {
    JsonNode told =
        JSON.readTree(server.postJson("/bench/" + id + "/explore/data/figures", rig()).body());
    Bench bench = Bench.read(setup);
    Rig rig =
        bench
            .rig("low")
            .withHangings(hanging -> hanging.at(hanging.x(), hanging.y(), 0.25))
            .withSetting(
                new parfield.lamp.Setting(
                    Map.of("blue", 80.0, "white", 100.0, "violet", 60.0, "overall", 90.0)));
    FieldPrediction prediction = new FieldPrediction(model, new FastSolver(), rig);
    prediction.addPlane(0.15, FieldPrediction.CELL, bench.bands());
    FieldAnswer field = prediction.answer("x", List.of());

    assertThat(told.at("/answer/planes/0"))
        .isEqualTo(JSON.readTree(field.json().toString()).at("/planes/0"));
  }

  @Test
  @DisplayName("the light of a rig as values is what the command field would write")
  void lightOfARig() {
    String page = server.get("/bench/" + id + "/publish").body();
    assertThat(page).contains("publish/light.csv?rig=low").contains("publish/light.csv?rig=high");
    HttpResponse<String> csv = server.get("/bench/" + id + "/publish/light.csv?rig=high");
    Bench bench = Bench.read(setup);
    FieldPrediction prediction = new FieldPrediction(model, new FastSolver(), bench.rig("high"));
    prediction.addPlane(0.15, FieldPrediction.CELL, bench.bands());
    FieldAnswer field = prediction.answer("x", List.of());

    assertThat(csv.headers().firstValue("Content-Type")).hasValue("text/csv; charset=utf-8");
    assertThat(csv.headers().firstValue("Content-Disposition"))
        .hasValue("attachment; filename=\"light-high.csv\"");
    assertThat(csv.body())
        .startsWith("x_cm,y_cm,depth_cm,ppfd,low,high,")
        .isEqualTo(field.csv(parfield.units.LengthUnit.CM));
    HttpResponse<String> inches =
        server.send(
            server
                .request("/bench/" + id + "/publish/light.csv?rig=high")
                .header("Cookie", "parfield-length=in")
                .GET()
                .build());
    assertThat(inches.body()).isEqualTo(field.csv(parfield.units.LengthUnit.INCH));
    assertThat(server.get("/bench/" + id + "/publish/light.csv?rig=none").statusCode())
        .isEqualTo(404);
    UUID unfitted = server.sample();
    assertThat(server.get("/bench/" + unfitted + "/publish").body()).doesNotContain("light.csv");
    assertThat(server.get("/bench/" + unfitted + "/publish/light.csv?rig=low").statusCode())
        .isEqualTo(404);
  }

  @Test
  @DisplayName("numbers out of range are refused with the number and the limit")
  void badNumbers() {
    HttpResponse<String> answer =
        server.postJson(
            "/bench/" + id + "/explore/data/field",
            rig().replace("0.275, \"height\": 0.25}]", "0.2, \"height\": -1}]"));
    HttpResponse<String> nothing =
        server.postJson("/bench/" + id + "/explore/data/field", "{\"hangings\": []}");
    HttpResponse<String> tilted =
        server.postJson(
            "/bench/" + id + "/explore/data/field",
            rig().replace("\"height\": 0.25}]", "\"height\": 0.25, \"tilt\": 1.6}]"));
    HttpResponse<String> noJson = server.postJson("/bench/" + id + "/explore/data/field", "<x>");

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("height: got -1, allowed 0.005 to 20.0");
    assertThat(tilted.statusCode()).isEqualTo(422);
    assertThat(tilted.body()).contains("tilt: got 1.6, allowed -1.57").contains("to 1.57");
    assertThat(nothing.statusCode()).isEqualTo(422);
    assertThat(nothing.body()).contains("a rig hangs 1 to 16 fixtures; got 0");
    assertThat(noJson.statusCode()).isEqualTo(422);
  }

  @Test
  @DisplayName("a setup with a fault is not stored, and what was typed stays on the page")
  void faultySetup() {
    UUID other = server.sample();
    String text = server.workspace().benches().setup(other).text();
    String typed = text.replace("rim: 2", "rim: wide");

    HttpResponse<String> answer =
        server.post("/bench/" + other + "/setup", Map.of("revision", "1", "text", typed));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("tank.rim").contains("rim: wide");
    assertThat(server.workspace().benches().setup(other).text()).isEqualTo(text);
  }

  @Test
  @DisplayName("a page that is behind cannot undo what another saved")
  void staleSetup() {
    UUID other = server.sample();
    String text = server.workspace().benches().setup(other).text();
    server.post(
        "/bench/" + other + "/setup",
        Map.of("revision", "1", "text", text.replace("rim: 2", "rim: 3")));

    HttpResponse<String> answer =
        server.post(
            "/bench/" + other + "/setup",
            Map.of("revision", "1", "text", text.replace("rim: 2", "rim: 4")));

    assertThat(answer.statusCode()).isEqualTo(409);
    assertThat(answer.body()).contains("rim: 3").contains("rim: 4");
    assertThat(server.workspace().benches().setup(other).text()).contains("rim: 3");
  }

  @Test
  @DisplayName("demands are saved as sentences; a number that is none stays where it was typed")
  void demands() {
    UUID other = server.sample();
    String at = "/bench/" + other + "/recommend/demands";
    HttpResponse<String> wrong =
        server.post(
            at,
            Map.of(
                "revision",
                "1",
                "band-name",
                "mid",
                "band-from",
                "75",
                "band-to",
                "many",
                "demand-kind",
                "COVERAGE",
                "demand-band",
                "mid",
                "demand-value",
                "70,5 %"));
    assertThat(wrong.statusCode()).isEqualTo(422);
    assertThat(wrong.body()).contains("upper end of band mid: got many").contains("70,5 %");

    server.post(
        at,
        Map.of(
            "revision",
            "1",
            "band-name",
            "mid",
            "band-from",
            "75",
            "band-to",
            "150 µmol",
            "demand-kind",
            "COVERAGE",
            "demand-band",
            "mid",
            "demand-value",
            "70,5 %"));
    assertThat(server.workspace().benches().setup(other).text())
        .contains("mid: {from: 75, to: 150}")
        .contains("- {band: mid, coverage: 0.705}")
        .contains("# An invented bench");
  }
}
