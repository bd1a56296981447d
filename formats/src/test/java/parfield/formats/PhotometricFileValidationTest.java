package parfield.formats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Photometric files whose truth is known by hand: closed forms of simple lights, and the integral
 * over straight lines between the angles of a table. The files were written by hand for this.
 */
class PhotometricFileValidationTest {
  private static byte[] bytes(String name) {
    try (InputStream in =
        PhotometricFileValidationTest.class.getResourceAsStream("photometric/" + name)) {
      return in.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static PhotometricFile read(String name) {
    return PhotometricFile.read(name, bytes(name));
  }

  /** 4π sr times 1000 cd. */
  @Test
  void isotropic() {
    PhotometricFile file = read("isotropic_1000cd.ies");
    assertThat(file.edition()).isEqualTo("LM-63-2002");
    assertThat(file.absolute()).isTrue();
    assertThat(file.table().flux()).isCloseTo(12566.3706, within(1e-4));
    assertThat(file.table().downwardShare()).isCloseTo(0.5, within(1e-12));
    assertThat(file.table().symmetry()).isEqualTo(CandelaTable.Symmetry.AXIAL);
    assertThat(file.cautions()).isEmpty();
    assertThat(file.watts()).hasValue(100);
  }

  /** π sr times 1000 cd is 3141.5927 lm; the table of 10 degrees read straight is 3133.5934 lm. */
  @Test
  void lambert() {
    PhotometricFile file = read("lambert_I0_1000.ies");
    assertThat(file.edition()).isEqualTo("LM-63-1995");
    assertThat(file.table().flux()).isCloseTo(3133.5934, within(1e-4));
    assertThat(file.table().flux()).isCloseTo(Math.PI * 1000, within(0.003 * Math.PI * 1000));
    assertThat(file.table().candela(Math.toRadians(60), 1)).isCloseTo(500, within(1e-9));
    assertThat(file.table().candela(Math.toRadians(91), 1)).isZero();
  }

  /** 100, 80, 0 times candela multiplier 2 times ballast factor 0.9; the number of lamps not. */
  @Test
  void quirks() {
    PhotometricFile file = read("quirks_tilt_include.ies");
    assertThat(file.edition()).isEqualTo("LM-63-1991");
    assertThat(file.factor()).isCloseTo(1.8, within(1e-12));
    double[] expected = {180, 144, 0};
    for (int i = 0; i < 3; i++) {
      assertThat(file.table().candela(Math.toRadians(45 * i), 2.2))
          .isCloseTo(expected[i], within(1e-9));
    }
    // Zones of the mean of their ends, as by hand; straight lines between the angles, by the
    // midpoint
    // rule in fine steps. So coarse a table leaves 5 % between the two.
    double zonal = 0;
    for (int i = 0; i < 2; i++) {
      double sky = Math.cos(Math.toRadians(45 * i)) - Math.cos(Math.toRadians(45 * (i + 1)));
      zonal += 2 * Math.PI * sky * (expected[i] + expected[i + 1]) / 2;
    }
    assertThat(zonal).isCloseTo(618.0166, within(1e-3));
    double straight = 0;
    for (int i = 0; i < 9000; i++) {
      double gamma = Math.toRadians((i + 0.5) / 100);
      straight +=
          file.table().candela(gamma, 0) * 2 * Math.PI * Math.sin(gamma) * Math.toRadians(0.01);
    }
    assertThat(file.table().flux()).isCloseTo(straight, within(1e-4 * straight));
    assertThat(file.lamps()).isEqualTo(2);
    assertThat(file.lampLumens()).hasValue(2000);
    assertThat(file.watts()).hasValue(120);
    assertThat(file.tilt().orElseThrow().degrees()).containsExactly(0.0, 45.0, 90.0);
    assertThat(file.tilt().orElseThrow().factors()).containsExactly(1.0, 0.95, 0.9);
    assertThat(file.tilt().orElseThrow().geometry()).isEqualTo(1);
    // Half a foot.
    assertThat(file.length()).isCloseTo(0.1524, within(1e-12));
  }

  /** 2000 lm by Lambert's law: I(0) = 2000/π cd; the table of 15 degrees read straight is less. */
  @Test
  void eulumdat() {
    PhotometricFile file = read("lambert_2000lm.ldt");
    assertThat(file.absolute()).isTrue();
    assertThat(file.statedLumens()).hasValue(2000);
    assertThat(file.table().candela(0, 0)).isCloseTo(2000 / Math.PI, within(1e-3));
    assertThat(file.table().flux()).isCloseTo(2000, within(0.006 * 2000));
    assertThat(file.labels()).contains(new PhotometricFile.Label("colour", "5000"));
  }

  /** A spectrum of IES TM-27: 1 W/nm from 400 to 700 nm is 300 W and 1379.2923 µmol/s. */
  @Test
  void spectrum() {
    MeasuredSpectrum flat =
        SpectrumFile.read("flat.spdx", bytes("flat_400_700.spdx"), Optional.empty(), new Notes())
            .get(0);
    assertThat(flat.radiant().power()).isCloseTo(300, within(1e-9));
    assertThat(flat.photons().parPhotons()).isCloseTo(1379.2923, within(0.02));
  }

  private static PhotometricFile of(String text) {
    return PhotometricFile.read("a.ies", text.getBytes(StandardCharsets.UTF_8));
  }

  /** ANSI/IES LM-63-2019: field 12 is a code of how the file came to be, no factor. */
  @Test
  void code() {
    String body = "\nTILT=NONE\n1 -1 1 3 1 1 2 0 0 0\n1 1.00010 100\n0 90 180\n0\n1 1 1\n";
    assertThat(of("IES:LM-63-2019" + body.replace("1.00010", "1.1")).table().flux())
        .isCloseTo(4 * Math.PI, within(1e-9));
    assertThat(of("IESNA91" + body.replace("1.00010", "0.5")).table().flux())
        .isCloseTo(2 * Math.PI, within(1e-9));
    assertThat(of("IESNA:LM-63-2002" + body.replace("1.00010", "0")).table().flux())
        .isCloseTo(4 * Math.PI, within(1e-9));
  }
}
