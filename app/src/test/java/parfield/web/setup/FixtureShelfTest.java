package parfield.web.setup;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.lamp.Channel;
import parfield.lamp.IntensityDistribution;
import parfield.web.TestServer;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;
import parfield.workspace.Result;
import parfield.workspace.ShelfItem;

/** Fixtures on the shelf that all benches share. */
class FixtureShelfTest {
  @TempDir private static Path folder;
  private static TestServer server;

  /** A bench in inches with another spectrum of the same name, and a fixture of the same name. */
  private static final String OTHER =
      """
      parfield: 1
      length: in
      tank: {length: 40, width: 20, water: 20}   # small
      fixtures:
        bar:
          emitters: [{x: 0, y: 0}]
          channels: {blue: {spectrum: spectra/blue.csv}}
      rigs:
        only: {hang: [{fixture: bar, x: 20, y: 10, height: 8}]}
      """;

  @BeforeAll
  static void start() {
    server = TestServer.start(folder);
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  private static HttpResponse<String> shelve(UUID bench) {
    return server.post(
        "/bench/" + bench + "/setup/form",
        Map.of("revision", "1", "unit", "cm", "do", "shelve:/fixtures/bar"));
  }

  private static OpenBench open(UUID bench) {
    return desk().benches().open(bench);
  }

  private static Desk desk() {
    return Desk.over(server.workspace(), "test");
  }

  private static UUID other() {
    return server
        .workspace()
        .benches()
        .create(
            "Other",
            false,
            OTHER,
            Map.of(
                "spectra/blue.csv",
                "wavelength_nm,relative_photon_flux\n400,1\n420,1\n440,1\n460,1\n480,1\n500,1\n520,1\n540,1\n560,1\n580,1\n600,1\n620,1\n640,1\n660,1\n680,1\n700,1\n"
                    .getBytes(StandardCharsets.UTF_8)),
            "test")
        .bench();
  }

  @Test
  @DisplayName(
      "a fixture goes to another bench with its files, in that one's unit, under free names")
  void carried() {
    UUID sample = server.sample();
    assertThat(shelve(sample).headers().firstValue("Location").orElse("")).endsWith("#shelf");
    UUID other = other();
    assertThat(server.get("/bench/" + other + "/setup").body())
        .contains("Take bar into this bench");

    HttpResponse<String> answer =
        server.post(
            "/bench/" + other + "/setup/shelf/take", Map.of("revision", "1", "name", "bar"));

    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(302);
    OpenBench taken = open(other);
    assertThat(taken.text())
        .startsWith(OTHER.substring(0, OTHER.indexOf("rigs:")))
        .contains("  bar 2:\n    length: 17.3228\n")
        .contains("spectra/blue-2.csv")
        .contains("output: {0: 0, 50: 0.42, 100: 1}");
    assertThat(taken.files().keySet())
        .containsExactlyInAnyOrder(
            "spectra/blue.csv", "spectra/blue-2.csv", "spectra/white.csv", "spectra/violet.csv");
    assertThat(taken.files().get("spectra/blue-2.csv"))
        .isEqualTo(open(sample).files().get("spectra/blue.csv"));
    assertThat(taken.setup().orElseThrow().fixtures().get("bar 2").emitters().get(0).x())
        .isCloseTo(-0.165, within(3e-6));

    server.post("/bench/" + other + "/setup/shelf/remove", Map.of("name", "bar"));
    assertThat(server.workspace().shelf().list(ShelfItem.Kind.FIXTURE, "", 9, 0).items()).isEmpty();
  }

  @Test
  @DisplayName("with its fitted light a fixture shines in another bench as the model says")
  void fitted() throws InterruptedException {
    UUID sample = server.sample();
    server.post("/bench/" + sample + "/model/fit", Map.of());
    for (int i = 0; i < 1200; i++) {
      if (!server.workspace().results().list(sample, Result.Kind.MODEL, 1).isEmpty()) {
        break;
      }
      Thread.sleep(100);
    }
    shelve(sample);
    UUID other = other();

    HttpResponse<String> answer =
        server.post(
            "/bench/" + other + "/setup/shelf/take",
            Map.of("revision", "1", "name", "bar", "fitted", "yes"));

    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(302);
    var fixture = open(other).setup().orElseThrow().fixtures().get("bar 2");
    var truth = desk().benches().model(open(sample)).orElseThrow().model().best();
    for (int c = 0; c < fixture.channels().size(); c++) {
      Channel channel = fixture.channels().get(c);
      IntensityDistribution model = truth.distributions().get("bar").get(c);
      double peak = model.intensity(0, 0);
      // Between the nodes of the table: what is straight there differs from the lobe by less than
      // 0.5 % of its peak.
      for (double gamma = 0.5; gamma < 90; gamma += 7.3) {
        for (double azimuth = 4; azimuth < 360; azimuth += 37) {
          assertThat(
                  channel
                      .distribution()
                      .orElseThrow()
                      .intensity(Math.toRadians(gamma), Math.toRadians(azimuth)))
              .as("%s at %s, %s", channel.name(), gamma, azimuth)
              .isCloseTo(
                  model.intensity(Math.toRadians(gamma), Math.toRadians(azimuth)),
                  within(0.005 * peak));
        }
      }
    }
    assertThat(server.get("/bench/" + other + "/explore").statusCode()).isEqualTo(200);
  }

  @Test
  @DisplayName("fitted light that does not lie there is not taken")
  void notFitted() {
    UUID sample = server.sample();
    server
        .workspace()
        .shelf()
        .put(
            ShelfItem.Kind.FIXTURE,
            "plain",
            "length: cm\nfixtures: {plain: {emitters: [{x: 0, y: 0}], channels: {all: {}}}}\n",
            Map.of(),
            "test");
    HttpResponse<String> answer =
        server.post(
            "/bench/" + sample + "/setup/shelf/take",
            Map.of("revision", "1", "name", "plain", "fitted", "yes"));
    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).contains("no fitted light of plain lies on the shelf");
    assertThat(
            server
                .post(
                    "/bench/" + sample + "/setup/shelf/take",
                    Map.of("revision", "1", "name", "nothing"))
                .statusCode())
        .isEqualTo(404);
  }
}
