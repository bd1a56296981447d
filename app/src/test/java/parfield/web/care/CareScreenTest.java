package parfield.web.care;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
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
import parfield.answer.FieldPrediction;
import parfield.answer.HomesAnswer;
import parfield.answer.Numbers;
import parfield.answer.PowerAnswer;
import parfield.care.CoralGroup;
import parfield.care.DailyProgram;
import parfield.care.Livestock;
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
    String bare = "/bench/" + server.sample() + "/care";
    HttpResponse<String> before = server.get(bare);
    assertThat(before.statusCode()).isEqualTo(200);
    assertThat(before.body()).contains("a light model is needed").contains("aria-current=\"page\"");
    assertThat(server.get(bare + "/light.ics").statusCode()).isEqualTo(404);

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

    CoralGroup group = Livestock.with(bench.setup().livestock()).get("soft");
    HomesAnswer homes =
        HomesAnswer.of(
                "setup.yaml", fit.model(), new FastSolver(), rig, program, List.of(group), 3, 3)
            .withPlanes(fit.model(), new FastSolver(), List.of(.3), FieldPrediction.CELL)
            .withSection(fit.model(), new FastSolver(), FieldPrediction.CELL);
    String asked = "?rig=high&lit=11:00-21:00&ramp=30min&maps=30,0+cm&group=soft";
    assertThat(server.get(at(asked)).body())
        .contains(homes.planes().get(0).standing(group))
        .contains(homes.planes().get(0).doses())
        .contains(homes.section().orElseThrow().standing(group))
        .contains(Numbers.percent(homes.wholes().get(0).byDose()));
    assertThat(server.get(at("/homes.svg" + asked)).body())
        .contains("<title>Homes for soft under high, 30 cm deep</title>");
    assertThat(server.get(at("/section.svg" + asked)).body())
        .contains("<title>Homes for soft under high, section 27.5 cm from the front pane</title>");
  }

  @Test
  void faultsStandBesideTheirFieldsAndNothingTypedIsLost() {
    benches.keepModel(open, fit.model(), "test");
    String typed = "x".repeat(500);
    String page =
        server
            .get(
                at(
                    "?lit=late&ramp=90&x=400&y=&maps=20+in&had=1,000&tariff=-3&revision=1.5"
                        + "&first=soon&group=nobody&channels=violet%3D09:00-10:00@1.2.3&currency="
                        + typed))
            .body();

    assertThat(page)
        .contains("Nothing was worked out yet. To mend:")
        .contains(fault("lit", "lamps are lit from a time to a time; got late: write it as in"))
        .contains(fault("ramp", "a ramp lasts hours and minutes; got 90: write 1h, 90min"))
        .contains(fault("channels", "a channel's day cannot be read: violet=09:00-10:00@1.2.3"))
        .contains(fault("x", "400 cm lies outside the tank, which ends at 120 cm: type a length"))
        .contains(fault("y", "y of the place is empty: type one, as in 12.5 or 12,5"))
        .contains(fault("maps", "lengths are in cm here; got 20 in: type the number in cm"))
        .contains(fault("group", "nobody is no group of corals: choose one of the list"))
        .contains(fault("had", "1,000 may mean 1000 or 1.000: type the one you mean"))
        .contains(fault("first", "the first day cannot be read; got soon: write it as in"))
        .contains(fault("tariff", "-3 is no number of 0 or more: type one"))
        .contains(fault("currency", "what is typed here is too long: 500 letters, at most 400"))
        .contains(fault("revision", "a revision is a whole number from 0 to 1000000; got 1.5"))
        .contains("value=\"late\"", "value=\"20 in\"", "value=\"" + typed + "\"")
        .contains("<a href=\"#lit\">", "id=\"lit\"")
        .doesNotContain("Who can live where");

    // What only a part needs leaves the rest of the page.
    assertThat(server.get(at("?tariff=much")).body())
        .contains("A part could not be worked out. To mend:")
        .contains(fault("tariff", "much is no number of 0 or more"))
        .contains("Who can live where");
    assertThat(server.get(at("?lit=10:00-11:00&ramp=1h")).body())
        .contains(fault("ramp", "channel blue is lit for 1 h, which is shorter than its ramps"));
  }

  @Test
  void thePageBeginsWithTheSetupsOwnDayAndItsModelStays() {
    String id = server.sample().toString();
    UUID bench = UUID.fromString(id);
    benches.keepModel(benches.open(bench), fit.model(), "test");
    OpenBench stored = benches.open(bench);
    HttpResponse<String> kept =
        server.post(
            "/bench/" + id + "/setup",
            Map.of(
                "revision",
                Long.toString(stored.revision()),
                "text",
                stored.text()
                    + "\nday: {lit: 08:30-19:00, ramp: 90min, channels: {violet: 07:00-21:00/2h@60}}\n"));
    assertThat(kept.statusCode()).isLessThan(400);

    assertThat(server.get("/bench/" + id + "/care").body())
        .contains("value=\"08:30-19:00\"", "value=\"90min\"", "violet=07:00-21:00/2h@60</textarea>")
        .contains("Who can live where")
        .doesNotContain("older than the setup");
  }

  /** The words of a fault as they stand beside its field. */
  private static String fault(String field, String words) {
    return "<p class=\"fault\" id=\"fault-" + field + "\">" + words;
  }
}
