package parfield.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import parfield.cli.Run;
import parfield.web.work.Job;
import parfield.workspace.Entry;
import parfield.workspace.ReadingRevision;
import parfield.workspace.Result;
import parfield.workspace.ShelfItem;

/** A light model of another tank on its page: brought in, applied, confirmed, updated. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class TransferPageTest {
  private static final String STALE = "since this was found. Apply the model again";

  @TempDir private static Path folder;
  private static TestServer server;
  private static UUID id;

  @BeforeAll
  static void start() {
    server = TestServer.start(folder);
    id = Elsewhere.put(server, "Other tank", Elsewhere.setup());
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  private static String at() {
    return "/bench/" + id + "/transfer";
  }

  private static void done(UUID bench, String kind) throws InterruptedException {
    for (int i = 0; i < 2400; i++) {
      Optional<Job> job = server.server().desk().jobs().latest(bench, kind);
      if (job.map(Job::ended).orElse(false)) {
        assertThat(job.get().problem()).isEmpty();
        return;
      }
      Thread.sleep(50);
    }
    throw new IllegalStateException(kind + " did not end within two minutes");
  }

  private static String page() {
    return server.get(at()).body();
  }

  private static List<Result> transfers(UUID bench) {
    return server.workspace().results().list(bench, Result.Kind.TRANSFER, 10);
  }

  private static String newest() {
    return transfers(id).get(0).id().toString();
  }

  private static JsonNode json(String text) throws IOException {
    return new ObjectMapper().readTree(text);
  }

  /** What the page's answer says beside names of files. */
  private static JsonNode answer() throws IOException {
    return nameless(server.get(at() + "/" + newest() + "/answer.json").body());
  }

  /** What the command answers for the bench as it is exported, beside names of files. */
  private static JsonNode command(String name) throws IOException {
    Path there = Files.createDirectories(folder.resolve(name));
    for (Map.Entry<String, byte[]> file : server.workspace().benchFiles().files(id).entrySet()) {
      Files.write(there.resolve(file.getKey()), file.getValue());
    }
    Path model = Files.write(there.resolve("elsewhere.json"), Elsewhere.model());
    Run run = Run.parfield("transfer", there.resolve("setup.yaml"), "--model", model, "--json");
    assertThat(run.err()).isEmpty();
    return nameless(run.out());
  }

  private static JsonNode nameless(String text) throws IOException {
    ObjectNode json = (ObjectNode) json(text);
    json.remove("model");
    ((ObjectNode) json.get("recommendation")).remove("setup");
    return json;
  }

  @Test
  @Order(1)
  @DisplayName("a step without a model leads here, and the page says what it wants")
  void empty() {
    assertThat(server.get("/bench/" + id + "/model").body()).contains("href=\"" + at() + "\"");
    assertThat(page())
        .contains("Bring a model in", "model.json, at most 16 MiB")
        .doesNotContain("Models on the shelf", "How wrong that may be");
  }

  @Test
  @Order(2)
  @DisplayName("what is no light model is told beside its field, and nothing is kept")
  void refused() {
    HttpResponse<String> nothing = Elsewhere.bring(server, id, "", new byte[0], "mine");
    assertThat(nothing.statusCode()).isEqualTo(422);
    assertThat(nothing.body())
        .contains("This was not done yet. To mend:")
        .contains("href=\"#file\">no file was chosen, or it is empty")
        .contains("<p class=\"fault\" id=\"fault-file\">no file was chosen")
        .contains("value=\"mine\"");
    for (String garbage :
        List.of(
            "no JSON",
            "{}",
            "[".repeat(5000),
            "{\"parfield_model\": 1e999}",
            new String(Elsewhere.model(), StandardCharsets.UTF_8).substring(0, 5000))) {
      HttpResponse<String> answer =
          Elsewhere.bring(server, id, "model.json", garbage.getBytes(StandardCharsets.UTF_8), "");
      assertThat(answer.statusCode()).as(answer.body()).isEqualTo(422);
      assertThat(answer.body()).contains("id=\"fault-file\">", "model.json");
    }
    HttpResponse<String> large =
        Elsewhere.bring(server, id, "model.json", new byte[(16 << 20) + 1], "");
    assertThat(large.statusCode()).isEqualTo(413);
    assertThat(large.body())
        .contains("model.json is 16777217 bytes large; a light model holds at most 16 MiB");
    assertThat(Elsewhere.bring(server, id, "model.json", Elsewhere.model(), "n".repeat(81)).body())
        .contains("a name is one line of at most 80 characters; this has 81");
    assertThat(server.workspace().shelf().list(ShelfItem.Kind.MODEL, "", 9, 0).total()).isZero();
    assertThat(transfers(id)).isEmpty();
  }

  @Test
  @Order(3)
  @DisplayName("a model that is brought in is applied, and says what the command says")
  void sameAsTheCommand() throws Exception {
    HttpResponse<String> taken =
        Elsewhere.bring(server, id, "../up\\model.json", Elsewhere.model(), "");
    assertThat(taken.statusCode()).as(taken.body()).isEqualTo(302);
    assertThat(taken.headers().firstValue("Location").orElseThrow()).endsWith(at());
    assertThat(page()).contains("data-work=\"/bench/" + id + "/jobs/");
    done(id, "transfer");

    assertThat(answer()).isEqualTo(command("bare"));
    assertThat(answer().path("update").isNull()).isTrue();
    String page = page();
    assertThat(page)
        .contains("How wrong that may be", "Where the error comes from", "no reading yet")
        .contains("The three readings that would confirm it", "Another specimen of the fixture")
        .contains("Electricity near water", "Models on the shelf", "<strong>model</strong>")
        .doesNotContain(STALE);
    assertThat(Pattern.compile("id=\"reading-\\d\"").matcher(page).results().count()).isEqualTo(3);
    String text = server.get(at() + "/" + newest() + "/answer.txt").body();
    int compared = 0;
    for (var cell :
        Pattern.compile("<td class=\"number\">([^<]+)</td>").matcher(page).results().toList()) {
      assertThat(text).contains(cell.group(1).replace("&gt;", ">").replace("&lt;", "<"));
      compared++;
    }
    assertThat(compared).isGreaterThan(40);
    assertThat(server.get(at() + "/" + newest() + "/pictures/map.svg").body()).startsWith("<svg");
    assertThat(server.get(at() + "/" + newest() + "/pictures/none.svg").statusCode())
        .isEqualTo(404);
  }

  @Test
  @Order(4)
  @DisplayName("a model is kept once, and another of its name gets a name of its own")
  void names() throws Exception {
    Elsewhere.bring(server, id, "again.json", Elsewhere.model(), "");
    byte[] spaced =
        (" " + new String(Elsewhere.model(), StandardCharsets.UTF_8))
            .getBytes(StandardCharsets.UTF_8);
    HttpResponse<String> taken = Elsewhere.bring(server, id, "model.json", spaced, "model");
    assertThat(taken.statusCode()).isEqualTo(422);
    assertThat(taken.body()).contains("id=\"fault-name\">another model is called model already");
    Elsewhere.bring(server, id, "model.json", spaced, "");
    done(id, "transfer");

    assertThat(server.workspace().shelf().list(ShelfItem.Kind.MODEL, "", 9, 0).items())
        .extracting(ShelfItem::name)
        .containsExactly("model", "model 2");
    server.post(at() + "/models/put-away", Map.of("model", "model 2"));
    assertThat(page()).contains("<strong>model</strong>").doesNotContain("<strong>model 2<");
    assertThat(server.post(at() + "/apply", Map.of("model", "model 2")).statusCode())
        .isEqualTo(404);
    server.post(at() + "/apply", Map.of("model", "model"));
    done(id, "transfer");
  }

  @Test
  @Order(5)
  @DisplayName("readings that cannot be right are told beside their fields and stay there")
  void wrongReadings() {
    long revision = server.workspace().benches().setup(id).revision();
    HttpResponse<String> refused =
        server.post(
            at() + "/readings",
            Map.of(
                "transfer",
                newest(),
                "reading-1",
                "1,234",
                "reading-2",
                "-5",
                "reading-3",
                "2500"));
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body())
        .contains("href=\"#reading-1\">1,234 may mean 1234 or 1.234")
        .contains("id=\"fault-reading-2\">-5 is below 0, which no light is")
        .contains("id=\"odd-reading-3\">2500 is more than the sun at noon gives")
        .contains("name=\"keep-reading-3\"")
        .contains("value=\"1,234\"", "value=\"-5\"", "value=\"2500\"");
    HttpResponse<String> none = server.post(at() + "/readings", Map.of("transfer", newest()));
    assertThat(none.statusCode()).isEqualTo(422);
    assertThat(none.body()).contains("No reading was typed: type at least one");
    assertThat(server.workspace().benches().setup(id).revision()).isEqualTo(revision);
  }

  @Test
  @Order(6)
  @DisplayName("the readings can be prepared as a survey of their very places, once")
  void prepared() {
    String first =
        server
            .post(at() + "/prepare", Map.of("transfer", newest()))
            .headers()
            .firstValue("Location")
            .orElseThrow();
    assertThat(first).contains("/bench/" + id + "/measure/");
    assertThat(
            server
                .post(at() + "/prepare", Map.of("transfer", newest()))
                .headers()
                .firstValue("Location"))
        .hasValue(first);
    String text = server.workspace().benches().setup(id).text();
    assertThat(text).containsOnlyOnce("confirming-1:").contains("grid: {places: [[");
    assertThat(page()).as("nothing was read yet").doesNotContain(STALE);
    assertThat(server.get(first.replaceFirst(".*//[^/]*", "") + "/data").body())
        .contains("\"points\"", "\"order\":3");
  }

  @Test
  @Order(7)
  @DisplayName("once they are typed, model and advice are found anew, as the command finds them")
  void updated() throws Exception {
    String before = newest();
    HttpResponse<String> stored =
        server.post(
            at() + "/readings",
            Map.of(
                "transfer",
                before,
                "reading-1",
                "152,5 µmol",
                "reading-2",
                "101",
                "reading-3",
                "170"));
    assertThat(stored.statusCode()).as(stored.body()).isEqualTo(302);
    done(id, "transfer");

    UUID survey = server.workspace().surveys().named(id, "confirming-1").id();
    assertThat(server.workspace().readings().of(survey))
        .extracting(ReadingRevision::entry)
        .extracting(Entry::typed)
        .containsExactlyInAnyOrder("152,5 µmol", "101", "170");
    assertThat(newest()).isNotEqualTo(before);
    assertThat(answer()).isEqualTo(command("read"));
    assertThat(answer().at("/update/readings").size() + answer().at("/update/set_aside").size())
        .isEqualTo(3);
    assertThat(page())
        .contains("What the readings of this tank made of it", "after the readings")
        .contains("Three readings that would tell most now", "Earlier transfers")
        .doesNotContain(STALE);
  }

  @Test
  @Order(8)
  @DisplayName("what is typed for an earlier answer is not stored, and not lost")
  void meanwhile() {
    String earlier = transfers(id).get(1).id().toString();
    HttpResponse<String> refused =
        server.post(at() + "/readings", Map.of("transfer", earlier, "reading-2", "77"));
    assertThat(refused.statusCode()).isEqualTo(409);
    assertThat(refused.body())
        .contains("what you typed is not stored yet and still stands in its fields")
        .contains("value=\"77\"");
    assertThat(server.post(at() + "/adopt", Map.of("transfer", earlier)).statusCode())
        .isEqualTo(409);
    assertThat(server.get(at() + "?transfer=" + earlier).body()).contains(STALE);
  }

  @Test
  @Order(9)
  @DisplayName("it can become the bench's light model, which every page then works with")
  void adopted() throws Exception {
    byte[] file =
        server.get(at() + "/" + newest() + "/model.json").body().getBytes(StandardCharsets.UTF_8);
    assertThat(server.get("/bench/" + id + "/explore").body()).contains("wants a model");
    HttpResponse<String> done = server.post(at() + "/adopt", Map.of("transfer", newest()));
    assertThat(done.statusCode()).isEqualTo(302);

    String model = server.get("/bench/" + id + "/model").body();
    assertThat(model)
        .contains("This model was fitted over another tank and applied to this one")
        .contains("Model</span> <span class=\"step-note\">of another tank")
        .contains("Recommend</span> <span class=\"step-note\">kept")
        .doesNotContain("The model misses a reading by");
    assertThat(
            server
                .get("/bench/" + id + "/model/model.json")
                .body()
                .getBytes(StandardCharsets.UTF_8))
        .isEqualTo(file);
    for (var picture :
        Pattern.compile("src=\"(/bench[^\"]*)\"").matcher(model).results().toList()) {
      assertThat(server.get(picture.group(1)).statusCode()).isEqualTo(200);
    }
    for (String step : List.of("explore", "recommend", "care", "publish", "transfer")) {
      assertThat(server.get("/bench/" + id + "/" + step).statusCode()).as(step).isEqualTo(200);
    }
    JsonNode advice =
        json(
            server
                .get(
                    "/bench/"
                        + id
                        + "/recommend/"
                        + server
                            .workspace()
                            .results()
                            .list(id, Result.Kind.RECOMMENDATION, 1)
                            .get(0)
                            .id()
                        + "/answer.json")
                .body());
    assertThat(advice)
        .isEqualTo(
            json(server.get(at() + "/" + newest() + "/answer.json").body()).get("recommendation"));
    assertThat(page()).contains("It is this bench's light model").doesNotContain("/adopt");
    server.post("/bench/" + id + "/publish/report", Map.of());
    done(id, "report");
  }

  @Test
  @Order(10)
  @DisplayName("a demand that is changed makes it old, and it can be applied again")
  void old() throws Exception {
    var setup = server.workspace().benches().setup(id);
    server
        .workspace()
        .benches()
        .saveSetup(
            id, setup.revision(), setup.text().replace("coverage: 0.45", "coverage: 0.40"), "Ada");
    assertThat(page()).contains(STALE, "Apply it again");
    server.post(at() + "/again", Map.of("transfer", newest()));
    done(id, "transfer");
    assertThat(page()).doesNotContain(STALE);
  }

  @Test
  @Order(11)
  @DisplayName("another kind of fixture is refused by its name, and the model stays at hand")
  void otherFixture() {
    UUID other = Elsewhere.put(server, "Bar", Elsewhere.setup().replace("puck", "bar"));
    HttpResponse<String> refused =
        server.post("/bench/" + other + "/transfer/apply", Map.of("model", "model"));
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body())
        .contains("this model cannot be applied to Bar")
        .contains("the light model knows puck, over this tank hangs bar")
        .contains("<strong>model</strong>");
    assertThat(transfers(other)).isEmpty();
    assertThat(server.get("/bench/" + other + "/transfer?transfer=" + newest()).statusCode())
        .as("a transfer of another bench")
        .isEqualTo(404);
    assertThat(server.get("/bench/" + other + "/transfer?transfer=none").statusCode())
        .isEqualTo(404);
  }

  @Test
  @Order(11)
  @DisplayName("a model that claims to be sure, never ends or outshines the sun is refused")
  void notAFit() throws IOException {
    ObjectMapper mapper = new ObjectMapper();
    ObjectNode one = (ObjectNode) json(new String(Elsewhere.model(), StandardCharsets.UTF_8));
    one.set("draws", mapper.createArrayNode().add(one.get("draws").get(0)));
    ObjectNode many = (ObjectNode) json(new String(Elsewhere.model(), StandardCharsets.UTF_8));
    for (int i = 0; i < 400; i++) {
      many.withArray("draws").add(many.get("draws").get(0));
    }
    ObjectNode sun = (ObjectNode) json(new String(Elsewhere.model(), StandardCharsets.UTF_8));
    ArrayNode cosine = (ArrayNode) sun.at("/best/distributions/puck/0/cosine/0");
    for (int i = 0; i < cosine.size(); i++) {
      cosine.set(i, 1e300);
    }
    for (Map.Entry<ObjectNode, String> wrong :
        Map.of(
                one, "this model holds 1 draw of what its readings allow; allowed 40 to 400",
                many, "this model holds 496 draws",
                sun, "this model has a lamp that sends more than 10000000")
            .entrySet()) {
      HttpResponse<String> refused =
          Elsewhere.bring(server, id, "odd.json", mapper.writeValueAsBytes(wrong.getKey()), "");
      assertThat(refused.statusCode()).isEqualTo(422);
      assertThat(refused.body()).contains("id=\"fault-file\">" + wrong.getValue());
    }
    assertThat(server.workspace().shelf().list(ShelfItem.Kind.MODEL, "odd", 9, 0).total()).isZero();
  }

  @Test
  @Order(12)
  @DisplayName("a bench with a whole grid of readings is sent to a model of its own")
  void enough() {
    UUID sample = server.sample();
    assertThat(server.get("/bench/" + sample + "/transfer").body())
        .contains("readings of its own. They are enough for a light model of this very tank");
    HttpResponse<String> refused =
        server.post("/bench/" + sample + "/transfer/apply", Map.of("model", "model"));
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body()).contains("a transferred model is updated by at most 40");

    var setup = server.workspace().benches().setup(sample);
    String text = setup.text();
    int surveys = text.indexOf("\nsurveys:") + 1;
    server
        .workspace()
        .benches()
        .saveSetup(
            sample,
            setup.revision(),
            text.substring(0, surveys) + text.substring(text.indexOf("\nbands:", surveys) + 1),
            "Ada");
    assertThat(server.get("/bench/" + sample + "/transfer").body())
        .as("without the surveys of the tank that it was")
        .doesNotContain("readings of its own");
  }

  @Test
  @Order(13)
  @DisplayName("with more than one meter the one that was read with is asked for")
  void meters() throws Exception {
    String two =
        Elsewhere.setup()
            .replace("bands:", "  other: {applied: true}\nbands:")
            .replace("demands:\n", "# none\ndemands:\n");
    UUID bench = Elsewhere.put(server, "Two meters", two);
    server.post("/bench/" + bench + "/transfer/apply", Map.of("model", "model"));
    done(bench, "transfer");
    String transfer = transfers(bench).get(0).id().toString();

    HttpResponse<String> refused =
        server.post(
            "/bench/" + bench + "/transfer/readings",
            Map.of("transfer", transfer, "reading-1", "150"));
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body())
        .contains("href=\"#meter\">Choose the meter that you read with: probe, other")
        .contains("value=\"150\"");
    server.post(
        "/bench/" + bench + "/transfer/readings",
        Map.of("transfer", transfer, "reading-1", "2500", "keep-reading-1", "1", "meter", "other"));
    done(bench, "transfer");
    UUID survey = server.workspace().surveys().named(bench, "confirming-1").id();
    assertThat(server.workspace().readings().of(survey))
        .singleElement()
        .satisfies(reading -> assertThat(reading.entry().kept()).isTrue());
    assertThat(server.workspace().benches().setup(bench).text()).contains("meter: other");
  }

  @Test
  @Order(14)
  @DisplayName("cancelled work keeps the best so far, and says that it is not the end")
  void cancelled() throws Exception {
    UUID bench = Elsewhere.put(server, "Cancelled", Elsewhere.setup());
    server.post("/bench/" + bench + "/transfer/apply", Map.of("model", "model"));
    Job job = server.server().desk().jobs().latest(bench, "transfer").orElseThrow();
    while (server.server().desk().jobs().job(job.id()).orElseThrow().state() == Job.State.WAITING) {
      Thread.sleep(5);
    }
    server.post("/bench/" + bench + "/jobs/" + job.id() + "/cancel", Map.of());
    done(bench, "transfer");
    assertThat(server.get("/bench/" + bench + "/transfer").body())
        .contains("The search was stopped: this is the best found by then");
  }

  @Test
  @Order(15)
  @DisplayName("names that would be script are shown as text")
  void script() {
    String evil = "\"><img src=x onerror=e()><script>e()</script>'";
    byte[] renamed =
        new String(Elsewhere.model(), StandardCharsets.UTF_8)
            .replace("\"puck\"", "\"puck<script>e()</script>\"")
            .getBytes(StandardCharsets.UTF_8);
    for (HttpResponse<String> answer :
        List.of(
            Elsewhere.bring(server, id, evil + ".json", renamed, ""),
            Elsewhere.bring(server, id, evil, evil.getBytes(StandardCharsets.UTF_8), evil),
            Elsewhere.bring(server, id, "x.json", renamed, evil),
            server.post(
                at() + "/readings", Map.of("transfer", newest(), "reading-1", evil, "meter", evil)),
            server.post(at() + "/apply", Map.of("model", evil + "no")),
            server.get(at()))) {
      assertThat(answer.body()).doesNotContain("<img src=x", "<script>e()");
    }
    assertThat(page()).contains("&lt;script&gt;e()");
  }

  @Test
  @Order(16)
  @DisplayName("another server over the same workspace finds all of it")
  void again() throws IOException, InterruptedException {
    String before = page();
    Path archive = folder.resolve("all.zip");
    server.workspace().exportTo(archive);
    server.close();
    server = TestServer.start(folder);
    String after = page();
    assertThat(after).contains("What the readings of this tank made of it");
    assertThat(after.substring(after.indexOf("id=\"found\"")))
        .isEqualTo(before.substring(before.indexOf("id=\"found\"")));

    server.close();
    server = TestServer.start(Files.createDirectories(folder.resolve("other")));
    server.workspace().importFrom(archive);
    String carried = page();
    assertThat(carried.substring(carried.indexOf("id=\"found\"")))
        .as("in another workspace, brought by an archive")
        .isEqualTo(before.substring(before.indexOf("id=\"found\"")));
    assertThat(server.get(at() + "/" + newest() + "/model.json").statusCode()).isEqualTo(200);
    server.post(at() + "/again", Map.of("transfer", newest()));
    done(id, "transfer");
  }
}
