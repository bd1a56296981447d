package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands that compute, on one small bench and one model of it. */
class FitFieldRecommendTest {
  @TempDir private static Path folder;

  private static Path setup;
  private static Path model;
  private static Run fit;

  @BeforeAll
  static void fitOnce() {
    setup = Run.bench(folder);
    model = folder.resolve("model.json");
    fit = Run.parfield("fit", setup, "--out", model);
  }

  private static JsonNode json(String text) throws IOException {
    return new ObjectMapper().readTree(text);
  }

  private static Run answered(Object... args) {
    Run run = Run.parfield(args);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    return run;
  }

  @Test
  void fitTellsWhatItFoundAndLeavesTheModel() {
    assertThat(fit.err()).isEmpty();
    assertThat(fit.code()).isZero();
    assertThat(fit.out())
        .startsWith(
            """
            Measured: 32 readings in 2 surveys
              - low: 16 readings with 1 fixture 15 cm high; meter probe, scale error 5 %, repeat error 2 %
              - high: 16 readings with 1 fixture 25 cm high; meter probe, scale error 5 %, repeat error 2 %
            """)
        .contains("clear share of the left pane")
        .contains("predicted while held out")
        .contains("What the readings tell\n")
        .endsWith("The model is in " + model + ".\n");
    assertThat(model).isNotEmptyFile();
  }

  @Test
  void fitAnswersInJson() throws IOException {
    Path other = folder.resolve("other.json");
    JsonNode json = json(answered("fit", setup, "--out", other, "--json").out());

    assertThat(json.fieldNames())
        .toIterable()
        .containsExactly(
            "model",
            "measured",
            "relative_residual",
            "conditions",
            "cross_validation",
            "statements",
            "misfits");
    assertThat(json.get("model").asText()).isEqualTo(other.toString());
    assertThat(json.at("/measured/0/readings").asInt()).isEqualTo(16);
    assertThat(json.at("/conditions/0/fitted/low").asDouble())
        .isLessThanOrEqualTo(json.at("/conditions/0/fitted/high").asDouble());
    assertThat(Files.readString(other)).isEqualTo(Files.readString(model));
  }

