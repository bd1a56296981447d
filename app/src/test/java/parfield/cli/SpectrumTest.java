package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.Approved;
import parfield.demo.DemoBench;

/** Every question on spectra, asked of the demo's invented files: whole answers, and pictures. */
class SpectrumTest {
  private static Map<String, String> demo;

  @TempDir private Path folder;

  @BeforeAll
  static void invent() {
    demo = DemoBench.files(1);
  }

  @BeforeEach
  void write() throws IOException {
    Files.createDirectories(folder.resolve("spectra"));
    for (Map.Entry<String, String> file : demo.entrySet()) {
      Files.writeString(folder.resolve(file.getKey()), file.getValue());
    }
  }

  private Path file(String name) {
    return folder.resolve("spectra").resolve(name + ".csv");
  }

  private String answer(Object... args) {
    Run run = Run.parfield(args);
    assertThat(run.err()).isEmpty();
    assertThat(run.code()).isZero();
    return run.out().replace(folder.toString(), "DIR");
  }

  private static JsonNode json(Object... args) throws IOException {
    Run run = Run.parfield(args);
    assertThat(run.err()).isEmpty();
    return new ObjectMapper().readTree(run.out());
  }

  private Path picture() {
    return folder.resolve("picture.svg");
  }

  private void assertDrawn(String... words) {
    assertThat(picture()).content().startsWith("<svg ").endsWith("</svg>\n").contains(words);
  }

  @Test
  void describesLightsWithoutScale() {
    String text =
        answer(
            "spectrum",
            "describe",
            file("blue"),
            file("white"),
            file("reference"),
            "--svg",
            picture());

    Approved.check("spectrum-describe.txt", text);
    assertThat(text).doesNotContain("PPFD (", "(lx)", "(lm)");
    assertDrawn("3 spectra", "photons per nm, highest = 1");
  }

  @Test
  void describesALightWithScaleAndInJson() throws IOException {
    String place = file("places") + "#back-3";
    String text = answer("spectrum", "describe", place, "--svg", picture());
    assertThat(text).contains("PPFD (µmol m⁻² s⁻¹)").contains("illuminance (lx)");
    assertDrawn("PPFD 224 µmol m⁻² s⁻¹", "photons per nm, µmol m⁻² s⁻¹ nm⁻¹");

    Approved.check("spectrum-describe.json", answer("spectrum", "describe", place, "--json"));
    JsonNode light = json("spectrum", "describe", place, "--json").get("lights").get(0);
    // By the definition of the invented place: 105 + 95 + 24, to the rounding of its file.
    assertThat(light.get("ppfd_umol_m2_s").asDouble()).isCloseTo(224, within(0.05));
  }

  @Test
  @DisplayName("TM-27: PPF 1379.2923 µmol/s of 300 W, the hand-computed truth of flat_400_700.spdx")
  void describesTm27() throws IOException {
    Path flat = Path.of("../../shared/reference/photometric/flat_400_700.spdx");
    Assumptions.assumeTrue(
        Files.exists(flat), "skipped: no folder ../shared/reference beside the project");
    JsonNode light = json("spectrum", "describe", flat, "--json").get("lights").get(0);

    assertThat(light.get("scale").asText()).isEqualTo("flux");
    assertThat(light.get("ppf_umol_s").asDouble()).isCloseTo(1379.2923, within(1379.2923 * 3e-5));
    assertThat(light.get("ppfd_umol_m2_s").isNull()).isTrue();
    assertThat(light.get("umol_per_joule").asDouble()).isCloseTo(4.5976, within(2e-4));
  }

  @Test
  void drawsColours() {
    answer("spectrum", "describe", file("blue"), file("white"), "--colours", picture());

    assertDrawn("2 colours", ">blue<", ">white<", ">460<", ">6500<");
  }

