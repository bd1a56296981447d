package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A model of the small bench, applied to a deeper tank under a mesh. */
class TransferTest {
  @TempDir private static Path folder;

  private static Path model;
  private static String stated;

  @BeforeAll
  static void fitOnce() throws IOException {
    Path setup = Run.bench(folder);
    model = folder.resolve("model.json");
    assertThat(Run.parfield("fit", setup, "--out", model).code()).isZero();
    String text = Files.readString(setup);
    stated =
        text.substring(0, text.indexOf("surveys:"))
                .replace("water: 40", "water: 45")
                .replace("back: film}", "back: painted}")
                .replace("surface: still", "surface: still\n  lid: {mesh: 0.85}")
            + text.substring(text.indexOf("bands:"));
  }

  private static Path other(String name, String setup) throws IOException {
    return Files.writeString(folder.resolve(name), setup);
  }

  private static JsonNode json(Run run) throws IOException {
    assertThat(run.err()).isEmpty();
    return new ObjectMapper().readTree(run.out());
  }

  @Test
  void withoutReadingsItTellsTheErrorItsPartsAndThreeReadings() throws IOException {
    Path setup = other("bare.yaml", stated);

    JsonNode json = json(Run.parfield("transfer", setup, "--model", model, "--json"));

    JsonNode error = json.get("transfer_error");
    assertThat(error.at("/mean/low").asDouble()).isBetween(-0.3, -0.05);
    assertThat(error.at("/mean/high").asDouble()).isBetween(0.05, 0.3);
    double shares = 0;
    for (JsonNode part : error.get("parts")) {
      shares += part.get("share_of_mean_variance").asDouble();
    }
    assertThat(shares).isBetween(0.999, 1.001);
    assertThat(error.get("parts").findValuesAsText("cause"))
        .containsExactlyInAnyOrder(
            "lamps",
            "meter",
            "specimen",
            "panes",
            "bottom",
            "yellowing",
            "hanging",
            "lid",
            "solver",
            "discrepancy");
    assertThat(json.get("update").isNull()).isTrue();
    assertThat(json.at("/recommendation/next_readings")).hasSize(3);
    assertThat(json.at("/recommendation/measured")).isEmpty();
  }

  @Test
  void readingsOfTheOtherTankUpdateModelAndAdvice() throws IOException {
    Files.writeString(
        folder.resolve("few.csv"),
        "x_cm,y_cm,depth_cm,ppfd\n30,20,15,330\n10,10,30,105\n50,30,40,75\n");
    Path setup =
        other(
            "read.yaml",
            stated + "surveys:\n  check: {rig: low, meter: probe, readings: few.csv}\n");
    Path left = folder.resolve("there.json");

    Run run = Run.parfield("transfer", setup, "--model", model, "--out", left);

    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .contains("Transfer error of true PPFD with the recommended rig (5–95 %)\n")
        .contains("before the readings ")
        .contains("after the readings ")
        .contains("What the readings of this tank made of it\n")
        .contains("check 1 ")
        .contains("  - The model was updated by ")
        .contains("Readings that would verify it, with this rig at these dials\n")
        .endsWith("The model of this tank is in " + left + ".\n");
    assertThat(Run.parfield("recommend", setup, "--model", left).out())
        .contains("The model was updated by ");
    JsonNode json = json(Run.parfield("transfer", setup, "--model", model, "--json"));
    double before = width(json.at("/transfer_error/mean"));
    assertThat(width(json.at("/update"), "mean")).isLessThan(before);
    assertThat(json.at("/update/readings").size() + json.at("/update/set_aside").size())
        .isEqualTo(3);
  }

  private static double width(JsonNode interval) {
    return interval.get("high").asDouble() - interval.get("low").asDouble();
  }

  private static double width(JsonNode json, String key) {
    return width(json.get(key));
  }

  @Test
  void anotherFixtureIsRefusedByName() throws IOException {
    Path setup = other("bar.yaml", stated.replace("puck", "bar"));

    assertThat(Run.parfield("transfer", setup, "--model", model))
        .isEqualTo(
            Run.refused(
                "parfield: this model cannot be applied to bar.yaml",
                "  the light model knows puck, over this tank hangs bar; state the model's fixture"
                    + " under its own name, just as the model's setup does"));
  }

  @Test
  void aModelOfOneDrawIsRefusedBecauseItWouldSeemCertain() throws IOException {
    ObjectNode json = (ObjectNode) new ObjectMapper().readTree(model.toFile());
    JsonNode first = json.get("draws").get(0);
    json.putArray("draws").add(first);
    Path one = Files.writeString(folder.resolve("one.json"), json.toString());

    assertThat(Run.parfield("transfer", other("sure.yaml", stated), "--model", one))
        .isEqualTo(
            Run.refused(
                "parfield: this model holds 1 draw of what its readings allow; allowed 40 to 400",
                "  ask its publisher for the file as fit leaves it"));
  }

  @Test
  void aWholeGridIsToBeFittedByItself() throws IOException {
    StringBuilder grid = new StringBuilder("x_cm,y_cm,depth_cm,ppfd\n");
    for (int i = 0; i < 41; i++) {
      grid.append(5 + i).append(",20,15,200\n");
    }
    Files.writeString(folder.resolve("grid.csv"), grid);
    Path setup =
        other(
            "grid.yaml",
            stated + "surveys:\n  grid: {rig: low, meter: probe, readings: grid.csv}\n");

    assertThat(Run.parfield("transfer", setup, "--model", model))
        .isEqualTo(
            Run.refused(
                "parfield: grid.yaml holds 41 readings, a transferred model is updated by at most"
                    + " 40",
                "  they are enough for a model of this tank itself: parfield fit",
                "  or name a setup with a few of them"));
  }
}
