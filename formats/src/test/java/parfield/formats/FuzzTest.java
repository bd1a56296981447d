package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Base64;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Files spoiled at random give a setup or {@link InvalidFile}, nothing else, and no case takes more
 * memory than a few times what a sound setup takes. A failing case is printed with its seed.
 */
class FuzzTest {
  private static final long SEED = Long.getLong("seed", 20260501L);
  private static final int CASES = Integer.getInteger("cases", 400);

  /** Bytes that one case may allocate: lists of faults, cells, a sheet's buffers. */
  private static final long MOST_BYTES = 16L << 20;

  @TempDir private Path folder;

  private void fuzz(String name, byte[] sound) {
    SplittableRandom random = new SplittableRandom(SEED);
    TestBench bench = TestBench.in(folder);
    if (name.endsWith("xlsx")) {
      bench.replacing("low.csv", "low.xlsx");
    } else if (name.equals("pendant.csv")) {
      bench.replacing("{beam: 90, photon flux: 120}", "{table: pendant.csv}");
    } else if (name.startsWith("arch")) {
      bench.replacing(
          "arch: {box: {length: 20, width: 15, height: 10}",
          "arch: {mesh: " + name + ", unit: " + (name.endsWith("glb") ? "m" : "cm"));
    }
    // Sound first: that loads every class, whose memory is no case's.
    assertThat(bench.with(name, sound).faults()).isEmpty();
    int refused = 0;
    for (int i = 0; i < CASES; i++) {
      byte[] bytes = Damage.of(sound, random);
      bench.with(name, bytes);
      long before = allocated();
      try {
        assertThat(bench.read().tank()).isNotNull();
      } catch (InvalidFile e) {
        refused++;
        assertThat(e.faults()).isNotEmpty();
        assertThat(e.getMessage()).doesNotContain("\0", "\u001b");
      } catch (Throwable e) {
        throw failed(name, i, bytes, e);
      }
      if (allocated() - before > MOST_BYTES) {
        throw failed(
            name, i, bytes, new AssertionError(allocated() - before + " bytes were allocated"));
      }
    }
    // Else the damage is none, or the sound file is not sound.
    assertThat(refused).isBetween(CASES / 10, CASES - 1);
  }

  private static AssertionError failed(String name, int i, byte[] bytes, Throwable cause) {
    return new AssertionError(
        String.format(
            java.util.Locale.ROOT,
            "seed %d, case %d, %s in base 64:%n%s",
            SEED,
            i,
            name,
            Base64.getEncoder().encodeToString(bytes)),
        cause);
  }

  private static long allocated() {
    return ((com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean())
        .getCurrentThreadAllocatedBytes();
  }

  @Test
  void setups() {
    fuzz("setup.yaml", TestBench.FULL.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void lists() {
    fuzz("low.csv", TestBench.READINGS.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void grids() {
    fuzz(
        "low.csv",
        "# depth 15 cm\ny\\x (cm);10;20,5\n5;100;120\n25;90,5;\n\ndepth;20;cm\n;10\n5;7\n"
            .getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void workbooks() {
    fuzz("low.xlsx", WorkbookTest.sound());
  }

  @Test
  void meshes() {
    fuzz("arch.obj", Blocks.obj().getBytes(StandardCharsets.UTF_8));
    fuzz("arch-text.stl", Blocks.textStl().getBytes(StandardCharsets.UTF_8));
    fuzz("arch.stl", Blocks.binaryStl());
    fuzz("arch.glb", Blocks.glb());
  }

  @Test
  void spectra() {
    fuzz("spectra/blue.csv", TestBench.SPECTRUM.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void exchangedSpectra() {
    StringBuilder xml =
        new StringBuilder(
            """
            <?xml version="1.0"?>
            <IESTM2714 version="1.0">
            <SpectralDistribution>
            <SpectralQuantity>flux</SpectralQuantity>
            """);
    for (int nm = 380; nm <= 780; nm += 20) {
      xml.append("<SpectralData wavelength=\"").append(nm).append("\">1.5</SpectralData>\n");
    }
    xml.append("</SpectralDistribution></IESTM2714>");
    fuzz("spectra/blue.csv", xml.toString().getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void intensityTables() {
    fuzz("pendant.csv", "gamma_deg,0,90\n0,100,100\n45,80,40\n".getBytes(StandardCharsets.UTF_8));
  }
}