  @Test
  void fieldGivesValuesWithBothIntervalsOnStandardOutput() {
    List<String> lines =
        answered("field", setup, "--model", model, "--rig", "high", "--depth", "15")
            .out()
            .lines()
            .toList();

    assertThat(lines.get(0))
        .isEqualTo("x_cm,y_cm,depth_cm,ppfd,low,high,low_with_meter_scale,high_with_meter_scale");
    assertThat(lines).hasSize(1 + 24 * 16);
    assertThat(lines.get(1)).startsWith("1.25,1.25,15,");
    double shown = 0;
    double scaled = 0;
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",");
      double ppfd = Double.parseDouble(cells[3]);
      assertThat(ppfd).isBetween(Double.parseDouble(cells[4]), Double.parseDouble(cells[5]));
      shown += Double.parseDouble(cells[5]) - Double.parseDouble(cells[4]);
      scaled += Double.parseDouble(cells[7]) - Double.parseDouble(cells[6]);
    }
    assertThat(scaled).as("widths with the meter's scale error").isGreaterThan(shown);
  }

  @Test
  void rocksCastShadowsAndTheirCellsAreLeftOut() throws IOException {
    Path rocky =
        Files.writeString(
            setup.resolveSibling("rocky.yaml"),
            Files.readString(setup)
                .replace(
                    "  surface: still\n",
                    """
                      surface: still
                      aquascape:
                        block: {box: {length: 20, width: 20, height: 20}, x: 15, y: 20}
                    """));
    Path map = folder.resolve("rocky.svg");
    Path csv = folder.resolve("rocky.csv");
    Run run =
        answered(
            "field", rocky, "--model", model, "--rig", "high", "--depth", "30", "--csv", csv,
            "--svg", map);
    assertThat(run.out()).startsWith("Light of rig high of rocky.yaml at 320 places\n");
    assertThat(Files.readString(map)).contains(">rock<");
    List<String> clear =
        answered("field", setup, "--model", model, "--rig", "high", "--depth", "30")
            .out()
            .lines()
            .toList();
    double before = 0;
    double after = 0;
    List<String> lines = Files.readAllLines(csv);
    assertThat(lines).hasSize(1 + 24 * 16 - 8 * 8);
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",");
      String place = String.join(",", List.of(cells).subList(0, 3)) + ",";
      String same =
          clear.stream().filter(other -> other.startsWith(place)).findFirst().orElseThrow();
      // Left of the block, away from the lamp in the middle.
      if (Double.parseDouble(cells[0]) < 5 && Math.abs(Double.parseDouble(cells[1]) - 20) < 5) {
        after += Double.parseDouble(cells[3]);
        before += Double.parseDouble(same.split(",")[3]);
      }
    }
    assertThat(after).isBetween(0.01 * before, 0.6 * before);

    Path inside = Files.writeString(folder.resolve("in.csv"), "x_cm,y_cm,depth_cm\n15,20,30\n");
    assertThat(
            Run.parfield("field", rocky, "--model", model, "--rig", "high", "--at", inside).err())
        .contains("in.csv:2: place: got x 15, y 20, depth 30 cm, inside rock block");

    String answer = answered("recommend", rocky, "--model", model).out();
    assertThat(answer).contains("the living surface");
    JsonNode figures =
        json(answered("recommend", rocky, "--model", model, "--json").out())
            .at("/options/0/figures");
    assertThat(figures).extracting(of -> of.get("of").asText()).contains("living surface");
  }

  @Test
  void fieldNearAReadingIsNearTheReading() throws IOException {
    Path places = Files.writeString(folder.resolve("at.csv"), "x_cm,y_cm,depth_cm\n22.5,20,15\n");

    JsonNode json =
        json(
            answered("field", setup, "--model", model, "--rig", "low", "--at", places, "--json")
                .out());

    // The reading there was 379, with 2 % repeat error.
    assertThat(json.at("/places/0/ppfd_umol_m2_s").asDouble()).isCloseTo(379, within(0.06 * 379));
    assertThat(json.at("/places/0/x_cm").asDouble()).isEqualTo(22.5);
    assertThat(json.get("planes")).isEmpty();
  }

  @Test
  void fieldInAFileLeavesAShortAnswerWithAreaFigures() {
    Path csv = folder.resolve("field.csv");

    Run run =
        answered(
            "field",
            setup,
            "--model",
            model,
            "--rig",
            "low",
            "--depth",
            "6:12:6",
            "--length",
            "in",
            "--cell",
            "1",
            "--csv",
            csv);

    assertThat(csv).content().startsWith("x_in,y_in,depth_in,ppfd,");
    assertThat(run.out())
        .startsWith("Light of rig low of setup.yaml at 768 places\n\ndepth (in)")
        .contains("stony (% of area)")
        .containsPattern("\n         6 +[0-9]+ \\([0-9]+–[0-9]+\\)")
        .contains("\n        12 ")
        .endsWith("Left\n  - " + csv + "\n");
  }

  @Test
  void fieldDrawsAMapOfEachDepthOnOneScale() throws IOException {
    Path map = folder.resolve("map.svg");

    Run run =
        answered(
            "field",
            setup,
            "--model",
            model,
            "--rig",
            "low",
            "--depth",
            "15,30",
            "--csv",
            folder.resolve("planes.csv"),
            "--svg",
            map,
            "--scale",
            "0:600");

    for (String depth : List.of("15", "30")) {
      Path file = folder.resolve("map-" + depth + ".svg");
      assertThat(run.out()).contains("  - " + file + "\n");
      assertThat(file)
          .content()
          .startsWith("<svg ")
          .contains("PPFD under low, " + depth + " cm deep")
          .contains(">600<");
    }
    answered("field", setup, "--model", model, "--rig", "low", "--depth", "15", "--svg", map);
    assertThat(map).isNotEmptyFile();
  }

  @Test
  void mapsAreOfPlanes() {
    Path at = folder.resolve("somewhere.csv");
    Run.write(at, "x_cm,y_cm,depth_cm\n1,1,1\n");

    assertThat(
            Run.parfield(
                "field", setup, "--rig", "low", "--at", at, "--svg", folder.resolve("m.svg")))
        .isEqualTo(
            Run.refused(
                "parfield: --svg draws whole planes: it goes with --depth, not with --at",
                "  leave --at out, or --svg"));
    assertThat(
            Run.parfield("field", setup, "--rig", "low", "--depth", "15", "--scale", "9:1").err())
        .startsWith(
            "parfield: Invalid value for option '--scale': a scale runs upward between two numbers"
                + " of 0 or more, as in 0:500; got 9:1\n");
  }

  @Test
  void whatTheFastSolverLeavesOutIsToldBesideTheAnswer() throws IOException {
    Path wavy = setup.resolveSibling("wavy.yaml");
    Run.write(wavy, Files.readString(setup).replaceFirst("surface: \\w+", "surface: strong"));
    Run run =
        Run.parfield(
            "field", wavy, "--model", model, "--rig", "low", "--depth", "15", "--cell", "20");

    assertThat(run.code()).isZero();
    assertThat(run.err())
        .isEqualTo(
            "The surface moves strongly, and what waves do to light between the shadows is left out:"
                + " predicted PPFD is off by about 1.0 %, by 2.5 % in places.\n");
    assertThat(run.out()).startsWith("x_cm,y_cm,depth_cm,ppfd,");
  }

  @Test
  void theReferenceSolverCountsTheSameLight() {
    Path at = folder.resolve("counted.csv");
    Run.write(at, "x_cm,y_cm,depth_cm\n30,20,15\n22.5,20,30\n");
    Object[] where = {
      "field", setup, "--model", model, "--rig", "low", "--at", at, "--solver", "reference"
    };
    Run run = Run.parfield(concat(where, "--until", "3%"));

    assertThat(run.code()).isZero();
    assertThat(run.err())
        .startsWith("Counted by the reference solver: ")
        .contains("standard error at most ")
        .contains("Intervals are the light model's");
    List<String> lines = run.out().lines().toList();
    assertThat(lines.get(0))
        .isEqualTo(
            "x_cm,y_cm,depth_cm,ppfd,low,high,low_with_meter_scale,high_with_meter_scale,"
                + "standard_error,fast");
    for (String line : lines.subList(1, 3)) {
      double[] cells = Arrays.stream(line.split(",")).mapToDouble(Double::parseDouble).toArray();
      assertThat(cells[8]).isBetween(1e-4 * cells[3], .03 * cells[3]);
      assertThat(cells[9]).isCloseTo(cells[3], within(.01 * cells[3] + 4 * cells[8]));
      assertThat(cells[3]).isBetween(cells[4], cells[5]);
    }
    assertThat(Run.parfield(concat(where, "--until", "3%", "--seed", "1"))).isEqualTo(run);
    assertThat(Run.parfield(concat(where, "--until", "3%", "--seed", "2"))).isNotEqualTo(run);
  }

  @Test
  void theReferenceSolverFillsPlanesMapsAndJson() throws IOException {
    Path map = folder.resolve("reference.svg");

    Run run =
        Run.parfield(
            "field",
            setup,
            "--model",
            model,
            "--rig",
            "low",
            "--depth",
            "15",
            "--cell",
            "10",
            "--solver",
            "reference",
            "--for",
            "1s",
            "--svg",
            map,
            "--json");

    assertThat(run.code()).isZero();
    assertThat(map).content().startsWith("<svg ");
    JsonNode json = json(run.out());
    assertThat(json.get("solver").asText()).isEqualTo("reference");
    assertThat(json.at("/reference/packets").asLong()).isPositive();
    assertThat(json.at("/reference/largest_standard_error").asDouble()).isBetween(0.0, 0.2);
    assertThat(json.at("/reference/median_difference").asDouble()).isLessThan(.05);
    JsonNode mean = json.at("/planes/0/mean_umol_m2_s");
    assertThat(mean.get("low").asDouble()).isLessThan(mean.get("value").asDouble());
    JsonNode place = json.at("/places/0");
    assertThat(place.get("standard_error_umol_m2_s").asDouble()).isPositive();
    assertThat(place.get("fast_umol_m2_s").asDouble())
        .isCloseTo(
            place.get("ppfd_umol_m2_s").asDouble(),
            within(
                .02 * place.get("ppfd_umol_m2_s").asDouble()
                    + 4 * place.get("standard_error_umol_m2_s").asDouble()));
  }

  @Test
  void whatTheReferenceSolverNeedsGoesWithIt() {
    assertThat(Run.parfield("field", setup, "--rig", "low", "--depth", "15", "--until", "1%"))
        .isEqualTo(
            Run.refused(
                "parfield: --until, --for and --seed tell the reference solver when to stop and"
                    + " where to begin",
                "  add --solver reference, or leave them out"));
    assertThat(Run.parfield("field", setup, "--rig", "low", "--depth", "15", "--for", "0s").err())
        .startsWith(
            "parfield: Invalid value for option '--for': a time is a whole number above 0 with its"
                + " unit, as in 60s, 5min or 1h; got 0s\n");
    assertThat(
            Run.parfield(
                    "field",
                    setup,
                    "--model",
                    model,
                    "--rig",
                    "low",
                    "--depth",
                    "15",
                    "--cell",
                    "0.1",
                    "--solver",
                    "reference")
                .err())
        .startsWith("parfield: 240000 places are asked of the reference solver; at most 100000");
  }

  private static Object[] concat(Object[] first, Object... second) {
    return Stream.of(first, second).flatMap(Arrays::stream).toArray();
  }

  @Test
  void fieldFitsFirstWhereNoModelIsGiven() {
    Object[] where = {"field", setup, "--rig", "low", "--depth", "15", "--cell", "10"};

    assertThat(answered(where).out())
        .isEqualTo(
            answered(
                    "field", setup, "--rig", "low", "--depth", "15", "--cell", "10", "--model",
                    model)
                .out());
  }

  @Test
  void recommendTellsWhatToHangAndToDialAndHowSureThatIs() {
    Run run =
        answered("recommend", setup, "--model", model, "--heights", "15,20,25", "--depth", "15");

    assertThat(run.out())
        .startsWith("Recommendation for setup.yaml\n\n  Hang  1 × puck, ")
        .contains("\n  Dial  white ")
        .contains("All demands together: met (probability ")
        .contains("at least 60 % of the water volume in stony (150–350 µmol m⁻² s⁻¹)")
        .contains("the plane 15 cm deep")
        .contains("Readings that would verify it")
        .contains("Looked at heights of 15, 20, 25 cm")
        .contains("\nCautions\n  - Eyes: ")
        .contains("  - Electricity near water: ")
        .contains("  - Hanging load: ")
        .contains("  - Animals: ")
        .contains("  - Local codes: ")
        .contains("  - No guarantee: ");
    assertThat(run.out().toLowerCase(java.util.Locale.ROOT)).doesNotContain("safe");
  }

  @Test
  void recommendAnswersInJson() throws IOException {
    JsonNode json =
        json(
            answered(
                    "recommend",
                    setup,
                    "--model",
                    model,
                    "--heights",
                    "15,20",
                    "--json",
                    "--length",
                    "cm")
                .out());

    assertThat(json.get("complete").asBoolean()).isTrue();
    JsonNode best = json.at("/options/0");
    assertThat(best.get("fixture").asText()).isEqualTo("puck");
    assertThat(best.get("count").asInt()).isEqualTo(1);
    assertThat(best.get("height_cm").asDouble()).isIn(15.0, 20.0);
    assertThat(best.at("/centres/0/x_cm").asDouble()).isEqualTo(30);
    assertThat(best.at("/dials_percent/white").asDouble()).isBetween(1.0, 100.0);
    assertThat(best.get("truths").asInt()).isEqualTo(96);
    assertThat(best.get("probability").asDouble())
        .isCloseTo(best.get("truths_met").asInt() / 96.0, within(1e-4))
        .isBetween(best.get("probability_low").asDouble(), best.get("probability_high").asDouble());
    assertThat(best.at("/demands/0/reached/value").asDouble()).isBetween(0.0, 1.0);
    assertThat(best.at("/figures/0/of").asText()).isEqualTo("volume");
    assertThat(best.at("/figures/1/depth_cm").asDouble()).isEqualTo(15);
    assertThat(json.get("heights")).hasSize(2);
    assertThat(json.get("cautions")).isNotEmpty();
  }

  @Test
  void whatNoRigMeetsEndsWithExitCodeOneAndTellsWhatStandsInTheWay() {
    Path hard = folder.resolve("hard.yaml");
    Run.write(hard, Run.read("bench/setup.yaml").replace("coverage: 0.60", "coverage: 0.99"));

    Run run =
        Run.parfield("recommend", hard, "--model", model, "--heights", "15,25", "--depth", "15");

    assertThat(run.code()).isEqualTo(1);
    assertThat(run.out())
        .contains("All demands together: failed (probability < 0.04, in none of 96 truths)")
        .contains("\nWhy not all demands are met for sure\n  - ")
        .contains("\nWhat would help\n  - ");
  }

  @Test
  void withNothingToAimAtThereIsNoRecommendation() {
    Path aimless = folder.resolve("aimless.yaml");
    String text = Run.read("bench/setup.yaml");
    Run.write(aimless, text.substring(0, text.indexOf("bands:")));

    assertThat(Run.parfield("recommend", aimless, "--model", model).err())
        .startsWith(
            "parfield: aimless.yaml states neither demands nor bands: there is nothing to aim at\n");
  }

  @Test
  void aModelOfAnotherFixtureIsRefused() {
    Path other = folder.resolve("other.yaml");
    Run.write(other, Run.read("bench/setup.yaml").replace("puck", "disc"));

    Run run = Run.parfield("field", other, "--model", model, "--rig", "low", "--depth", "15");

    assertThat(run)
        .isEqualTo(
            new Run(
                2,
                "",
                "parfield: fixture disc is not in the light model, which knows [puck]; fit a survey"
                    + " taken with it\n"));
  }

  @Test
  void roomAboveLimitsTheHeights() {
    Run run = Run.parfield("recommend", setup, "--model", model, "--heights", "70,80");

    assertThat(run.code()).isEqualTo(2);
    assertThat(run.err()).contains("does not fit under");
  }
}
