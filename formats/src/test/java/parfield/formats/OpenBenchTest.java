package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import parfield.optics.Agitation;
import parfield.tank.Place;
import parfield.tank.Rectangle;
import parfield.tank.Wall;

/** The open benches beside the repository, read as they are. */
class OpenBenchTest {
  private static Path bench(String name) {
    // Maven runs in the module's folder, an editor perhaps in the repository's.
    for (String up : new String[] {"../..", ".."}) {
      Path folder = Path.of(up, "shared", "challenge");
      if (Files.isDirectory(folder)) {
        return folder.resolve(name).resolve("setup.yaml");
      }
    }
    assumeTrue(false, "skipped: no folder ../shared/challenge beside the repository");
    return Path.of("");
  }

  @Test
  void readsTheFirst() {
    Setup setup = SetupFile.read(bench("open-1"));

    assertThat(setup.tank().length()).isEqualTo(0.9);
    assertThat(setup.rigs()).containsOnlyKeys("low", "mid", "high", "top");
    assertThat(setup.rigs().get("mid").meanHeight()).isEqualTo(0.22);
    assertThat(setup.surveys()).containsOnlyKeys("low", "high");
    assertThat(setup.surveys().get("low").readings()).hasSize(64);
    assertThat(setup.surveys().get("low").readings().get(0).place())
        .isEqualTo(new Place(7.5 * 0.01, 7.5 * 0.01, 0.15));
    assertThat(setup.surveys().get("low").readings().get(0).value()).isEqualTo(93);
    assertThat(setup.meters().get("probe").positionError()).isEqualTo(0.7 * 0.01);
    assertThat(setup.bands()).containsOnlyKeys("soft", "stony");
    assertThat(setup.demands()).isEmpty();
    assertThat(setup.assumptions())
        .containsExactly(
            "tank does not state, so taken: opening free (no rim, brace or lid), yellowing slope"
                + " 0.015 1/nm, refractive index 1.34, scattering 0 1/m, freeboard none",
            "fixtures.pendant.channels.blue does not state, so taken: output proportional to the"
                + " dial",
            "fixtures.pendant does not state, so taken: aperture of its emitters unknown (a"
                + " fit seeks it, else points)",
            "meters.probe does not state, so taken: immersion 1, applied true (readings hold the"
                + " immersion factor already), ambient 0 µmol/m²/s, resolution 1 µmol/m²/s");
  }

  @Test
  void readsTheSecond() {
    Setup setup = SetupFile.read(bench("open-2"));

    assertThat(setup.tank().walls().left()).isEqualTo(Wall.film());
    assertThat(setup.tank().walls().back()).isEqualTo(Wall.painted());
    assertThat(setup.tank().surface()).isEqualTo(Agitation.GENTLE);
    assertThat(setup.tank().opening().rim()).isEqualTo(0.03);
    assertThat(setup.tank().opening().opaque()).containsExactly(new Rectangle(0.58, 0.62, 0, 0.6));
    assertThat(setup.fixtures().get("pendant").dials()).containsExactly("blue", "violet");
    assertThat(setup.rigs().get("wide").hangings()).hasSize(2);
    assertThat(setup.surveys().get("near").readings()).hasSize(80);
  }
}
