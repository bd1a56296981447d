package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.lamp.PhotonFlux;
import parfield.spectrum.LightAnalysis;

/**
 * A setup whose distribution is a photometric file: where its photons come from, and what is said
 * where they cannot be told. The file gives 1000 cd by Lambert's law, π · 1000 lm, in fine steps.
 */
class FileLightTest {
  private static final double LUMENS = Math.PI * 1000;

  @TempDir private Path folder;

  private static String lambert(String... labels) {
    StringBuilder text = new StringBuilder("IESNA:LM-63-2002\n");
    for (String label : labels) {
      text.append(label).append('\n');
    }
    text.append("TILT=NONE\n1 -1 1 181 1 1 2 0 0 0\n1 1 0\n");
    for (int i = 0; i <= 180; i++) {
      text.append(i * 0.5).append('\n');
    }
    text.append("0\n");
    for (int i = 0; i <= 180; i++) {
      text.append(1000 * Math.cos(Math.toRadians(i * 0.5))).append('\n');
    }
    // The cosine of 90 degrees is not quite 0 in a machine.
    return text.toString().replaceAll("\\d\\.\\d+E-14", "0");
  }

  private TestBench bench(String distribution, String file) {
    return TestBench.in(folder)
        .replacing("{beam: 90, photon flux: 120}", distribution)
        .with("pendant.ies", file);
  }

  private static Channel blue(Setup setup) {
    Fixture fixture = setup.fixtures().get("pendant");
    return fixture.channels().get(0);
  }

  private static double flux(Channel channel) {
    return PhotonFlux.of(channel.distribution().orElseThrow());
  }

  @Test
  void scaledToAPhotonFlux() {
    Setup setup = bench("{file: pendant.ies, photon flux: 120}", lambert()).read();
    assertThat(flux(blue(setup))).isCloseTo(120, within(0.02));
    assertThat(blue(setup).distribution().orElseThrow().intensity(Math.PI / 3, 1))
        .isCloseTo(120 / Math.PI / 2, within(0.01));
  }

  /** The file is the whole fixture's, two emitters; the channel's spectrum makes photons of it. */
  @Test
  void bySpectrum() {
    TestBench bench =
        TestBench.in(folder)
            .replacing(
                "output: {0: 0, 50: 0.4, 100: 1}}",
                "output: {0: 0, 50: 0.4, 100: 1}, distribution: {file: pendant.ies}}")
            .with("pendant.ies", lambert());
    Setup setup = bench.read();
    double perMicromole =
        LightAnalysis.of(blue(setup).spectrum().orElseThrow())
            .luxPerPpfd()
            .toOptional()
            .orElseThrow();
    assertThat(flux(blue(setup))).isCloseTo(LUMENS / perMicromole / 2, within(0.1));
    assertThat(setup.assumptions())
        .anyMatch(
            it ->
                it.startsWith(
                    "pendant.ies: candela become photons by the spectrum of channel blue"));
  }

  @Test
  void byKeywords() {
    String file =
        lambert(
            "[_PARFIELD_FORMAT] 1",
            "[_PARFIELD_PHOTONS] 0.1 umol/s per lm",
            "[_PARFIELD_PPF] 314.1593 300 330 umol/s",
            "[_PARFIELD_CHANNEL] 200 blue",
            "[_PARFIELD_CHANNEL] 114.1593 violet");
    Setup setup = bench("{file: pendant.ies}", file).read();
    assertThat(flux(blue(setup))).isCloseTo(100, within(0.02));
    assertThat(setup.assumptions())
        .contains(
            "pendant.ies: it tells of 2 channels together: each is taken to have the shape of their"
                + " sum");
  }

  @Test
  void refusedWithWords() {
    assertThat(bench("{file: pendant.ies}", lambert()).faults())
        .containsExactly(
            "setup.yaml:33:26: fixtures.pendant.distribution.file: got a file that tells the light"
                + " of all channels together, in candela, allowed a file for each channel, or one"
                + " with photon keywords; give channel blue a distribution of its own, or state the"
                + " photon flux of one emitter beside it: {file: …, photon flux: 120}");
    String others =
        lambert(
            "[_PARFIELD_FORMAT] 1",
            "[_PARFIELD_PHOTONS] 0.1",
            "[_PARFIELD_PPF] 314.1593 300 330",
            "[_PARFIELD_CHANNEL] 200 white",
            "[_PARFIELD_CHANNEL] 114.1593 red");
    assertThat(bench("{file: pendant.ies}", others).faults())
        .containsExactly(
            "setup.yaml:33:26: fixtures.pendant.distribution.file: got a file of the channels white,"
                + " red, allowed one that tells of channel blue; name the channel as the file does,"
                + " or give each channel a distribution with a file of its own");
    assertThat(bench("{file: pendant.ies, peak: 3}", lambert()).faults())
        .contains(
            "setup.yaml:33:19: fixtures.pendant.distribution: got a file with a peak, allowed a"
                + " file, with or without a photon flux; delete peak");
    assertThat(bench("{file: pendant.ies, table: low.csv}", lambert()).faults())
        .containsExactly(
            "setup.yaml:33:19: fixtures.pendant.distribution: got several kinds, allowed one of"
                + " beam, lobe, table, file; write fitted, {beam: 90, photon flux: 120}, {lobe: 2,"
                + " peak: 60}, {table: pendant.csv} or {file: pendant.ies}");
    assertThat(bench("{file: none.ies}", lambert()).faults())
        .containsExactly(
            "setup.yaml:33:26: fixtures.pendant.distribution.file: got none.ies, no such file,"
                + " allowed a file that exists; check its name and folder");
    assertThat(
            TestBench.in(folder)
                .replacing(
                    "violet: {spectrum: spectra/blue.csv, watts: 30, output: {0: 0, 100: 1},"
                        + " distribution: {lobe: 2, peak: 40}}",
                    "violet: {watts: 30, distribution: {file: pendant.ies}}")
                .with("pendant.ies", lambert())
                .faults())
        .containsExactly(
            "setup.yaml:30:48: fixtures.pendant.channels.violet.distribution.file: got a file in"
                + " candela, which count what the eye sees, allowed a channel whose spectrum is"
                + " known, so that they become photons; state the spectrum of channel violet, or"
                + " state the photon flux of one emitter beside it: {file: …, photon flux: 120}");
  }
}
