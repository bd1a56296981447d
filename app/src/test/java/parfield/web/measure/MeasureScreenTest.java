package parfield.web.measure;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.TestServer;

/** The step that measures, over HTTP. */
class MeasureScreenTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir private Path folder;
  private TestServer server;
  private UUID bench;
  private String base;

  @BeforeEach
  void start() {
    server = TestServer.start(folder);
    bench = server.sample();
    base = begin("walk");
  }

  @AfterEach
  void stop() {
    server.close();
  }

  private Map<String, String> form(String name) {
    return new HashMap<>(
        Map.of(
            "name", name, "rig", "low", "meter", "probe", "depths", "15", "columns", "4", "rows",
            "3"));
  }

  private String begin(String name) {
    HttpResponse<String> answer = server.post("/bench/" + bench + "/measure", form(name));
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(303);
    return URI.create(answer.headers().firstValue("Location").orElseThrow()).getPath();
  }

  private JsonNode data() throws IOException {
    return JSON.readTree(server.get(base + "/data").body());
  }

  private JsonNode point(int index) throws IOException {
    return data().get("points").get(index);
  }

  private static String write(UUID id, JsonNode point, long basedOn, String typed) {
    return String.format(
        java.util.Locale.ROOT,
        "{\"writes\": [{\"id\": \"%s\", \"reading\": \"%s\", \"basedOn\": %d, \"x\": %s, \"y\": %s,"
            + " \"depth\": %s, \"order\": 1, \"typed\": \"%s\", \"origin\": \"TYPED\", \"kind\":"
            + " \"GRID\", \"when\": 1700000000000}]}",
        id,
        point.get("reading").asText(),
        basedOn,
        point.get("x"),
        point.get("y"),
        point.get("depth"),
        typed);
  }

  @Test
  void aReadingIsStoredOnceHoweverOftenItIsSent() throws IOException {
    String body = write(UUID.randomUUID(), point(0), 0, "71,5 µmol");

    HttpResponse<String> first = server.postJson(base + "/readings", body);
    HttpResponse<String> again = server.postJson(base + "/readings", body);

    assertThat(first.statusCode()).isEqualTo(200);
    assertThat(again.body()).isEqualTo(first.body());
    assertThat(data().get("readings")).hasSize(1);
    assertThat(data().get("readings").get(0).get("value").asDouble()).isEqualTo(71.5);
    assertThat(data().get("figures").get("all").get("count").asInt()).isEqualTo(1);
  }

  @Test
  @DisplayName("two who read one place: the second is told, and nothing is lost")
  void conflict() throws IOException {
    server.postJson(base + "/readings", write(UUID.randomUUID(), point(0), 0, "71"));

    HttpResponse<String> second =
        server.postJson(base + "/readings", write(UUID.randomUUID(), point(0), 0, "75"));

    assertThat(second.statusCode()).isEqualTo(409);
    JsonNode result = JSON.readTree(second.body()).get("results").get(0);
    assertThat(result.get("state").asText()).isEqualTo("conflict");
    assertThat(result.get("reading").get("value").asDouble()).isEqualTo(71);
    assertThat(
            server
                .postJson(base + "/readings", write(UUID.randomUUID(), point(0), 1, "75"))
                .statusCode())
        .isEqualTo(200);
    assertThat(data().get("readings").get(0).get("value").asDouble()).isEqualTo(75);
  }

  @Test
  void anotherSurveysReadingIsRefused() throws IOException {
    JsonNode mine = point(0);
    server.postJson(base + "/readings", write(UUID.randomUUID(), mine, 0, "71"));
    String other = begin("other");

    HttpResponse<String> answer =
        server.postJson(other + "/readings", write(UUID.randomUUID(), mine, 1, "75"));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("belongs to survey");
    assertThat(data().get("readings").get(0).get("value").asDouble()).isEqualTo(71);
  }

  @Test
  @DisplayName("one bad write does not keep back the good ones, and says why")
  void badWrite() throws IOException {
    String good = write(UUID.randomUUID(), point(0), 0, "71");
    String bad = write(UUID.randomUUID(), point(1), 0, "abc");
    String both = good.substring(0, good.length() - 2) + ", " + bad.substring(bad.indexOf('[') + 1);

    HttpResponse<String> answer = server.postJson(base + "/readings", both);

    assertThat(answer.statusCode()).isEqualTo(422);
    JsonNode results = JSON.readTree(answer.body()).get("results");
    assertThat(results.get(0).get("state").asText()).isEqualTo("saved");
    assertThat(results.get(1).get("problem").asText())
        .isEqualTo("abc is no number: type one as in 71.5 or 71,5");
  }

  @Test
  void placesOutsideTheTankAndBrokenRequestsAreRefused() throws IOException {
    String outside =
        write(UUID.randomUUID(), point(0), 0, "71").replaceFirst("\"x\": [0-9.]+", "\"x\": 9");

    assertThat(server.postJson(base + "/readings", outside).body())
        .contains("lies outside the tank, 1.2 x 0.55 m and 0.5 m deep");
    assertThat(server.postJson(base + "/readings", "{").statusCode()).isEqualTo(422);
    assertThat(server.postJson(base + "/readings", "[]").statusCode()).isEqualTo(422);
    assertThat(server.postJson(base + "/readings", "{\"writes\": [7]}").statusCode())
        .isEqualTo(422);
    assertThat(server.get("/bench/" + bench + "/measure/" + UUID.randomUUID()).statusCode())
        .isEqualTo(404);
    assertThat(server.get("/bench/" + bench + "/measure/nothing").statusCode()).isEqualTo(404);
  }

  @Test
  void tooMuchIsRefused() {
    String body = "{\"writes\": [], \"x\": \"" + "x".repeat(1 << 20) + "\"}";

    assertThat(server.postJson(base + "/readings", body).statusCode()).isEqualTo(413);
  }

  @Test
  void undoAndRedoOnceForEachRequest() throws IOException {
    server.postJson(base + "/readings", write(UUID.randomUUID(), point(0), 0, "71"));
    String request = "{\"id\": \"" + UUID.randomUUID() + "\"}";

    server.postJson(base + "/undo", request);
    server.postJson(base + "/undo", request);
    assertThat(data().get("readings").get(0).get("value").isNull()).isTrue();
    assertThat(data().get("canRedo").asBoolean()).isTrue();

    server.postJson(base + "/redo", "{\"id\": \"" + UUID.randomUUID() + "\"}");
    assertThat(data().get("readings").get(0).get("value").asDouble()).isEqualTo(71);
    JsonNode history =
        JSON.readTree(server.get(base + "/history/" + point(0).get("reading").asText()).body());
    assertThat(history.get("revisions")).hasSize(3);
  }

  @Test
  @DisplayName("a page that is behind takes back nothing that it has not shown")
  void undoOfAPageThatIsBehind() throws IOException {
    UUID mine = UUID.randomUUID();
    server.postJson(base + "/readings", write(mine, point(0), 0, "71"));
    server.postJson(base + "/readings", write(UUID.randomUUID(), point(1), 0, "72"));

    for (String seen : List.of("\"known\": 1", "\"after\": \"" + mine + "\"")) {
      HttpResponse<String> answer =
          server.postJson(base + "/undo", "{\"id\": \"" + UUID.randomUUID() + "\", " + seen + "}");
      assertThat(answer.statusCode()).isEqualTo(409);
      assertThat(answer.body()).contains("since what you would take back");
    }
    assertThat(data().get("readings").get(1).get("value").asDouble()).isEqualTo(72);

    server.postJson(base + "/undo", "{\"id\": \"" + UUID.randomUUID() + "\", \"known\": 2}");
    assertThat(data().get("readings").get(1).get("value").isNull()).isTrue();
  }

  @Test
  void driftIsNoReadingOfTheGrid() throws IOException {
    server.postJson(base + "/readings", write(UUID.randomUUID(), point(0), 0, "100"));
    String drift =
        write(UUID.randomUUID(), point(0), 0, "104")
            .replace("\"GRID\"", "\"DRIFT\"")
            .replace("1700000000000", "1700003600000")
            .replace(point(0).get("reading").asText(), UUID.randomUUID().toString());

    assertThat(server.postJson(base + "/readings", drift).statusCode()).isEqualTo(200);

    JsonNode figures = data().get("figures");
    assertThat(figures.get("all").get("count").asInt()).isEqualTo(1);
    assertThat(figures.get("drift").get("words").asText())
        .startsWith("+3.9 ± ")
        .contains("first point read 2 times in 60 min");
    assertThat(server.get(base + "/readings.csv").body().lines()).hasSize(2);
  }

  @Test
  @DisplayName("a page that watches is told of what it missed, then of each change")
  void live() throws IOException, InterruptedException {
    server.postJson(base + "/readings", write(UUID.randomUUID(), point(0), 0, "71"));
    HttpResponse<java.io.InputStream> events =
        HttpClient.newHttpClient()
            .send(
                HttpRequest.newBuilder(URI.create(server.address(base + "/events?since=0")))
                    .header("Accept", "text/event-stream")
                    .build(),
                HttpResponse.BodyHandlers.ofInputStream());
    try (BufferedReader lines =
        new BufferedReader(new InputStreamReader(events.body(), StandardCharsets.UTF_8))) {
      assertThat(next(lines, "changes").get("readings").get(0).get("value").asDouble())
          .isEqualTo(71);
      server.postJson(base + "/readings", write(UUID.randomUUID(), point(1), 0, "82"));
      JsonNode change = next(lines, "changes");
      assertThat(change.get("sequence").asLong()).isEqualTo(2);
      assertThat(change.get("readings").get(0).get("value").asDouble()).isEqualTo(82);
      assertThat(next(lines, "figures").get("all").get("mean").asDouble()).isEqualTo(76.5);
    }
  }

  private static JsonNode next(BufferedReader lines, String event) throws IOException {
    String line;
    while ((line = lines.readLine()) != null) {
      if (line.equals("event: " + event)) {
        line = lines.readLine();
        while (!line.startsWith("data: ")) {
          line = lines.readLine();
        }
        return JSON.readTree(line.substring("data: ".length()));
      }
    }
    throw new AssertionError("the stream ended before " + event);
  }

  @Test
  void aNameIsTextWhereverItStands() {
    String name = "<script>alert(1)</script>\"'";
    String page = begin(name);

    assertThat(server.get("/bench/" + bench + "/measure").body())
        .doesNotContain("<script>alert")
        .contains("&lt;script&gt;alert(1)&lt;/script&gt;");
    assertThat(server.get(page).body())
        .doesNotContain("<script>alert")
        .contains("&lt;script&gt;alert(1)&lt;/script&gt;");
    assertThat(server.get(page + "/readings.csv").headers().firstValue("Content-Disposition"))
        .hasValue("attachment; filename=\"script-alert-1-script-.csv\"");
  }

  @Test
  @DisplayName("what was typed stays, with the fault beside it")
  void faultyForm() {
    Map<String, String> form = form("next");
    form.put("depths", "99");

    HttpResponse<String> answer = server.post("/bench/" + bench + "/measure", form);

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body())
        .contains("value=\"next\"")
        .contains("value=\"99\"")
        .contains("99: type depths from the surface down, above 0 to 50 cm, as in 10 25");
  }

  @Test
  void mapFromFourReadingsOn() throws IOException {
    for (int i = 0; i < 6; i++) {
      assertThat(server.get(base + "/map?depth=0.15").statusCode()).isEqualTo(i < 4 ? 204 : 200);
      server.postJson(
          base + "/readings", write(UUID.randomUUID(), point(i), 0, String.valueOf(80 + 7 * i)));
    }

    assertThat(server.get(base + "/map?depth=0.15").body()).startsWith("<svg").contains("PPFD");
  }

  @Test
  void pastePreviewStoresNothing() throws IOException {
    JsonNode first = point(0);

    HttpResponse<String> answer =
        server.postJson(
            base + "/paste",
            "{\"text\": \"71,5\\nx\", \"depth\": 0.15, \"way\": [\""
                + first.get("reading").asText()
                + "\"]}");

    JsonNode preview = JSON.readTree(answer.body());
    assertThat(preview.get("cells").get(0).get("value").asDouble()).isEqualTo(71.5);
    assertThat(preview.get("problems")).hasSize(1);
    assertThat(data().get("readings")).isEmpty();
  }
}
