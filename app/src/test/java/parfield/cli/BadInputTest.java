package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a person may do wrong: a clear message, exit code 2, nothing written, no stack trace. */
class BadInputTest {
  @TempDir private Path folder;

  /** Runs every command that reads a setup; each must refuse in the same words. */
  private void assertRefused(Path setup, String... lines) {
    List<String> before = Run.files(folder);
    Path model = folder.resolve("left.json");
    Path csv = folder.resolve("left.csv");
    for (Run run :
        List.of(
            Run.parfield("check", setup),
            Run.parfield("stats", setup),
            Run.parfield("fit", setup, "--out", model),
            Run.parfield("field", setup, "--rig", "low", "--depth", "15", "--csv", csv),
            Run.parfield("recommend", setup))) {
      assertThat(run.err()).isEqualTo(String.join("\n", lines) + "\n");
      assertThat(run.out()).isEmpty();
      assertThat(run.code()).isEqualTo(2);
    }
    assertThat(Run.files(folder)).isEqualTo(before);
  }

  @Test
  void missingSetup() {
    assertRefused(
        folder.resolve("nowhere.yaml"),
        "parfield: 1 fault in nowhere.yaml",
        "  nowhere.yaml: the file cannot be read: got no such file, allowed a file that exists;"
            + " check its name and folder");
  }

  @Test
  void missingReadings() throws IOException {
    Path setup = Run.bench(folder);
    Files.delete(folder.resolve("high.csv"));

    assertRefused(
        setup,
        "parfield: 1 fault in setup.yaml",
        "  setup.yaml:28:45: surveys.high.readings: got high.csv, no such file, allowed a file that"
            + " exists; check its name and folder");
  }

  @Test
  void readingThatIsNoNumber() {
    assertRefused(
        Run.bench(folder, "low.csv", "7.5,20,15,143", "7.5,20,15,NaN"),
        "parfield: 1 fault in low.csv",
        "  low.csv:7: ppfd: got NaN, allowed a number; write a number");
  }

  @Test
  void negativeReading() {
    assertRefused(
        Run.bench(folder, "low.csv", "7.5,20,15,143", "7.5,20,15,-143"),
        "parfield: 1 fault in low.csv",
        "  low.csv:7: ppfd: got -143, allowed 0 to 100000 µmol/m²/s; no light is negative: correct"
            + " the reading, or leave it out");
  }

  @Test
  void readingOutsideTheTank() {
    assertRefused(
        Run.bench(folder, "low.csv", "7.5,20,15,143", "67.5,20,15,143"),
        "parfield: 1 fault in low.csv",
        "  low.csv:7: x: got 67.5 cm, allowed 0 to 60 cm, inside the tank; x runs from the left"
            + " pane: correct the reading or the tank");
  }

  @Test
  void emitterUnderWater() {
    assertRefused(
        Run.bench(folder, "setup.yaml", "y: 20, height: 15", "y: 20, height: -2"),
        "parfield: 1 fault in setup.yaml",
        "  setup.yaml:22:54: rigs.low.hang[1].height: got -2, allowed above 0 to 2000 cm; the"
            + " mounting height is that of the emitters above the still water; an emitter under"
            + " water cannot be computed");
  }

  @Test
  void fixtureWiderThanTheRoomAbove() {
    assertRefused(
        Run.bench(folder, "setup.yaml", "    width: 20\n", "    width: 70\n"),
        "parfield: 2 faults in setup.yaml",
        "  setup.yaml:22:16: rigs.low.hang[1] extent along y: got 70 cm, allowed at most 50 cm, the"
            + " room above the tank; take a smaller fixture, or state more room",
        "  setup.yaml:23:17: rigs.high.hang[1] extent along y: got 70 cm, allowed at most 50 cm,"
            + " the room above the tank; take a smaller fixture, or state more room");
  }

  @Test
  void emptyGrid() {
    Path setup = Run.bench(folder);
    Run.write(folder.resolve("low.csv"), "x_cm,y_cm,depth_cm,ppfd\n");

    assertRefused(
        setup,
        "parfield: 1 fault in low.csv",
        "  low.csv: number of readings: got 0, allowed 1 or more; take readings; a fit needs a grid"
            + " of them");
  }

  @Test
  void spectrumWithGaps() {
    assertRefused(
        Run.bench(folder, "white.csv", "520,0.726\n530,0.835\n", ""),
        "parfield: 1 fault in white.csv",
        "  white.csv:16: gap in the spectrum: got no sample from 510 to 540 nm, allowed steps of at"
            + " most 20 nm within 400 to 700 nm; measure or fill in the missing wavelengths");
  }

  @Test
  void yamlBomb() {
    Path setup = folder.resolve("setup.yaml");
    StringBuilder bomb = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
    for (int level = 1; level < 12; level++) {
      String alias = "*a" + (level - 1);
      bomb.append(String.format("a%d: &a%d [", level, level));
      bomb.append(String.join(", ", List.of(alias, alias, alias, alias, alias, alias, alias)));
      bomb.append("]\n");
    }
    bomb.append("surveys: *a11\n");
    Run.write(setup, bomb.toString());

    assertRefused(
        setup,
        "parfield: 1 fault in setup.yaml",
        "  setup.yaml:9:15: number of aliases: got more, allowed 50; check that it is a setup file");
  }

