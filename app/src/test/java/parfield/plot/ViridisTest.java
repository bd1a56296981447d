package parfield.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** The colours of PPFD. */
class ViridisTest {
  @Test
  @DisplayName("ends and middle are the published ones (colour map viridis, CC0)")
  void knots() {
    assertThat(Viridis.palette().getMapSize()).isEqualTo(Viridis.SIZE);
    assertThat(Viridis.rgb(0)).isEqualTo(0x440154);
    assertThat(Viridis.rgb(128 / 255.0)).isEqualTo(0x21918c);
    assertThat(Viridis.rgb(1)).isEqualTo(0xfde725);
  }

  @Test
  @DisplayName("lightness L* rises evenly but for rounding to 8 bits: grey print keeps the order")
  void lightnessRises() {
    double[] lightness =
        IntStream.range(0, Viridis.SIZE)
            .mapToDouble(i -> lightness(Viridis.rgb(i / 255.0)))
            .toArray();
    for (int i = 3; i < lightness.length; i++) {
      assertThat(lightness[i])
          .as("colours %d and %d", i - 1, i)
          .isGreaterThan(lightness[i - 1] - 0.1);
      assertThat(lightness[i])
          .as("colours %d and %d", i - 3, i)
          .isGreaterThan(lightness[i - 3] + 0.3);
      assertThat(lightness[i]).as("colours %d and %d", i - 3, i).isLessThan(lightness[i - 3] + 1.7);
    }
    assertThat(lightness[0]).isLessThan(20);
    assertThat(lightness[255]).isGreaterThan(90);
  }

  /** CIE 1976 L* of an sRGB colour (IEC 61966-2-1, CIE 15). */
  private static double lightness(int rgb) {
    double y =
        0.2126 * linear(rgb >> 16 & 255)
            + 0.7152 * linear(rgb >> 8 & 255)
            + 0.0722 * linear(rgb & 255);
    return y > 216 / 24389.0 ? 116 * Math.cbrt(y) - 16 : y * 24389 / 27;
  }

  private static double linear(int channel) {
    double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }
}
