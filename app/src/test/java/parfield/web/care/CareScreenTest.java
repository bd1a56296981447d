package parfield.web.care;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.LocalTime;
import java.util.List;
import java.util.OptionalDouble;
import java.util.UUID;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.answer.AcclimationAnswer;
import parfield.answer.AskedDay;
import parfield.answer.Bench;
import parfield.answer.BenchFit;
import parfield.answer.PowerAnswer;
import parfield.care.DailyProgram;
import parfield.field.FastSolver;
import parfield.rig.Rig;
import parfield.web.TestServer;
import parfield.web.bench.Benches;
import parfield.web.bench.Desk;
import parfield.web.bench.OpenBench;

/** The page Care, over HTTP. */
class CareScreenTest {
  @TempDir private static Path folder;

  private static TestServer server;
  private static UUID id;
  private static Benches benches;
  private static OpenBench open;
  private static BenchFit fit;

  @BeforeAll
  static void fitOnce() {
    server = TestServer.start(folder);
    id = server.sample();
    benches = Desk.over(server.workspace(), "test").benches();
    open = benches.open(id);
    fit = BenchFit.of(open.bench().surveys(), new FastSolver());
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  private static String at(String rest) {
    return "/bench/" + id + "/care" + rest;
  }

  @Test
  void withoutAModelThePageSaysWhatToDoAndThenAnswersAsTheCommandLine() {
    HttpResponse<String> before = server.get(at(""));
    assertThat(before.statusCode()).isEqualTo(200);
    assertThat(before.body()).contains("a light model is needed").contains("aria-current=\"page\"");
    assertThat(server.get(at("/light.ics")).statusCode()).isEqualTo(404);

    benches.keepModel(open, fit.model(), "test");
    String page = server.get(at("?rig=high&lit=11:00-21:00&ramp=30min&tariff=0,30")).body();
    Bench bench = open.bench();
    Rig rig = bench.rig("high");
    DailyProgram program = AskedDay.program(rig, "11:00-21:00", "30min", List.of());
    PowerAnswer power =
        PowerAnswer.of("setup.yaml", fit.model(), rig, program, OptionalDouble.of(0.3), "");

    assertThat(page)
        .contains("Who can live where", "Signs to stop at", "Reminders only", "drip loops")
        .contains("value=\"11:00-21:00\"")
        .doesNotContain(" style=");
    power.figures().forEach(figure -> assertThat(page).contains(figure.value()));
    AcclimationAnswer.signs().forEach(sign -> assertThat(page).contains(sign));

    HttpResponse<String> ics =
        server.get(
            at("/light.ics?rig=high&lit=11:00-21:00&group=soft&first=2026-12-01&revision=4"));
    assertThat(ics.headers().firstValue("content-type")).hasValue("text/calendar; charset=utf-8");
    var events = Biweekly.parse(ics.body()).first().getEvents();
    assertThat(events).isNotEmpty();
    assertThat(events.get(0).getSequence().getValue()).isEqualTo(4);
    assertThat(server.get(at("/schedule.csv?rig=high&lit=11:00-21:00")).body())
        .startsWith("step,first_day,")
        .contains("," + LocalTime.of(11, 0) + ",");
    assertThat(server.get(at("/day.svg?rig=high&lit=11:00-21:00&ramp=30min&tariff=0,30")).body())
        .startsWith("<svg")
        .contains("PPFD through the day");

    String refused = server.get(at("?lit=late")).body();
    assertThat(refused)
        .contains("lamps are lit from a time to a time; got late")
        .contains("value=\"late\"");
  }
}
