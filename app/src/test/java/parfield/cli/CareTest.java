package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import biweekly.Biweekly;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.care.Caution;

/** The commands that carry a rig's light into the days of a tank. */
class CareTest {
  @TempDir private static Path folder;

  private static Path setup;
  private static Path model;

  @BeforeAll
  static void fitOnce() {
    setup = Run.bench(folder);
    model = folder.resolve("model.json");
    Run.parfield("fit", setup, "--out", model);
  }

  private static Run answered(String command, Object... more) {
    Object[] args = new Object[more.length + 6];
    args[0] = command;
    args[1] = setup;
    args[2] = "--model";
    args[3] = model;
    args[4] = "--rig";
    args[5] = "low";
    System.arraycopy(more, 0, args, 6, more.length);
    Run run = Run.parfield(args);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    return run;
  }

  private static JsonNode json(Run run) throws IOException {
    JsonNode json = new ObjectMapper().readTree(run.out());
    Set<String> keys = new TreeSet<>();
    collect(json, keys);
    // Names of dials are the bench's own.
    keys.remove("white");
    String page = Files.readString(Path.of("../docs/COMMANDS.md"));
    assertThat(keys)
        .allSatisfy(
            key ->
                assertThat(page)
                    .as("key %s", key)
                    .containsPattern("[`\"]" + Pattern.quote(key) + "[`\"]"));
    return json;
  }

  private static void collect(JsonNode node, Set<String> keys) {
    node.fieldNames().forEachRemaining(keys::add);
    node.forEach(child -> collect(child, keys));
  }

  @Test
  void theDayIsTheFieldTimesItsHours() throws IOException {
    JsonNode day =
        json(
            answered(
                "day",
                "--at",
                "22.5,20,15",
                "--lit",
                "08:00-18:00",
                "--ramp",
                "2h",
                "--depth",
                "15",
                "--json"));
    Path places = folder.resolve("place.csv");
    Run.write(places, "x_cm,y_cm,depth_cm\n22.5,20,15\n");
    JsonNode field = new ObjectMapper().readTree(answered("field", "--at", places, "--json").out());
    double ppfd = field.at("/places/0/ppfd_umol_m2_s").asDouble();

    assertThat(day.at("/peak_umol_m2_s/value").asDouble()).isCloseTo(ppfd, within(.01));
    assertThat(day.at("/peak_umol_m2_s/low").asDouble())
        .isCloseTo(field.at("/places/0/low_with_meter_scale_umol_m2_s").asDouble(), within(.01));
    // White's output curve is straight on this bench: ramps count half.
    assertThat(day.at("/dli_mol_m2_d/value").asDouble())
        .isCloseTo(.0036 * ppfd * (6 + .5 * 4), within(.001));
    assertThat(day.at("/photoperiod_min").asInt()).isEqualTo(600);
    assertThat(day.at("/planes/0/dose_suits")).hasSize(6);
  }

  @Test
  void aLongDayIsToldToBeTooMuch() {
    assertThat(
            answered("day", "--at", "22.5,20,35", "--lit", "04:00-22:00", "--group", "small polyps")
                .out())
        .contains("Who could live there\n  - small polyps: ")
        .contains("common practice, no source")
        .contains("Cautions\n  - Animals");
  }

  @Test
  void homesAddUpAndNameTheirSource() throws IOException {
    JsonNode homes = json(answered("homes", "--layers", "2", "--parts", "1", "--json"));

    // Two layers, all the water, rocks and bottom: six groups in each.
    assertThat(homes.at("/homes")).hasSize(4 * 6);
    homes
        .at("/homes")
        .forEach(
            home -> {
              double both = home.at("/fits/value").asDouble();
              assertThat(both).isLessThanOrEqualTo(home.at("/fits_by_ppfd/value").asDouble());
              assertThat(both).isLessThanOrEqualTo(home.at("/fits_by_dli/value").asDouble());
            });
    homes
        .at("/homes")
        .forEach(home -> assertThat(home.at("/fits/value").asDouble()).isBetween(0.0, 1.0));
    assertThat(homes.at("/groups/0/confidence").asText()).isEqualTo("low");
  }