  @Test
  void comparesWithAReference() {
    Object[] asked = {"spectrum", "compare", file("white"), "--with", file("reference")};
    Approved.check("spectrum-compare.txt", answer(concat(asked, "--svg", picture())));
    assertDrawn("white beside reference", "difference: white less reference");
    Approved.check("spectrum-compare.json", answer(concat(asked, "--equal", "energy", "--json")));
  }

  @Test
  @DisplayName("a light beside itself: overlap 1, angle 0, no shift")
  void comparesALightWithItself() throws IOException {
    JsonNode light =
        json("spectrum", "compare", file("blue"), "--with", file("blue"), "--json")
            .get("lights")
            .get(0);
    assertThat(light.get("overlap").asDouble()).isEqualTo(1);
    assertThat(light.get("spectral_angle_deg").asDouble()).isCloseTo(0, within(1e-4));
    assertThat(light.get("main_peak_shift_nm").asDouble()).isZero();
  }

  @Test
  void tellsWhatWaterDoes() {
    Object[] asked = {"spectrum", "depths", file("white"), "--at", "0:60:20"};
    Approved.check("spectrum-depths.txt", answer(concat(asked, "--svg", picture())));
    assertDrawn("white under water", "600–700\u00a0nm");
    Approved.check("spectrum-depths.json", answer(concat(asked, "--json")));
    assertThat(
            answer(
                "spectrum",
                "depths",
                file("white"),
                "--at",
                "10",
                "--length",
                "in",
                "--setup",
                folder.resolve("setup.yaml"),
                "--yellowing",
                "0.5"))
        .contains("depth (in)")
        .contains("yellowing 0.5 1/m");
  }

  @Test
  void tellsHowPlacesBlend() {
    Approved.check(
        "spectrum-blend.txt", answer("spectrum", "blend", file("places"), "--svg", picture()));
    assertDrawn("10 places against their mean light", ">front-1<", "Δu′v′");
    Approved.check("spectrum-blend.json", answer("spectrum", "blend", file("places"), "--json"));
  }

  /** The demo's setup with a distribution for every channel, so that nothing needs a fit. */
  private Path stated(String blue, String white, String violet) throws IOException {
    String setup = demo.get("setup.yaml");
    for (Map.Entry<String, String> channel :
        Map.of("blue", blue, "white", white, "violet", violet).entrySet()) {
      setup =
          setup.replace(
              "spectra/" + channel.getKey() + ".csv,",
              "spectra/" + channel.getKey() + ".csv, distribution: " + channel.getValue() + ",");
    }
    return Files.writeString(folder.resolve("stated.yaml"), setup);
  }

  @Test
  @DisplayName("channels of different optics are predicted to differ over the tank")
  void predictsABlend() throws IOException {
    Path setup =
        stated(
            "{beam: 75, photon flux: 60}",
            "{beam: 60, photon flux: 50}",
            "{beam: 100, photon flux: 12}");
    JsonNode blend = json("spectrum", "blend", setup, "--rig", "low", "--depth", "25", "--json");

    assertThat(blend.get("verdict").asText()).isEqualTo("uneven");
    assertThat(blend.get("places")).hasSize(10);
    assertThat(blend.get("statements").get(0).asText())
        .isEqualTo("Predicted under rig low by the best estimate, 25 cm deep; x, y in cm.");
  }

  @Test
  @DisplayName("a blend is not predicted where the model has the channels alike")
  void doesNotGuessABlend() throws IOException {
    String same = "{beam: 75, photon flux: 60}";
    Path setup = stated(same, same, same);
    assertThat(Run.parfield("spectrum", "blend", setup, "--rig", "low", "--depth", "25"))
        .isEqualTo(
            Run.refused(
                "parfield: how the colours of rig low blend is not known: its channels send their"
                    + " light the same way, as far as the readings tell",
                "  read a plane with one channel alone, so that a fit can tell them apart",
                "  or measure spectra at ten places, and name their files"));
  }

