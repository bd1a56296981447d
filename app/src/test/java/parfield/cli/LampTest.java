package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.answer.Bench;
import parfield.demo.DemoBench;
import parfield.field.FastSolver;
import parfield.field.LightField;
import parfield.field.Places;
import parfield.fit.LightModel;
import parfield.formats.ModelFile;
import parfield.lamp.Channel;
import parfield.lamp.Setting;
import parfield.rig.Rig;

/**
 * {@code lamp read} and {@code lamp write}, on a light model that was fitted to the demo's bench.
 */
class LampTest {
  @TempDir private static Path folder;

  private static Path setup;
  private static Path model;

  @BeforeAll
  static void fit() throws IOException {
    for (var file : DemoBench.files(1L).entrySet()) {
      Path path = folder.resolve(file.getKey());
      Files.createDirectories(path.getParent());
      Files.writeString(path, file.getValue());
    }
    setup = folder.resolve(DemoBench.SETUP);
    model = folder.resolve("model.json");
    assertThat(Run.parfield("fit", setup, "--out", model).code()).isZero();
  }

  private static Run write(String format, String name, Object... more) {
    List<Object> args = new ArrayList<>(List.of("lamp", "write", setup, "--model", model));
    args.addAll(List.of("--as", format, "--out", folder.resolve(name)));
    args.addAll(List.of(more));
    return Run.parfield(args.toArray());
  }

  /** The demo's setup with another distribution. */
  private static Bench bench(String distribution) throws IOException {
    Path changed = folder.resolve("with-file.yaml");
    String text = Files.readString(setup);
    assertThat(text).contains("distribution: fitted");
    Files.writeString(changed, text.replace("distribution: fitted", distribution));
    return Bench.read(changed);
  }

  /**
   * A fitted light model, written as a file, named by a setup: the field of every channel and of
   * all together is that of the model within 0.5 %, at each place of a lattice of the water.
   */
  @Test
  void writtenReadBackAndLit() throws IOException {
    LightModel fitted = ModelFile.read(model);
    FastSolver solver = new FastSolver();
    for (String format : List.of("lm63", "eulumdat")) {
      String name = "bar." + format;
      assertThat(write(format, name).err()).isEmpty();
      Bench bench = bench("distribution: {file: " + name + "}");
      Rig rig = fitted.best().applyTo(Bench.read(setup).rig("high"));
      List<Channel> read = bench.setup().fixtures().get("bar").channels();
      Rig lit =
          rig.withHangings(
              hanging -> {
                List<Channel> channels = new ArrayList<>();
                for (int c = 0; c < read.size(); c++) {
                  channels.add(
                      hanging
                          .fixture()
                          .channels()
                          .get(c)
                          .withDistribution(read.get(c).distribution().orElseThrow()));
                }
                return hanging.withFixture(hanging.fixture().withChannels(channels));
              });
      Places places = Places.volume(rig.tank(), 12, 6, 4);
      var truth = solver.unitFields(rig, places);
      var found = solver.unitFields(lit, places);
      double worst = 0;
      for (int c = 0; c < read.size(); c++) {
        double[] expected = truth.ofChannel(c);
        double[] actual = found.ofChannel(c);
        for (int i = 0; i < expected.length; i++) {
          worst = Math.max(worst, Math.abs(actual[i] / expected[i] - 1));
        }
      }
      LightField all = truth.at(Setting.full());
      LightField back = found.at(Setting.full());
      for (int i = 0; i < places.size(); i++) {
        worst = Math.max(worst, Math.abs(back.ppfd(i) / all.ppfd(i) - 1));
      }
      assertThat(worst).as(format).isLessThan(0.005);
    }
  }

  @Test
  void readAsTextAndJson() throws IOException {
    assertThat(write("lm63", "one.ies", "--channel", "blue").code()).isZero();
    Run text = Run.parfield("lamp", "read", folder.resolve("one.ies"));
    assertThat(text.err()).isEmpty();
    assertThat(text.out())
        .startsWith("one.ies: ANSI/IES LM-63, LM-63-2002\n")
        .contains("absolute")
        .contains("channel blue at full output")
        .contains("TESTLAB: no laboratory: a light model fitted to readings in a tank");
    JsonNode json =
        new ObjectMapper()
            .readTree(Run.parfield("lamp", "read", folder.resolve("one.ies"), "--json").out());
    assertThat(json.path("format").asText()).isEqualTo("lm63");
    assertThat(json.path("symmetry").asText()).isEqualTo("quadrants");
    JsonNode photons = json.path("photons");
    double ppf = photons.path("ppf_umol_s").path("value").asDouble();
    assertThat(json.path("flux_lm").asDouble() * photons.path("umol_s_per_lm").asDouble())
        .isCloseTo(ppf, within(1e-4 * ppf));
    assertThat(photons.path("channels")).hasSize(1);
    assertThat(photons.path("ppf_umol_s").path("low").asDouble()).isLessThan(ppf);
  }

  /** Half the light on every dial is less than all of it, and the channels' full flux is kept. */
  @Test
  void dials() throws IOException {
    JsonNode full = json(write("lm63", "full.ies", "--json"));
    JsonNode low = json(write("lm63", "low.ies", "--dial", "overall=50", "--json"));
    JsonNode photons = low.path("written").path("photons");
    assertThat(photons.path("ppf_umol_s").path("value").asDouble())
        .isLessThan(
            0.7 * full.path("written").path("photons").path("ppf_umol_s").path("value").asDouble());
    assertThat(photons.path("channels"))
        .isEqualTo(full.path("written").path("photons").path("channels"));
    assertThat(full.path("losses").get(0).asText()).contains("4 emitters as of one point");
  }

  private static JsonNode json(Run run) throws IOException {
    assertThat(run.err()).isEmpty();
    return new ObjectMapper().readTree(run.out());
  }

  @Test
  void refused() throws IOException {
    assertThat(write("lm63", "x.ies", "--fixture", "baar"))
        .isEqualTo(
            Run.refused(
                "parfield: setup.yaml states no fixture named baar", "  did you mean bar?"));
    assertThat(write("lm63", "x.ies", "--channel", "red").err())
        .startsWith("parfield: fixture bar has no channel named red\n");
    assertThat(write("lm63", "x.ies", "--channel", "blue", "--dial", "blue=50").err())
        .startsWith("parfield: a channel by itself is written at full output");
    assertThat(write("lm63", "x.ies", "--dial", "blue=150").err())
        .startsWith("parfield: the dial blue is set to 150.0\n  a dial runs from 0 to 100");
    assertThat(write("lm63", "x.ies", "--dial", "overall=0", "--dial", "violet=0").err())
        .startsWith("parfield: at these dials fixture bar gives off no light\n");
    assertThat(write("pdf", "x.ies").err()).contains("a format is lm63 or eulumdat; got pdf");
    assertThat(folder.resolve("x.ies")).doesNotExist();
    Path wrong = folder.resolve("wrong.ies");
    Files.writeString(wrong, "IESNA:LM-63-2002\nTILT=NONE\n1 -1 1 2.5\n");
    assertThat(Run.parfield("lamp", "read", wrong))
        .isEqualTo(
            Run.refused(
                "parfield: 1 fault in wrong.ies",
                "  wrong.ies:3: number of vertical angles: got 2.5, allowed a whole number, 2 to"
                    + " 524288; correct it: the numbers after it are counted by it"));
  }
}
