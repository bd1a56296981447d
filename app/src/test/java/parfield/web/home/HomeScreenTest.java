package parfield.web.home;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.TestServer;
import parfield.workspace.BenchSummary;

/** The list of benches: found by name, with their surveys, and what comes in as files. */
class HomeScreenTest {
  @TempDir private Path folder;
  private TestServer server;

  @BeforeEach
  void start() {
    server = TestServer.start(folder);
  }

  @AfterEach
  void stop() {
    server.close();
  }

  private UUID bench(String name) {
    return server.workspace().benches().create(name, false, "parfield: 1", Map.of(), "Ann").bench();
  }

  @Test
  @DisplayName(
      "surveys are found by their name, capitals and accents aside, and lead to their page")
  void surveys() {
    UUID bench = bench("Långtank");
    UUID survey = server.workspace().surveys().named(bench, "After dusk & \"mist\"").id();
    server.workspace().surveys().named(bench, "low");

    String found = server.get("/benches?search=DUSK").body();

    assertThat(found)
        .contains("0 benches with “DUSK” in the name")
        .contains("1 survey with “DUSK” in the name or in that of the bench")
        .contains("href=\"/bench/" + bench + "/measure/" + survey + "\"")
        .contains(">After dusk &amp; \"mist\"<")
        .doesNotContain(">low<");
    assertThat(server.get("/benches?search=lang").body())
        .contains("1 bench with")
        .contains("2 surveys with")
        .contains(">low<");
    assertThat(server.get("/benches").body()).doesNotContain("Surveys");
    server.workspace().benches().putAway(bench);
    assertThat(server.get("/benches?search=dusk").body()).contains("0 surveys with");
  }

  @Test
  @DisplayName("the pages of a search keep what was searched, whatever its letters")
  void pages() {
    for (int i = 0; i < 51; i++) {
      bench("50 % & more #" + i);
    }
    String first = server.get("/benches?search=50+%25+%26+more+%23").body();

    assertThat(first)
        .contains("51 benches with")
        .contains("href=\"/?search=50+%25+%26+more+%23&page=1\"");
    assertThat(server.get("/?search=50+%25+%26+more+%23&page=1").body()).contains("page 2 of 2");
    for (BenchSummary bench : server.workspace().benches().list("", 100, 0).items()) {
      server.workspace().benches().putAway(bench.id());
    }
    assertThat(server.get("/benches?search=&away=1").body())
        .contains("href=\"/?search=&amp;away=1&page=1\"");
  }

  @Test
  @DisplayName("what came in with a workspace is told, and what stayed as it was")
  void broughtIn() throws IOException {
    UUID bench = server.sample();
    Path archive = folder.resolve("all.zip");
    server.workspace().exportTo(archive);
    server.workspace().benches().rename(bench, "changed since");

    HttpResponse<String> answer =
        server.send(
            server
                .request("/workspace/import")
                .header("Origin", server.address(""))
                .header("Content-Type", "multipart/form-data; boundary=cut")
                .POST(BodyPublishers.ofByteArray(part(Files.readAllBytes(archive))))
                .build());

    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(answer.body())
        .contains("Brought in from &lt;all&gt;.zip")
        .contains("0 benches with 0 surveys, 0 readings and 0 models and recommendations")
        .contains("1 bench was here already and stayed as it is: whatever else the archive holds");
    assertThat(server.workspace().benches().get(bench).name()).isEqualTo("changed since");
  }

  private static byte[] part(byte[] content) throws IOException {
    ByteArrayOutputStream body = new ByteArrayOutputStream();
    String head =
        String.join(
            "\r\n",
            "--cut",
            "Content-Disposition: form-data; name=\"archive\"; filename=\"<all>.zip\"",
            "Content-Type: application/zip",
            "",
            "");
    body.write(head.getBytes(StandardCharsets.UTF_8));
    body.write(content);
    body.write("\r\n--cut--\r\n".getBytes(StandardCharsets.UTF_8));
    return body.toByteArray();
  }
}
