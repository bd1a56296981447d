package parfield.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a person may do wrong with spectra: line, value and cure, exit code 2, nothing written. */
class BadSpectrumTest {
  private static final String TWO = "nm,blue photons,white photons\n440,1,0.2\n460,0.5,1\n";

  @TempDir private Path folder;

  private Path file(String name, String text) {
    try {
      return Files.writeString(folder.resolve(name), text);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private void assertRefused(Run run, String... lines) {
    assertThat(run).isEqualTo(Run.refused(lines));
    assertThat(Run.files(folder)).noneMatch(name -> name.endsWith(".svg"));
  }

  @Test
  void faultsOfAFileAreToldWithLineValueAndCure() {
    for (String question : List.of("describe", "blend", "meter")) {
      assertRefused(
          Run.parfield(
              "spectrum", question, file("m.csv", "wavelength,photons\n4e-7,1\n4.1e-7,1\n")),
          "parfield: 1 fault in m.csv",
          "  m.csv:2: wavelength: got 4.00000e-07 to 4.10000e-07, allowed 100 to 4000 nm; these look"
              + " like metres: multiply them by 1e9");
    }
    assertRefused(
        Run.parfield("spectrum", "describe", folder.resolve("none.csv")),
        "parfield: 1 fault in none.csv",
        "  none.csv: the file cannot be read: got no such file, allowed a file that exists; check"
            + " its name and folder");
  }

  @Test
  void aUnitThatIsNotStatedIsAskedForAndMustBeOne() {
    Path bare = file("s.csv", "nm,S\n440,1\n460,0.5\n");
    assertThat(Run.parfield("spectrum", "describe", bare).err()).contains("or give --unit: ");
    assertThat(Run.parfield("spectrum", "describe", bare, "--unit", "photons").code()).isZero();
    assertThat(Run.parfield("spectrum", "describe", bare, "--unit", "lm/nm").err())
        .isEqualTo(
            "parfield: Invalid value for option '--unit': a unit of spectra is one of W/m2/nm,"
                + " uW/cm2/nm, W/nm, umol/m2/s/nm, energy, photons, counts; got lm/nm\n"
                + "  see parfield spectrum describe --help\n");
  }

  @Test
  void countsAreTakenWithACaution() {
    Run run = Run.parfield("spectrum", "describe", file("c.csv", "nm,counts\n440,10\n460,20\n"));
    assertThat(run.code()).isZero();
    assertThat(run.out())
        .contains("its counts are taken as photons, the spectrometer's own response in them");
  }

  @Test
  void oneSpectrumOfAFileIsNamed() {
    Path two = file("two.csv", TWO);
    assertRefused(
        Run.parfield("spectrum", "describe", two + "#bleu"),
        "parfield: two.csv holds no spectrum named bleu",
        "  did you mean blue?");
    assertRefused(
        Run.parfield("spectrum", "compare", two, "--with", two),
        "parfield: two.csv holds 2 spectra; the reference is one of them",
        "  name it, as in two.csv#blue");
  }

  @Test
  void bandsAreToldByTheirEnds() {
    Path two = file("two.csv", TWO);
    for (String bands : List.of("400", "500,400", "blue,red", "400,,500")) {
      assertThat(Run.parfield("spectrum", "describe", two, "--bands", bands).err())
          .startsWith(
              "parfield: Invalid value for option '--bands': wavebands are told by their ends in"
                  + " nm, upward, 2 to 31 of them, as in 380,400,430,480,510,600,700; got "
                  + bands);
    }
  }

  @Test
  void aMixNeedsToKnowHowBrightChannelsAre() {
    Path two = file("two.csv", TWO);
    assertRefused(
        Run.parfield("spectrum", "mix", two, "--to", two + "#blue"),
        "parfield: how bright channel blue is beside the others is not known",
        "  read every channel alone at full output, at one place: --ppfd blue=…,white=…",
        "  or take it from the light model of a setup: --rig and --depth");
    assertRefused(
        Run.parfield("spectrum", "mix", two, "--to", two + "#blue", "--ppfd", "blue=100"),
        "parfield: --ppfd tells nothing of channel white",
        "  read every channel alone at full output, at one place, and give all of them");
    assertRefused(
        Run.parfield(
            "spectrum", "mix", two, "--ppfd", "blue=100,white=100", "--shares", "400-500=45"),
        "parfield: 400-500 is none of the wavebands",
        "  they are 380-400, 400-430, 430-480, 480-510, 510-600, 600-700; give others by --bands");
    assertRefused(
        Run.parfield(
            "spectrum",
            "mix",
            two,
            "--ppfd",
            "blue=100,white=100",
            "--shares",
            "430-480=45",
            "--limit",
            "blue=80:20"),
        "parfield: the limit of channel blue is no range: 80:20",
        "  write two dials from 0 to 100, the lower first, as in --limit blue=20:100");
    assertThat(Run.parfield("spectrum", "mix", two).err())
        .startsWith("parfield: Error: Missing required argument");
  }

  @Test
  void eyesNeedABrightnessAndASize() {
    Path one = file("one.csv", "nm,photons\n440,1\n460,0.5\n");
    assertRefused(
        Run.parfield("spectrum", "eyes", one, "--distance", "50", "--size", "40x9"),
        "parfield: how bright one is where the eye is, is not known",
        "  read the PPFD there, in air, facing the light, and give it, as in --ppfd 300");
    assertThat(Run.parfield("spectrum", "eyes", one, "--distance", "50", "--size", "40").err())
        .isEqualTo(
            "parfield: Invalid value for option '--size': a size is two lengths above 0, as in 40x9;"
                + " got 40\n  see parfield spectrum eyes --help\n");
  }

  @Test
  void aMetersResponseIsANameOrAFile() {
    Path one = file("one.csv", "nm,photons\n440,1\n460,0.5\n");
    assertRefused(
        Run.parfield("spectrum", "meter", one, "--response", "generic blue-week"),
        "parfield: nothing goes by the name generic blue-week",
        "  did you mean generic blue-weak?");
    Path setup = Run.bench(folder);
    assertRefused(
        Run.parfield("spectrum", "meter", setup),
        "parfield: setup.yaml states of no surveyed meter how it sees colour",
        "  add it, as in meters: {probe: {response: generic blue-weak, calibrated under: illuminant"
            + " A}}");
  }

  @Test
  void optionsOfASetupDoNotGoWithSpectra() {
    Path two = file("two.csv", TWO);
    assertRefused(
        Run.parfield("spectrum", "blend", two, "--depth", "20"),
        "parfield: --rig, --depth and --at belong to a setup, not to files of spectra",
        "  name a setup file (YAML), or leave them out");
    assertRefused(
        Run.parfield("spectrum", "blend", Run.bench(folder)),
        "parfield: a blend is predicted under a rig, at a depth: --rig was not given",
        "  give both, as in --rig low --depth 20");
  }

  @Test
  void aPictureNeverReplacesAnInput() {
    Path two = file("two.csv", TWO);
    assertThat(Run.parfield("spectrum", "blend", two, "--svg", two).err())
        .contains("is read by this command: it is not overwritten");
    assertThat(two).hasContent(TWO);
  }

  @Test
  void aQuestionMustBeNamed() {
    assertThat(Run.parfield("spectrum"))
        .isEqualTo(
            Run.refused(
                "parfield: name a question; none was given", "  see parfield spectrum --help"));
  }
}
