package parfield.web.setup;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parfield.demo.DemoBench;
import parfield.web.TestServer;

/** Rocks in the setup's form, sent as a browser sends them. */
class RocksFormTest {
  private static final String SETUP = DemoBench.files(1).get(DemoBench.SETUP);
  private static final String ROCK = "/tank/aquascape/rock";

  @TempDir private static Path folder;
  private static TestServer server;
  private UUID id;

  @BeforeAll
  static void start() {
    server = TestServer.start(folder);
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  @BeforeEach
  void bench() {
    id = server.sample();
  }

  private HttpResponse<String> send(String button, String... fields) {
    Map<String, String> form = new LinkedHashMap<>();
    form.put("revision", String.valueOf(server.workspace().benches().get(id).revision()));
    form.put("unit", "cm");
    form.put("do", button);
    for (int i = 0; i < fields.length; i += 2) {
      form.put(fields[i], fields[i + 1]);
    }
    return server.post("/bench/" + id + "/setup/form", form);
  }

  private String stored() {
    return server.workspace().benches().setup(id).text();
  }

  @Test
  @DisplayName("a rock is added, moved, made an ellipsoid, renamed and taken away again")
  void life() {
    assertThat(send("add:/tank/aquascape").statusCode()).isEqualTo(302);
    assertThat(stored())
        .contains(
            "aquascape: {rock: {box: {length: 24, width: 16.5, height: 15}, x: 60, y: 27.5}}");

    HttpResponse<String> changed =
        send(
            "save",
            "shape:" + ROCK,
            "ellipsoid",
            "name:" + ROCK,
            "heap",
            ROCK + "/box/height",
            "0,2 m",
            ROCK + "/x",
            "41",
            ROCK + "/above bottom",
            "−3",
            ROCK + "/yaw",
            "30°",
            ROCK + "/reflectance",
            "20 %");
    assertThat(changed.statusCode()).as(changed.body()).isEqualTo(302);
    assertThat(stored())
        .contains(
            "aquascape: {heap: {ellipsoid: {length: 24, width: 16.5, height: 20}, x: 41, y: 27.5,"
                + " above bottom: -3, yaw: 30, reflectance: 0.2}}");
    assertThat(server.get("/bench/" + id + "/setup").body()).contains("ellipsoid, 24 × 16.5 × 20");

    assertThat(send("remove:/tank/aquascape/heap").statusCode()).isEqualTo(302);
    assertThat(stored()).isEqualTo(SETUP);
  }

  @ParameterizedTest(name = "{0}: {1}")
  @DisplayName("what no rock can be is told, and not stored")
  @CsvSource(
      delimiter = '|',
      value = {
        "/tank/aquascape/rock/box/length | big | big is no number",
        "/tank/aquascape/rock/box/height | 0 | above 0",
        "/tank/aquascape/rock/x | 4o | o is no unit of length here",
        "/tank/aquascape/rock/x | 500 | move it into the water",
        "/tank/aquascape/rock/yaw | 400 | 360",
        "/tank/aquascape/rock/reflectance | 1 | below 1",
        "shape:/tank/aquascape/rock | sphere | sphere is no shape of a rock here: choose box or"
            + " ellipsoid",
        "name:/tank/aquascape/rock | '' | a name cannot be empty",
      })
  void refused(String field, String typed, String told) {
    send("add:/tank/aquascape");
    String before = stored();

    HttpResponse<String> answer = send("save", field, typed);

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains(told).contains("nothing was stored");
    assertThat(stored()).isEqualTo(before);
  }
}