  @Test
  void findsDialsForAReference() throws IOException {
    Path setup =
        stated(
            "{beam: 75, photon flux: 60}",
            "{beam: 60, photon flux: 50}",
            "{beam: 100, photon flux: 12}");
    Object[] asked = {
      "spectrum", "mix", setup, "--rig", "low", "--depth", "25", "--to", file("reference")
    };
    Approved.check("spectrum-mix.txt", answer(concat(asked, "--svg", picture())));
    assertDrawn("mix beside reference");
    Approved.check("spectrum-mix.json", answer(concat(asked, "--json")));
  }

  @Test
  void findsDialsForShares() {
    Approved.check(
        "spectrum-mix-shares.txt",
        answer(
            "spectrum",
            "mix",
            file("blue"),
            file("white"),
            file("violet"),
            "--ppfd",
            "blue=105,white=95,violet=24",
            "--shares",
            "430-480=55,510-600=22",
            "--limit",
            "violet=20:60",
            "--svg",
            picture()));
    assertDrawn("The mix nearest to the wanted shares");
  }

  @Test
  @DisplayName("a made mix is taken apart into what it was made of")
  void takesAMixApart() throws IOException {
    Object[] asked = {
      "spectrum",
      "parts",
      file("places") + "#front-3",
      "--of",
      file("blue"),
      file("white"),
      file("violet")
    };
    Approved.check("spectrum-parts.txt", answer(asked));
    Approved.check("spectrum-parts.json", answer(concat(asked, "--json")));
    JsonNode parts = json(concat(asked, "--json")).get("lights").get(0);
    // By the definition of the invented place: 105, 95 and 21 of 221 µmol m⁻² s⁻¹.
    double[] ppfd = {105, 95, 21};
    for (int c = 0; c < ppfd.length; c++) {
      assertThat(parts.get("channels").get(c).get("share_of_ppfd").asDouble())
          .isCloseTo(ppfd[c] / 221, within(2e-4));
    }
  }

  @Test
  void tellsWhatAMeterMakesOfIt() throws IOException {
    Approved.check(
        "spectrum-meter.txt",
        answer("spectrum", "meter", file("blue"), file("white"), "--shown", "200"));
    Approved.check(
        "spectrum-meter.json",
        answer("spectrum", "meter", file("blue"), "--shown", "200", "--json"));
    Path table = Files.writeString(folder.resolve("probe.csv"), "nm,response\n400,0.5\n700,1\n");
    JsonNode seen =
        json("spectrum", "meter", file("blue"), "--response", table, "--json").get("seen").get(0);
    assertThat(seen.get("standing").asText()).isEqualTo("table");
    assertThat(seen.get("spectral_factor").asDouble()).isGreaterThan(1.3);
    JsonNode ideal =
        json("spectrum", "meter", file("blue"), "--response", "ideal", "--json").get("seen").get(0);
    assertThat(ideal.get("spectral_factor").asDouble()).isEqualTo(1);
  }

  @Test
  void tellsWhatColourDoesToSurveys() throws IOException {
    Path setup = folder.resolve("seen.yaml");
    Files.writeString(
        setup,
        demo.get("setup.yaml")
            .replace(
                "    applied: true\n",
                "    applied: true\n    response: generic blue-weak\n    calibrated under:"
                    + " illuminant A\n"));
    Approved.check("spectrum-meter-surveys.txt", answer("spectrum", "meter", setup));
    Approved.check("spectrum-meter-surveys.json", answer("spectrum", "meter", setup, "--json"));
  }

  @Test
  void estimatesWhatEyesGet() {
    Object[] asked = {
      "spectrum", "eyes", file("blue"), "--distance", "50", "--size", "40x9", "--ppfd", "300"
    };
    String text = answer(asked);
    Approved.check("spectrum-eyes.txt", text);
    assertThat(text).containsIgnoringCase("cautions").doesNotContainIgnoringCase("safe");
    Approved.check("spectrum-eyes.json", answer(concat(asked, "--json")));
  }

  private static Object[] concat(Object[] some, Object... more) {
    return java.util.stream.Stream.concat(
            java.util.stream.Stream.of(some), java.util.stream.Stream.of(more))
        .toArray();
  }
}
