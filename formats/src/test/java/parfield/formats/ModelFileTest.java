package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.fit.FitReport;
import parfield.fit.LightModel;
import parfield.fit.Truth;
import parfield.lamp.CosinePower;
import parfield.lamp.HarmonicIntensity;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.ScaledIntensity;
import parfield.lamp.TabulatedIntensity;
import parfield.units.Estimate;

class ModelFileTest {
  @TempDir private Path folder;

  /** A model of every kind of distribution, its numbers drawn from all of their bits. */
  private static LightModel model(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Truth> draws = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      draws.add(truth(random));
    }
    return new LightModel(
        truth(random),
        draws,
        random.nextDouble(),
        new FitReport(
            List.of(
                new FitReport.Finding(
                    "yellowing \"a₄₄₀\" [1/m]", 0.1, new Estimate(1.0 / 3, -0.0, Double.MIN_VALUE)),
                new FitReport.Finding(
                    "unknown", Double.NaN, new Estimate(1, Double.NEGATIVE_INFINITY, 1e300))),
            List.of(new FitReport.Residual("low", 7, 120, 1e-7, -2.5, "a slip, perhaps\n")),
            List.of(new FitReport.CrossValidation("a tenth of the readings", 0.02, 0.07, -0.01)),
            List.of("The readings cannot tell left from right."),
            random.nextDouble()));
  }

  private static Truth truth(SplittableRandom random) {
    IntensityDistribution harmonic =
        new HarmonicIntensity(
            rows(random, 3, 7), random.nextBoolean() ? rows(random, 3, 7) : none());
    double[][] table = {{5, 4, 5}, {random.nextDouble(), 2, 0}};
    table[1][2] = table[1][0];
    return new Truth(
        Map.of(
            "pendant",
            List.of(
                harmonic,
                new ScaledIntensity(harmonic, random.nextDouble()),
                new CosinePower(random.nextDouble(), 2.5)),
            "bar é",
            List.of(
                new TabulatedIntensity(
                    new double[] {0, Math.PI / 3}, new double[] {0, 1, 2 * Math.PI}, table))),
        List.of(random.nextDouble(), 1.0, 0.0, random.nextDouble()),
        random.nextDouble(),
        random.nextDouble(),
        -random.nextDouble(),
        random.nextDouble(),
        -random.nextDouble(),
        random.nextDouble(),
        1 + random.nextDouble());
  }

  private static double[][] none() {
    return new double[0][];
  }

  private static double[][] rows(SplittableRandom random, int rows, int nodes) {
    double[][] values = new double[rows][nodes];
    for (double[] row : values) {
      for (int i = 0; i < nodes; i++) {
        row[i] = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(-300, 300));
      }
    }
    return values;
  }

  @Test
  void readsBackWhatItWroteToTheLastBit() throws IOException {
    for (long seed = 0; seed < 50; seed++) {
      LightModel written = model(seed);
      Path path = folder.resolve("model.json");
      ModelFile.write(written, path);
      LightModel read = ModelFile.read(path);

      assertThat(read.discrepancy()).as("seed %d", seed).isEqualTo(written.discrepancy());
      assertThat(read.report()).as("seed %d", seed).isEqualTo(written.report());
      assertThat(read.draws()).hasSize(written.draws().size());
      assertSame(read.best(), written.best());
      for (int i = 0; i < read.draws().size(); i++) {
        assertSame(read.draws().get(i), written.draws().get(i));
      }
      Path again = folder.resolve("again.json");
      ModelFile.write(read, again);
      assertThat(Files.readString(again)).as("seed %d", seed).isEqualTo(Files.readString(path));
    }
  }

  private static void assertSame(Truth read, Truth written) {
    assertThat(read).usingRecursiveComparison().withStrictTypeChecking().isEqualTo(written);
  }

  @Test
  void namesUnitsInTheFile() throws IOException {
    Path path = folder.resolve("model.json");
    ModelFile.write(model(1), path);

    assertThat(Files.readString(path))
        .contains(
            "\"parfield_model\" : 1",
            "\"ppfd\" : \"µmol/m²/s\"",
            "\"length\" : \"m\"",
            "\"angle\" : \"rad\"");
  }

  private void assertFault(String part, String replacement, String message) throws IOException {
    Path path = folder.resolve("model.json");
    ModelFile.write(model(1), path);
    String text = Files.readString(path);
    assertThat(text).contains(part);
    Files.writeString(path, text.replace(part, replacement));
    assertThatThrownBy(() -> ModelFile.read(path))
        .isInstanceOf(InvalidFile.class)
        .hasMessageMatching(message);
  }

  @Test
  void namesTheFirstFault() throws IOException {
    assertFault(
        "\"parfield_model\" : 1",
        "\"parfield_model\" : 2",
        "model.json:2:22: parfield_model: got 2, allowed 1; fit again with this program, or take"
            + " the one that wrote the file");
    assertFault(
        "\"length\" : \"m\"",
        "\"length\" : \"cm\"",
        "model.json:\\d+:\\d+: units.length: got cm, allowed m; fit again and write the model"
            + " anew");
    assertFault(
        "\"discrepancy\"",
        "\"discrepansy\"",
        "model.json:\\d+:\\d+: unknown key: got discrepansy, allowed best, discrepancy, draws,"
            + " parfield_model, report, units; fit again and write the model anew");
    assertFault(
        "\"meter_scale\" : 1",
        "\"meter_scale\" : -1",
        "model.json:\\d+:\\d+: best: a meter's scale must be above 0; got -1.*");
    assertFault(
        "\"kind\" : \"harmonic\"",
        "\"kind\" : \"spline\"",
        "model.json:\\d+:\\d+: best.distributions.*kind: got spline, allowed harmonic, cosine"
            + " power, scaled, tabulated; fit again and write the model anew");
    assertFault(
        "\"exponent\" : 2.5",
        "\"exponent\" : \"2.5\"",
        "model.json:\\d+:\\d+: .*exponent: got 2.5, allowed a number; fit again and write the model"
            + " anew");
    assertFault(
        "\"exponent\" : 2.5",
        "\"factor\" : 2.5",
        "model.json:\\d+:\\d+: .*exponent: got nothing; fit again and write the model anew");
    assertFault(
        "\"statements\" : [",
        "\"statements\" : [ 3,",
        "model.json:\\d+:\\d+: report.statements\\[1\\]: got 3, allowed a text; fit again and write"
            + " the model anew");
  }

  @Test
  void refusesWhatIsNoModel() throws IOException {
    Path path = folder.resolve("model.json");
    for (String text :
        List.of("", "{", "[]", "3", "{}", "{\"parfield_model\": 1}", "{]", "[".repeat(100_000))) {
      Files.writeString(path, text);
      assertThatThrownBy(() -> ModelFile.read(path))
          .as(text.length() < 100 ? text : "deep")
          .isInstanceOf(InvalidFile.class)
          .hasMessageStartingWith("model.json")
          .hasMessageEndingWith("fit again and write the model anew");
    }
    Files.write(path, new byte[] {(byte) 0xFF, 0, 1, 2});
    assertThatThrownBy(() -> ModelFile.read(path)).isInstanceOf(InvalidFile.class);
    assertThatThrownBy(() -> ModelFile.read(folder.resolve("none.json")))
        .isInstanceOf(InvalidFile.class)
        .hasMessage(
            "none.json: the file cannot be read: got no such file, allowed a file that exists;"
                + " check its name and folder");
  }

  @Test
  void survivesAnyDamage() throws IOException {
    Path path = folder.resolve("model.json");
    ModelFile.write(model(1), path);
    byte[] sound = Files.readAllBytes(path);
    SplittableRandom random = new SplittableRandom(20260501);
    for (int i = 0; i < 1000; i++) {
      byte[] bytes = Damage.of(sound, random);
      Files.write(path, bytes);
      try {
        ModelFile.read(path);
      } catch (InvalidFile e) {
        assertThat(e.faults()).isNotEmpty();
      } catch (RuntimeException e) {
        throw new AssertionError(
            "case " + i + ": " + new String(bytes, java.nio.charset.StandardCharsets.UTF_8), e);
      }
    }
  }

  @Test
  void leavesNoPartBehindAndReplacesWhole() throws IOException {
    Path path = folder.resolve("model.json");
    Files.writeString(path, "old");
    assertThatThrownBy(
            () ->
                WholeFile.write(
                    path,
                    out -> {
                      out.write(1);
                      throw new IOException("no space left");
                    }))
        .isInstanceOf(InvalidFile.class)
        .hasMessage(
            "model.json: the file cannot be written: got an error of the disk: no space left,"
                + " allowed a disk with room on it; free some room, or name another folder");
    assertThat(Files.readString(path)).isEqualTo("old");
    assertThat(names()).containsExactly("model.json");

    ModelFile.write(model(1), path);
    assertThat(names()).containsExactly("model.json");
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(file -> file.getFileName().toString()).toList();
    }
  }

  @Test
  void saysWhereItCannotWrite() throws IOException {
    assertThatThrownBy(() -> ModelFile.write(model(1), folder.resolve("none/model.json")))
        .hasMessage(
            "model.json: the file cannot be written: got no such folder, allowed a folder that"
                + " exists; make the folder first");
    assertThatThrownBy(() -> ModelFile.write(model(1), folder))
        .hasMessageEndingWith(
            ": the file cannot be written: got a directory, allowed the name of a file; name a"
                + " file inside it");
  }
}
