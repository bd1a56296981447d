package parfield.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import parfield.web.work.Job;
import parfield.workspace.Result;

/** The report on the page Publish, over HTTP. */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class ReportPageTest {
  private static TestServer server;
  private static UUID id;

  @BeforeAll
  static void start(@TempDir java.nio.file.Path folder) throws Exception {
    server = TestServer.start(folder);
    id = server.sample();
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  private static void done(String kind) throws InterruptedException {
    for (int i = 0; i < 2400; i++) {
      Optional<Job> job = server.server().desk().jobs().latest(id, kind);
      if (job.map(Job::ended).orElse(false)) {
        assertThat(job.get().problem()).isEmpty();
        return;
      }
      Thread.sleep(50);
    }
    throw new IllegalStateException(kind + " did not end within two minutes");
  }

  private static String publish() {
    return server.get("/bench/" + id + "/publish").body();
  }

  private static int reports() {
    return server.workspace().results().list(id, Result.Kind.REPORT, 10).size();
  }

  @Test
  @Order(1)
  @DisplayName("without a recommendation that holds none is made, and the page says what to do")
  void wantsAdvice() {
    assertThat(publish()).contains("It wants a recommendation that holds for the bench as it is.");
    HttpResponse<String> refused = server.post("/bench/" + id + "/publish/report", Map.of());
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body())
        .contains("there is no recommendation that holds for this bench as it is")
        .contains("ask for one on the page Recommend");
    assertThat(reports()).isZero();
  }

  @Test
  @Order(2)
  @DisplayName("it tells the recommendation that is kept, found again by the same search")
  void sameNumbers() throws Exception {
    server.post("/bench/" + id + "/model/fit", Map.of());
    done("fit");
    server.post(
        "/bench/" + id + "/recommend/run",
        Map.of("counts", "2", "heights", "20, 26", "spacings", "55, 62", "depth", "20"));
    done("recommend");
    Result advice = server.workspace().results().list(id, Result.Kind.RECOMMENDATION, 1).get(0);
    String text = server.get("/bench/" + id + "/recommend/" + advice.id() + "/answer.txt").body();

    server.post("/bench/" + id + "/publish/report", Map.of());
    done("report");

    assertThat(server.workspace().results().list(id, Result.Kind.RECOMMENDATION, 10)).hasSize(1);
    Result report = server.workspace().results().list(id, Result.Kind.REPORT, 1).get(0);
    assertThat(report.inputs()).isEqualTo(advice.inputs());
    String page = server.get(file("report.html")).body();
    Matcher cells = Pattern.compile("<td class=\"number\">([^<]+)</td>").matcher(page);
    String answer = page.substring(0, page.indexOf("<h2>The light</h2>"));
    int compared = 0;
    cells.region(0, answer.length());
    while (cells.find()) {
      assertThat(text).contains(cells.group(1).replace("&gt;", ">").replace("&lt;", "<"));
      compared++;
    }
    assertThat(compared).isGreaterThan(10);
    assertThat(page).contains("the plane 20 cm deep", "from invented readings");
  }

  private static String file(String name) {
    Result report = server.workspace().results().list(id, Result.Kind.REPORT, 1).get(0);
    return "/bench/" + id + "/publish/report/" + report.id() + "/" + name;
  }

  @Test
  @Order(3)
  @DisplayName("the page brings its own style and the policy lets in just that; the paper is PDF")
  void files() {
    HttpResponse<String> page = server.get(file("report.html"));
    assertThat(page.headers().firstValue("Content-Security-Policy").orElseThrow())
        .contains("default-src 'none'", "style-src 'sha256-")
        .doesNotContain("unsafe-inline");
    assertThat(page.headers().allValues("Content-Security-Policy")).hasSize(1);
    HttpResponse<String> pdf = server.get(file("report-letter.pdf"));
    assertThat(pdf.headers().firstValue("Content-Type")).contains("application/pdf");
    assertThat(pdf.body().getBytes(StandardCharsets.UTF_8))
        .startsWith("%PDF-".getBytes(StandardCharsets.UTF_8));
    assertThat(server.get(file("report-a5.pdf")).statusCode()).isEqualTo(404);
    assertThat(
            server.get(file("report.html").replaceAll("report/[^/]+", "report/none")).statusCode())
        .isEqualTo(404);
    assertThat(publish()).contains("See it", "PDF, A4", "PDF, Letter", "Make it anew");
  }

  @Test
  @Order(4)
  @DisplayName("a report is old once the recommendation is")
  void old() {
    assertThat(publish()).doesNotContain("It is older than the recommendation");
    var setup = server.workspace().benches().setup(id);
    server
        .workspace()
        .benches()
        .saveSetup(
            id, setup.revision(), setup.text().replace("coverage: 0.65", "coverage: 0.6"), "Ada");
    assertThat(publish())
        .contains("It is older than the recommendation")
        .contains("It wants a recommendation that holds for the bench as it is.");
  }
}
