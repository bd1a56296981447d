package parfield.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said where nothing is, and where too much comes. */
class ProblemPageTest {
  @TempDir private static Path folder;
  private static TestServer server;

  @BeforeAll
  static void start() {
    server = TestServer.start(folder);
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  @Test
  @DisplayName("a page that is not there: which, and where to begin")
  void nowhere() {
    HttpResponse<String> page = server.get("/nothing/%3Ci%3E");
    assertThat(page.statusCode()).isEqualTo(404);
    assertThat(page.body())
        .contains("<h1>there is no page at /nothing/%3Ci%3E</h1>")
        .contains("check the address, or begin at the list of benches, /")
        .contains("href=\"/\">To the benches")
        .doesNotContain("Endpoint");

    HttpResponse<String> json = server.send(server.request("/nothing").GET().build());
    assertThat(json.statusCode()).isEqualTo(404);
    assertThat(json.headers().firstValue("Content-Type")).hasValue("application/problem+json");
    assertThat(json.body()).contains("\"title\":\"there is no page at /nothing\"");

    HttpResponse<String> sent = server.post("/nothing", Map.of());
    assertThat(sent.statusCode()).isEqualTo(404);
    assertThat(sent.body()).contains("<h1>nothing is taken at /nothing</h1>");

    HttpResponse<String> longest = server.get("/" + "x".repeat(2000));
    assertThat(longest.body()).contains("x".repeat(119) + "…</h1>").doesNotContain("x".repeat(121));
  }

  @Test
  void noSuchThing() {
    HttpResponse<String> bench = server.get("/bench/" + UUID.randomUUID() + "/setup");
    assertThat(bench.statusCode()).isEqualTo(404);
    HttpResponse<String> nonsense = server.get("/bench/nonsense/setup");
    assertThat(nonsense.statusCode()).isEqualTo(404);
    assertThat(nonsense.body())
        .contains("there is no such bench")
        .contains("begin at the list of benches, /");
    HttpResponse<String> script = server.send(server.request("/scripts/nothing.js").GET().build());
    assertThat(script.statusCode()).isEqualTo(404);
    assertThat(script.body()).contains("there is no page at /scripts/nothing.js");
  }

  @Test
  @DisplayName("a text nested a hundred thousand deep is refused, and stays on the page")
  void deep() {
    UUID id = server.sample();
    String deep = "tank: " + "[".repeat(100_000);

    HttpResponse<String> answer =
        server.post("/bench/" + id + "/setup", Map.of("revision", "1", "text", deep));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("nesting: got more, allowed 20 levels").contains(deep);
    assertThat(server.get("/bench/" + id + "/setup").statusCode()).isEqualTo(200);
  }

  @Test
  @DisplayName("aliases that repeat each other without end are refused")
  void bomb() {
    UUID id = server.sample();
    StringBuilder text = new StringBuilder("a: &a [1, 1, 1, 1, 1, 1, 1, 1, 1]\n");
    for (char c = 'b'; c < 'k'; c++) {
      text.append(c + ": &" + c + " [" + ("*" + (char) (c - 1) + ", ").repeat(9) + "1]\n");
    }

    HttpResponse<String> answer =
        server.post("/bench/" + id + "/setup", Map.of("revision", "1", "text", text.toString()));

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("number of aliases: got more, allowed 50");
  }

  @Test
  void tooLarge() {
    UUID id = server.sample();
    HttpResponse<String> answer =
        server.send(
            server
                .request("/bench/" + id + "/setup")
                .header("Origin", server.server().address())
                .header("Accept", "text/html")
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(BodyPublishers.ofString("revision=1&text=" + "x".repeat(65 << 20)))
                .build());

    assertThat(answer.statusCode()).isEqualTo(413);
    assertThat(answer.body()).contains("larger than 64 MiB");
  }
}
