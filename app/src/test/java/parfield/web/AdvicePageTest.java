package parfield.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.bench.OpenBench;
import parfield.web.work.Job;
import parfield.workspace.Entry;
import parfield.workspace.ReadingRevision;
import parfield.workspace.ReadingWrite;
import parfield.workspace.Result;

/** A kept recommendation: until when it holds, in which unit it is told, and what a page keeps. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class AdvicePageTest {
  private static final String OLD = "What this rests on was changed since it was found";

  @TempDir private static Path folder;
  private static TestServer server;
  private static UUID id;

  @BeforeAll
  static void start() throws InterruptedException {
    server = TestServer.start(folder);
    id = server.sample();
    server.post("/bench/" + id + "/model/fit", Map.of());
    waitFor("fit");
    server.post(
        at() + "/run", Map.of("counts", "2", "heights", "18, 25", "spacings", "50", "depth", "15"));
    waitFor("recommend");
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  private static void waitFor(String kind) throws InterruptedException {
    for (int i = 0; i < 1200; i++) {
      Optional<Job> job = server.server().desk().jobs().latest(id, kind);
      if (job.map(Job::ended).orElse(false)) {
        assertThat(job.get().problem()).isEmpty();
        return;
      }
      Thread.sleep(50);
    }
    throw new IllegalStateException(kind + " did not end within a minute");
  }

  private static String at() {
    return "/bench/" + id + "/recommend";
  }

  private static String text() {
    return server.workspace().benches().setup(id).text();
  }

  private static long revision() {
    return server.workspace().benches().setup(id).revision();
  }

  private static void store(String text) {
    server.workspace().benches().saveSetup(id, revision(), text, "Ada");
  }

  private static Result advice() {
    return server.workspace().results().list(id, Result.Kind.RECOMMENDATION, 1).get(0);
  }

  /** Whether the page and the head of every page say that the recommendation holds. */
  private static boolean current() {
    HttpResponse<String> page = server.get(at());
    boolean current = !page.body().contains(OLD);
    assertThat(page.body().contains("Recommend</span> <span class=\"step-note\">kept"))
        .as("the step's note")
        .isEqualTo(current);
    return current;
  }

  private static String inInches(String path) {
    return server
        .send(
            server
                .request(path)
                .header("Accept", "text/html")
                .header("Cookie", "parfield-length=in")
                .GET()
                .build())
        .body();
  }

  @Test
  @Order(1)
  @DisplayName("it is out of date exactly when something that it depends on was changed")
  void outOfDate() {
    assertThat(current()).isTrue();
    String before = text();
    for (Map.Entry<String, String> change :
        List.of(
            Map.entry("coverage: 0.65", "coverage: 0.6"),
            Map.entry("to: 320", "to: 330"),
            Map.entry("yellowing: 0.05", "yellowing: 0.06"),
            Map.entry("watts: 48", "watts: 49"),
            Map.entry("room: {height: 60}", "room: {height: 55}"),
            Map.entry("scale_error: 0.05", "scale_error: 0.06"))) {
      String changed = before.replace(change.getKey(), change.getValue());
      assertThat(changed).isNotEqualTo(before);
      store(changed);
      assertThat(current()).as(change.toString()).isFalse();
      store(before);
      assertThat(current()).as("back from " + change).isTrue();
    }
    store(before + "# a comment\n");
    assertThat(current()).as("a comment").isTrue();
    store(before.replace("{from: 80, to: 160}", "{from: 80.0, to: 160}"));
    assertThat(current()).as("another spelling of a number").isTrue();
    store(before);
  }

  @Test
  @Order(2)
  @DisplayName("a reading that is changed makes it old, and its undoing new")
  void readings() {
    UUID survey = server.workspace().surveys().named(id, "low").id();
    ReadingRevision first = server.workspace().readings().of(survey).get(0);
    double value = first.entry().value().getAsDouble();
    server
        .workspace()
        .readings()
        .write(
            survey,
            List.of(
                new ReadingWrite(
                    UUID.randomUUID(),
                    first.reading(),
                    first.revision(),
                    Entry.typed(
                        first.entry().place(),
                        first.entry().order(),
                        String.valueOf(value + 9),
                        value + 9),
                    Instant.EPOCH)),
            "Ada");
    assertThat(current()).isFalse();
    server.workspace().readings().undo(survey, UUID.randomUUID(), "Ada");
    assertThat(current()).isTrue();
  }

  @Test
  @Order(3)
  @DisplayName("taking its own rig into the setup does not make it old")
  void ownRig() {
    store(text().replace("rigs:\n", "rigs: # two heights\n  # the lower one\n"));
    HttpResponse<String> taken =
        server.post(
            at() + "/take", Map.of("advice", advice().id().toString(), "option", "option-1"));

    assertThat(taken.statusCode()).as(taken.body()).isEqualTo(302);
    assertThat(text()).contains("  advised-1:\n").contains("# the lower one\n  low:\n");
    assertThat(current()).isTrue();
  }

  @Test
  @Order(4)
  @DisplayName(
      "a recommendation stored before its inputs were noted still shows, and knows its age")
  void earlier() {
    Result now = advice();
    OpenBench bench = server.server().desk().benches().open(id);
    String document =
        new String(
            server.workspace().bytes(now.document()), java.nio.charset.StandardCharsets.UTF_8);
    server
        .workspace()
        .results()
        .save(
            id,
            Result.Kind.RECOMMENDATION,
            new Result.Inputs(bench.inputs(), bench.revision(), Map.of(), "earlier"),
            document
                .replace("\"words\"", "\"unknown\"")
                .getBytes(java.nio.charset.StandardCharsets.UTF_8),
            "Ada");
    assertThat(current()).isTrue();
    assertThat(server.get(at()).body())
        .contains("the meter should show")
        .contains("low: ")
        .contains("readings with 2 fixtures 18 cm high");

    String before = text();
    store(before.replace("water: 50", "water: 49"));
    assertThat(current()).isFalse();
    store(before.replace("coverage: 0.65", "coverage: 0.6"));
    assertThat(current()).isFalse();
    store(before.replace("meters:\n", "meters:\n  # a comment\n"));
    assertThat(current()).isTrue();
    store(before);
    server
        .workspace()
        .results()
        .save(
            id,
            Result.Kind.RECOMMENDATION,
            now.inputs(),
            server.workspace().bytes(now.document()),
            "Ada");
  }

  @Test
  @Order(5)
  @DisplayName("who shows lengths in inches reads none in centimetres, on any page")
  void inches() {
    List<String> places = new ArrayList<>(List.of("measure", "model", "explore", "recommend"));
    places.add("publish");
    for (String step : places) {
      String page = inInches("/bench/" + id + "/" + step);
      String seen =
          page.replaceAll("(?s)<form.*?</form>", "")
              .replaceAll("<[^>]*>", " ")
              .replaceAll("\\s+", " ");
      assertThat(seen).as(step).doesNotContainPattern("\\d cm\\b").doesNotContain("(cm)");
    }
    String page = inInches(at());
    assertThat(page)
        .contains("ends-to-centre ratio of the plane 5.9 in deep at least 0.75")
        .contains("readings with 2 fixtures 7.09 in high")
        .containsPattern("At x [\\d.]+, y [\\d.]+, depth [\\d.]+ in the meter should show");
    assertThat(inInches("/bench/" + id + "/model"))
        .contains("the height of 7.09 in")
        .contains("mounting height offset (in)");
    assertThat(server.get("/bench/" + id + "/model").body())
        .contains("the height of 18")
        .contains("mounting height offset (cm)");
  }

  @Test
  @Order(6)
  @DisplayName("a search that is refused stays as it was typed, each fault at its field")
  void refused() {
    HttpResponse<String> answer =
        server.post(
            at() + "/run",
            Map.of(
                "counts", "2, 9",
                "heights", "18; 70",
                "spacings", "about 40",
                "depth", "51",
                "free-mix", "on"));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body())
        .contains("number of fixtures: got 9; type whole numbers from 1 to 8, as in 1, 2")
        .contains("mounting heights: got 70 cm; the room over the water ends at 60 cm")
        .contains("spacings: got about; type a number")
        .contains("the depth 51 cm lies outside the water, which is 50 cm deep")
        .contains("name=\"counts\" value=\"2, 9\"")
        .contains("name=\"heights\" value=\"18; 70\"")
        .contains("name=\"spacings\" value=\"about 40\"")
        .contains("name=\"depth\" value=\"51\"")
        .contains("name=\"free-mix\" checked")
        .contains("aria-describedby=\"fault-heights\"");
    HttpResponse<String> wide =
        server.post(
            at() + "/run", Map.of("heights", "18:60:0.1", "spacings", "121", "counts", "1.5"));
    assertThat(wide.body())
        .contains("mounting heights: got 18:60:0.1; write from:to:step with few steps")
        .contains("spacings: got 121 cm; the tank's length is 120 cm")
        .contains("number of fixtures: got 1.5;");
  }

  @Test
  @Order(7)
  @DisplayName("what was looked for stands in the form again")
  void remembered() {
    assertThat(server.get(at()).body())
        .contains("name=\"heights\" value=\"18, 25\"")
        .contains("name=\"spacings\" value=\"50\"");
    assertThat(inInches(at())).doesNotContain("value=\"18, 25\"");
  }

  @Test
  @Order(8)
  @DisplayName("who saves demands over another's sees both, and may put his in their place")
  void staleDemands() {
    List<Map.Entry<String, String>> form =
        HtmlForm.fields(server.get(at()).body(), "/recommend/demands");
    Map<String, String> first = new HashMap<>();
    first.put("band-to", "");
    List<Map.Entry<String, String>> typed = new ArrayList<>();
    for (Map.Entry<String, String> field : form) {
      boolean one = field.getKey().equals("band-to") && first.remove("band-to") != null;
      typed.add(one ? Map.entry("band-to", "171") : field);
    }
    // Another rig does not touch bands and demands: no conflict.
    store(text() + "# seen\n");
    assertThat(server.post(at() + "/demands", form).statusCode()).isEqualTo(302);

    store(text().replace("to: 160", "to: 165"));
    HttpResponse<String> answer = server.post(at() + "/demands", typed);

    assertThat(answer.statusCode()).isEqualTo(409);
    assertThat(answer.body())
        .contains("Ada changed bands or demands meanwhile (revision " + revision() + ")")
        .contains("value=\"171\"")
        .contains("soft: 80 to 165 µmol");
    assertThat(text()).contains("to: 165");

    List<Map.Entry<String, String>> again = HtmlForm.fields(answer.body(), "/recommend/demands");
    assertThat(server.post(at() + "/demands", again).statusCode()).isEqualTo(302);
    assertThat(text()).contains("to: 171");
  }

  @Test
  @Order(9)
  @DisplayName("on the page Set up, what cannot be done is told there, and nothing typed is lost")
  void setUp() {
    String setup = "/bench/" + id + "/setup";
    HttpResponse<String> undo = server.post(setup + "/undo", Map.of("revision", "1"));
    assertThat(undo.statusCode()).isEqualTo(409);
    assertThat(undo.body())
        .contains("the setup was changed meanwhile")
        .contains("<h1>Set up</h1>")
        .contains("name=\"text\"");

    HttpResponse<String> nothing = server.post(setup + "/files", Map.of("folder", "my spectra"));
    assertThat(nothing.statusCode()).isEqualTo(422);
    assertThat(nothing.body())
        .contains("0 files were chosen; 1 to 50 can be taken at once")
        .contains("value=\"my spectra\"");

    HttpResponse<String> stale =
        server.post(setup, Map.of("revision", "1", "text", text() + "# mine\n"));
    assertThat(stale.statusCode()).isEqualTo(409);
    assertThat(stale.body()).contains("# mine").contains("saved another revision meanwhile");
  }
}