  @Test
  void homesAreMappedByGroupAndDepthAndTheirSharesAddUp() throws IOException {
    Path map = folder.resolve("homes.svg");
    Path section = folder.resolve("upright.svg");
    JsonNode homes =
        json(
            answered(
                "homes",
                "--group",
                "soft",
                "--group",
                "small polyps",
                "--depth",
                "15,30",
                "--svg",
                map,
                "--section",
                section,
                "--json"));

    assertThat(homes.at("/planes")).hasSize(2);
    for (JsonNode plane :
        List.of(homes.at("/planes/0"), homes.at("/planes/1"), homes.at("/section"))) {
      for (JsonNode standing : plane.at("/standings")) {
        double sum = 0;
        for (JsonNode share : standing.at("/shares")) {
          sum += share.at("/share").asDouble();
        }
        assertThat(sum).isCloseTo(1, within(1e-3));
      }
    }
    assertThat(homes.at("/files")).hasSize(6);
    assertThat(folder.resolve("homes-small-polyps-30.svg"))
        .content()
        .contains(
            "<title>Homes for small polyps under low, 30 cm deep</title>",
            "<desc>For small polyps, by area: home ");
    assertThat(folder.resolve("upright-soft.svg"))
        .content()
        .contains("<title>Homes for soft under low, section 20 cm from the front pane</title>");
    assertThat(refused("homes", "--svg", map))
        .isEqualTo(
            Run.refused(
                "parfield: --svg maps homes on a plane; no --depth was given", "  add --depth 15"));
  }

  @Test
  void theDoseIsMappedOnOneScaleWithItsIntervals() throws IOException {
    Path map = folder.resolve("dose.svg");
    JsonNode day = json(answered("day", "--depth", "15,30", "--map", map, "--json"));
    JsonNode mean = day.at("/planes/1/mean_dli_mol_m2_d");

    assertThat(day.at("/planes/1/least_dli_mol_m2_d/value").asDouble())
        .isLessThan(mean.at("/value").asDouble());
    assertThat(day.at("/planes/1/most_dli_mol_m2_d/value").asDouble())
        .isGreaterThan(mean.at("/value").asDouble());
    String shallow = Files.readString(folder.resolve("dose-15.svg"));
    String deep = Files.readString(folder.resolve("dose-30.svg"));
    assertThat(deep)
        .contains("DLI, mol m⁻² d⁻¹", "<title>Daily light integral under low, 30 cm deep</title>")
        .contains(
            String.format(
                Locale.ROOT,
                "<desc>Mean %.1f (%.1f–%.1f), from",
                mean.at("/value").asDouble(),
                mean.at("/low").asDouble(),
                mean.at("/high").asDouble()));
    // One colour bar for both: the same last words after the axes.
    assertThat(bar(deep)).isEqualTo(bar(shallow)).isNotEmpty();
  }

  private static List<String> bar(String svg) {
    return Pattern.compile(">([0-9.]+)</text>")
        .matcher(svg.substring(svg.indexOf("DLI, mol")))
        .results()
        .map(match -> match.group(1))
        .toList();
  }

  @Test
  void stepsReachTheRigsOwnDials() throws IOException {
    Path csv = folder.resolve("steps.csv");
    JsonNode plan =
        json(
            answered(
                "acclimate",
                "--had-ppfd",
                "100",
                "--known",
                "measured",
                "--at",
                "22.5,20,15",
                "--first",
                "2026-12-01",
                "--csv",
                csv,
                "--json"));
    JsonNode steps = plan.at("/steps");

    assertThat(steps.get(0).at("/from").asText()).isEqualTo("2026-12-01");
    assertThat(steps.get(0).at("/peak_umol_m2_s/high").asDouble()).isLessThanOrEqualTo(100.01);
    assertThat(steps.get(steps.size() - 1).at("/light").asDouble()).isEqualTo(1);
    assertThat(plan.at("/maintenance/0/factor").asDouble()).isEqualTo(1);
    assertThat(csv).content().startsWith("step,first_day,last_day,fixture,channel,");
    assertThat(Files.readAllLines(csv)).hasSize(steps.size() + 1);
  }