  @Test
  void aBillionBytesAsAnyInput() throws IOException {
    Path huge = folder.resolve("huge");
    try (RandomAccessFile file = new RandomAccessFile(huge.toFile(), "rw")) {
      file.setLength(1L << 30);
    }
    assertRefused(
        huge,
        "parfield: 1 fault in huge",
        "  huge: the file cannot be read: got 1073741824 bytes, allowed at most 1 MiB (1048576"
            + " bytes); check that it is the file you mean, or split it");

    Path setup = Run.bench(folder, "setup.yaml", "readings: low.csv", "readings: huge");
    assertRefused(
        setup,
        "parfield: 1 fault in setup.yaml",
        "  setup.yaml:27:43: surveys.low.readings: got huge, 1073741824 bytes, allowed at most 64"
            + " MiB (67108864 bytes); check that it is the file you mean, or split it");

    Run.bench(folder);
    Run model = Run.parfield("recommend", setup, "--model", huge);
    assertThat(model.code()).isEqualTo(2);
    assertThat(model.err()).contains("huge: the file cannot be read: got 1073741824 bytes");
    Run places = Run.parfield("field", setup, "--rig", "low", "--at", huge);
    assertThat(places.code()).isEqualTo(2);
    assertThat(places.err()).contains("huge: the file cannot be read: got 1073741824 bytes");
  }

  @Test
  void gridOfOnePoint() {
    Path setup = Run.bench(folder);
    Run.write(
        folder.resolve("setup.yaml"),
        Run.read("bench/setup.yaml")
            .replace("  high: {rig: high, meter: probe, readings: high.csv}\n", ""));
    Run.write(folder.resolve("low.csv"), "x_cm,y_cm,depth_cm,ppfd\n30,20,15,400\n");
    List<String> before = Run.files(folder);

    assertThat(Run.parfield("check", setup).code()).isZero();
    assertThat(Run.parfield("stats", setup).code()).isZero();
    for (Run run :
        List.of(
            Run.parfield("fit", setup, "--out", folder.resolve("model.json")),
            Run.parfield("field", setup, "--rig", "low", "--depth", "15"),
            Run.parfield("recommend", setup))) {
      assertThat(run)
          .isEqualTo(
              new Run(
                  2,
                  "",
                  "parfield: a light model needs 6 readings or more; the surveys hold 1: read a grid"
                      + " of cell centres, corners and wall midpoints\n"));
    }
    assertThat(Run.files(folder)).isEqualTo(before);
  }

  @Test
  void aHundredThousandReadings() {
    Path setup = Run.bench(folder);
    String[] lines = Run.read("bench/low.csv").split("\n");
    StringBuilder many = new StringBuilder("x_cm,y_cm,depth_cm,ppfd\n");
    for (int i = 0; i < 100_000; i++) {
      many.append(lines[2 + i % 16]).append('\n');
    }
    Run.write(folder.resolve("low.csv"), many.toString());

    Run stats = Run.parfield("stats", setup);
    assertThat(stats.err()).isEmpty();
    assertThat(stats.code()).isZero();
    assertThat(stats.out()).contains("100000 readings");

    Path model = folder.resolve("model.json");
    Run fit = Run.parfield("fit", setup, "--out", model);
    assertThat(fit.code()).isZero();
    assertThat(fit.err())
        .isEqualTo(
            "Of 100016 readings 2000 were taken for the fit, spread over the tank as all are: more"
                + " take time but tell no more.\n");
    assertThat(fit.out()).contains("Of 100016 readings 2000 were taken for the fit");
    assertThat(model).exists();
  }

  @Test
  void outputsThatCannotBeWrittenAreRefusedBeforeTheWork() {
    Path setup = Run.bench(folder);
    List<String> before = Run.files(folder);
    Path nowhere = folder.resolve("no/where/model.json");

    assertThat(Run.parfield("fit", setup, "--out", nowhere))
        .isEqualTo(
            Run.refused(
                String.format(
                    "parfield: %s cannot be written: there is no folder %s",
                    nowhere, nowhere.getParent()),
                "  name a file in a folder that is there and that you may write to; nothing was"
                    + " written"));
    assertThat(Run.parfield("fit", setup, "--out", folder).err())
        .contains("cannot be written: it is a folder");
    assertThat(Run.parfield("fit", setup, "--out", setup))
        .isEqualTo(
            Run.refused(
                "parfield: " + setup + " is read by this command: it is not overwritten",
                "  name another file to write"));
    assertThat(Run.files(folder)).isEqualTo(before);
  }

  @Test
  void depthsOutsideTheWaterAndOptionsThatAreNoLengths() {
    Path setup = Run.bench(folder);

    assertThat(Run.parfield("field", setup, "--rig", "low", "--depth", "41"))
        .isEqualTo(
            Run.refused(
                "parfield: the depth 41 cm lies outside the water, which is 40 cm deep",
                "  ask for a depth from 0 to the bottom"));
    assertThat(Run.parfield("field", setup, "--rig", "low", "--depth", "tief").err())
        .isEqualTo(
            "parfield: Invalid value for option '--depth': lengths are numbers of 0 or more, as in"
                + " 15,20,30 or 15:40:5; got tief\n  see parfield field --help\n");
    assertThat(Run.parfield("field", setup, "--rig", "low").err())
        .startsWith("parfield: field needs to know where: neither --depth nor --at was given\n");
    assertThat(Run.parfield("stats", setup, "--length", "mm").err())
        .startsWith(
            "parfield: Invalid value for option '--length': a unit of length is cm or in; got mm");
  }

  @Test
  void unknownRigIsToldWithThoseThatThereAre() {
    assertThat(Run.parfield("field", Run.bench(folder), "--rig", "hihg", "--depth", "15"))
        .isEqualTo(
            Run.refused("parfield: setup.yaml states no rig named hihg", "  did you mean high?"));
  }
}
