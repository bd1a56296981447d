package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static parfield.spectrum.Comparison.Basis.EQUAL_ENERGY;
import static parfield.spectrum.Comparison.Basis.EQUAL_PPFD;

import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class ComparisonTest {
  private static PhotonSpectrum block(double fromNm, double toNm) {
    return new PhotonSpectrum(Wavelengths.of(fromNm, toNm), new double[] {2, 2}, Scale.FLUX);
  }

  /** A light that is sampled from 400 to 700 nm and dark beyond. */
  private static PhotonSpectrum par(java.util.SplittableRandom random) {
    Wavelengths wavelengths = RandomSpectra.wavelengths(random, 400, 700, 1, 8);
    return new PhotonSpectrum(
        wavelengths, RandomSpectra.values(random, wavelengths), Scale.RELATIVE);
  }

  private static PhotonSpectrum random(java.util.SplittableRandom random) {
    Wavelengths wavelengths = RandomSpectra.wavelengths(random, 380, 780, 1, 8);
    return new PhotonSpectrum(
        wavelengths, RandomSpectra.values(random, wavelengths), Scale.RELATIVE);
  }

  /**
   * Closed forms. Blocks of widths w₁ and w₂ that share w: cos = w / √(w₁ w₂), overlap = w /
   * max(w₁, w₂). A ramp 0 to 2/w over its width against the flat 1/w: cos = √3/2, overlap 3/4.
   */
  @Test
  @DisplayName("angle and overlap are those of the closed forms")
  void meetsClosedForms() {
    Comparison blocks = Comparison.of(EQUAL_PPFD, block(420, 520), block(450, 650));
    assertThat(blocks.angle()).isCloseTo(Math.acos(70 / Math.sqrt(20_000)), within(1e-12));
    assertThat(blocks.overlap()).isCloseTo(70.0 / 200, within(1e-12));

    PhotonSpectrum ramp =
        new PhotonSpectrum(Wavelengths.of(400, 700), new double[] {0, 1}, Scale.RELATIVE);
    Comparison ramps = Comparison.of(EQUAL_PPFD, ramp, PhotonSpectrum.flat());
    assertThat(ramps.angle()).isCloseTo(Math.PI / 6, within(1e-12));
    assertThat(ramps.overlap()).isCloseTo(0.75, within(1e-12));
    assertThat(ramps.peakShiftNm()).isEqualTo(Finding.notDefined("the light has no peak"));

    Comparison apart = Comparison.of(EQUAL_PPFD, block(420, 520), block(530, 650));
    assertThat(apart.angle()).isCloseTo(Math.PI / 2, within(1e-12));
    assertThat(apart.overlap()).isCloseTo(0, within(1e-12));
  }

  /**
   * Two bells of one width σ and peaks d apart: cos = exp(−d² / 4σ²), and the overlap of two normal
   * densities is 2 Φ(−d / 2σ) (Inman and Bradley 1989): at d = 2σ, 2 Φ(−1) = 0.3173105. Lines of 1
   * nm between samples of a bell of σ = 20 nm miss squares by some 1e-4.
   */
  @Test
  @DisplayName("two bells overlap as two normal densities do")
  void meetsTheOverlapOfNormalDensities() {
    Comparison bells = Comparison.of(EQUAL_PPFD, Leds.bell(570, 20), Leds.bell(530, 20));
    assertThat(Math.cos(bells.angle())).isCloseTo(Math.exp(-1), within(3e-4));
    assertThat(bells.overlap()).isCloseTo(0.3173105, within(2e-4));
    assertThat(bells.peakShiftNm().toOptional().orElseThrow()).isCloseTo(40, within(1e-6));
  }

  /** A joule at λ holds λ/119.6 µmol: on equal energy a photon counts 1/λ. */
  @Test
  @DisplayName("on equal energy the bands hold power, on equal PPFD photons")
  void keepsTheBasesApart() {
    PhotonSpectrum lines =
        Superposition.of(List.of(block(449, 451), block(599, 601)), List.of(1.0, 1.0));
    WaveBands halves = WaveBands.edges(400, 500, 700);
    List<Comparison.Row> photons =
        Comparison.of(EQUAL_PPFD, lines, PhotonSpectrum.flat()).bands(halves);
    List<Comparison.Row> power =
        Comparison.of(EQUAL_ENERGY, lines, PhotonSpectrum.flat()).bands(halves);
    assertThat(photons.get(0).light()).isCloseTo(0.5, within(1e-9));
    assertThat(photons.get(0).reference()).isCloseTo(1.0 / 3, within(1e-9));
    assertThat(photons.get(0).difference()).isCloseTo(1.0 / 6, within(1e-9));
    assertThat(power.get(0).light()).isCloseTo(600.0 / 1050, within(1e-5));
    assertThat(power.get(0).reference())
        .isCloseTo(Math.log(5 / 4.0) / Math.log(7 / 4.0), within(1e-4));
  }

  @Test
  @DisplayName("both curves hold 1 over 400-700 nm, and their difference nothing")
  void curvesAreScaledAlike() {
    SeededLaw.holds(
        200,
        random -> {
          PhotonSpectrum light = par(random);
          PhotonSpectrum reference = par(random);
          Comparison compared =
              Comparison.of(random.nextBoolean() ? EQUAL_PPFD : EQUAL_ENERGY, light, reference);
          double lightSum = 0;
          double difference = 0;
          Wavelengths nm = compared.wavelengths();
          for (int i = 1; i < nm.size(); i++) {
            double step = (nm.nm(i) - nm.nm(i - 1)) / 2;
            lightSum += step * (compared.light(i - 1) + compared.light(i));
            difference += step * (compared.difference(i - 1) + compared.difference(i));
          }
          assertThat(lightSum).isCloseTo(1, within(1e-12));
          assertThat(difference).isCloseTo(0, within(1e-12));
        });
  }

  @Test
  @DisplayName("brightness is nothing, sides can be exchanged, a light is all like itself")
  void holdsItsLaws() {
    SeededLaw.holds(
        200,
        random -> {
          PhotonSpectrum light = random(random);
          PhotonSpectrum reference = random(random);
          Comparison.Basis basis = random.nextBoolean() ? EQUAL_PPFD : EQUAL_ENERGY;
          Comparison one = Comparison.of(basis, light, reference);
          Comparison two = Comparison.of(basis, reference.times(7), light.times(0.1));
          assertThat(two.angle()).isCloseTo(one.angle(), within(1e-12));
          assertThat(two.overlap()).isCloseTo(one.overlap(), within(1e-12));
          assertThat(two.peakShiftNm().toOptional().orElseThrow())
              .isCloseTo(-one.peakShiftNm().toOptional().orElseThrow(), within(1e-6));
          Comparison itself = Comparison.of(basis, light, light.times(3));
          assertThat(itself.angle()).isLessThan(1e-13);
          assertThat(itself.overlap()).isCloseTo(1, within(1e-13));
          double shares = 0;
          for (Comparison.Row row : one.bands(WaveBands.COMMON)) {
            shares += row.difference();
          }
          assertThat(shares).isCloseTo(0, within(1e-9));
        });
  }

  @Test
  void saysWhatIsWrong() {
    PhotonSpectrum ultraviolet = block(350, 380);
    assertThatThrownBy(() -> Comparison.of(EQUAL_PPFD, Leds.bell(450, 9), ultraviolet))
        .hasMessage(
            "the reference holds no photons within 400 to 700 nm, so that no PPFD can be made"
                + " equal");
    Comparison far = Comparison.of(EQUAL_PPFD, block(400, 500), block(600, 700));
    assertThatThrownBy(() -> far.bands(WaveBands.edges(620, 650)))
        .hasMessage(
            "the light holds no light within 620.0 to 650.0 nm, so that it has no shares by band");
  }
}