  @Test
  void theCalendarIsReadByAnotherLibrary() throws IOException {
    Path out = folder.resolve("light.ics");
    JsonNode answer =
        json(
            answered(
                "calendar",
                "--group",
                "soft",
                "--at",
                "22.5,20,15",
                "--first",
                "2026-12-01",
                "--out",
                out,
                "--revision",
                "2",
                "--clean-every",
                "28",
                "--json"));
    var calendar = Biweekly.parse(Files.readString(out)).first();

    assertThat(calendar.getEvents()).hasSize(answer.at("/reminders").size());
    assertThat(calendar.getEvents())
        .allSatisfy(
            event ->
                assertThat(event.getDescription().getValue())
                    .contains("\n" + Caution.EYES.inWords() + "."))
        .anySatisfy(
            event -> {
              assertThat(event.getSummary().getValue()).startsWith("Light step 1");
              assertThat(event.getDescription().getValue())
                  .contains("\n" + Caution.ANIMALS.inWords() + ".")
                  .contains("\n" + Caution.ELECTRICITY.inWords() + ".");
            });
    assertThat(calendar.getEvents().get(0).getSequence().getValue()).isEqualTo(2);
    assertThat(answered("calendar", "--out", out).out())
        .contains("Reminders only: no fixture is driven");
  }

  @Test
  void theSetupsOwnDayIsTakenWhereNoOptionSaysOtherwise(@TempDir Path own) throws IOException {
    Path stated = Run.bench(own);
    Run.write(
        stated,
        Files.readString(stated)
            + "day: {lit: 08:00-20:00, ramp: 2h, channels: {white: 06:00-12:00/30min@50}}\n");

    assertThat(program(stated, own))
        .isEqualTo(
            "white: 06:00 to 12:00, up in 30 min, there for 5 h, down in 30 min, at 50 % of what"
                + " the rig dials");
    assertThat(program(stated, own, "--channel", "white=09:00-21:00"))
        .startsWith("white: 09:00 to 21:00, up in 2 h, there for 8 h,");
    Run.write(
        stated, Files.readString(stated).replace(", channels: {white: 06:00-12:00/30min@50}", ""));
    assertThat(program(stated, own)).startsWith("white: 08:00 to 20:00, up in 2 h,");
    assertThat(program(stated, own, "--lit", "11:00-21:00", "--ramp", "0"))
        .startsWith("white: 11:00 to 21:00, up in 0 h, there for 10 h,");
  }

  private static String program(Path stated, Path own, String... more) throws IOException {
    List<Object> all =
        new ArrayList<>(
            List.of("calendar", stated, "--rig", "low", "--out", own.resolve("day.ics"), "--json"));
    all.addAll(List.of(more));
    Run run = Run.parfield(all.toArray());
    assertThat(run.err()).isEmpty();
    return new ObjectMapper().readTree(run.out()).at("/program/0").asText();
  }

  @Test
  void whatCannotBeDoneIsRefusedWithACure() {
    assertThat(refused("day", "--lit", "10 to 20"))
        .isEqualTo(
            Run.refused(
                "parfield: lamps are lit from a time to a time; got 10 to 20",
                "  write it as in 10:00-20:00"));
    assertThat(refused("day", "--channel", "whit=09:00-10:00"))
        .isEqualTo(Run.refused("parfield: whit is no channel of rig low", "  did you mean white?"));
    assertThat(refused("day", "--lit", "10:00-12:00", "--ramp", "90min"))
        .isEqualTo(
            Run.refused(
                "parfield: channel white is lit for 2 h, which is shorter than its ramps of 90 min"
                    + " and 90 min",
                "  make the ramps shorter or the day longer"));
    assertThat(refused("acclimate"))
        .isEqualTo(
            Run.refused(
                "parfield: it is not known what light the coral had",
                "  state --had-ppfd or --had-dli, or its --group, of which the low end is taken"
                    + " then"));
    assertThat(refused("homes", "--group", "softt"))
        .isEqualTo(Run.refused("parfield: softt is no group of corals", "  did you mean soft?"));
    assertThat(refused("day", "--at", "10,10"))
        .isEqualTo(
            Run.refused(
                "parfield: a place is x, y and depth: three lengths; got 2",
                "  write it as in --at 45,30,20"));
  }

  private static Run refused(String command, Object... more) {
    Object[] args = new Object[more.length + 6];
    System.arraycopy(
        new Object[] {command, setup, "--model", model, "--rig", "low"}, 0, args, 0, 6);
    System.arraycopy(more, 0, args, 6, more.length);
    return Run.parfield(args);
  }
}
