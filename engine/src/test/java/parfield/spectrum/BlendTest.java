package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class BlendTest {
  private static final PhotonSpectrum BLUE = Leds.bell(450, 10);
  private static final PhotonSpectrum WHITE = Leds.bell(570, 60);

  private static PhotonSpectrum mix(double blue, double white) {
    return Superposition.of(List.of(BLUE, WHITE), List.of(blue, white));
  }

  /** Places whose light turns from blue to white by a step a place, each of its own brightness. */
  private static List<Blend.Spot> row(int places, double step) {
    List<Blend.Spot> spots = new ArrayList<>();
    for (int i = 0; i < places; i++) {
      double blue = 0.6 + step * i;
      spots.add(new Blend.Spot("place " + (i + 1), mix(blue, 1 - blue).times(1 + 3 * i)));
    }
    return spots;
  }

  @Test
  @DisplayName("one light everywhere has no deviation, however bright it is where")
  void oneLightEverywhere() {
    Blend blend = Blend.of(WaveBands.COMMON, row(10, 0));
    assertThat(blend.rows()).hasSize(10);
    assertThat(blend.farthest().deviation()).isLessThan(1e-6);
    assertThat(blend.widest()).isLessThan(1e-6);
    assertThat(blend.typical()).isLessThan(1e-6);
    assertThat(blend.spreads()).allSatisfy(spread -> assertThat(spread.range()).isLessThan(1e-9));
    assertThat(blend.verdict()).isEqualTo(Blend.Verdict.ONE_LIGHT);
    assertThat(blend.words())
        .startsWith("The colours blend into one light: place ")
        .endsWith(
            "differs most from the mean light, by Δu′v′ 0.0000, no more than the 0.0013 that half"
                + " of all observers notice side by side (CIE TN 001:2014).");
  }

  /**
   * Band shares of a mix of two lights at one PPFD are the weighted means of theirs, and colours
   * add as tristimulus values do (Grassmann's law): both are computed here by hand from the two
   * lights.
   */
  @Test
  @DisplayName("shares and colours of the places are those worked out from the channels")
  void findsSharesAndColours() {
    Blend blend = Blend.of(WaveBands.COMMON, row(5, 0.02));
    WaveBand band = WaveBands.COMMON.bands().get(2);
    double blueShare = share(BLUE, band);
    double whiteShare = share(WHITE, band);
    double bluePhotons = BLUE.photons(380, 700);
    double whitePhotons = WHITE.photons(380, 700);
    for (int i = 0; i < 5; i++) {
      double blue = 0.6 + 0.02 * i;
      double expected =
          (blue * blueShare * bluePhotons + (1 - blue) * whiteShare * whitePhotons)
              / (blue * bluePhotons + (1 - blue) * whitePhotons);
      assertThat(blend.rows().get(i).shares().get(2)).isCloseTo(expected, within(1e-12));
      assertThat(blend.rows().get(i).chromaticity().distance(grassmann(blue))).isLessThan(1e-9);
    }
    Blend.Spread spread = blend.spreads().get(2);
    assertThat(spread.band()).isEqualTo(band);
    assertThat(List.of(spread.leastAt(), spread.mostAt())).containsExactly("place 1", "place 5");
    assertThat(spread.mean()).isBetween(spread.least(), spread.most());
    assertThat(spread.range())
        .isCloseTo(
            blend.rows().get(4).shares().get(2) - blend.rows().get(0).shares().get(2),
            within(1e-15));
    assertThat(blend.widest()).isCloseTo(grassmann(0.6).distance(grassmann(0.68)), within(1e-9));
    assertThat(blend.verdict()).isEqualTo(Blend.Verdict.UNEVEN);
  }

  private static double share(PhotonSpectrum spectrum, WaveBand band) {
    return band.photons(spectrum) / spectrum.photons(380, 700);
  }

  private static Chromaticity grassmann(double blue) {
    Tristimulus ofBlue = StandardObserver.tristimulusOf(BLUE.toRadiant());
    Tristimulus ofWhite = StandardObserver.tristimulusOf(WHITE.toRadiant());
    double x = blue * ofBlue.x() + (1 - blue) * ofWhite.x();
    double y = blue * ofBlue.y() + (1 - blue) * ofWhite.y();
    double z = blue * ofBlue.z() + (1 - blue) * ofWhite.z();
    return new Chromaticity(x / (x + y + z), y / (x + y + z));
  }

  @Test
  @DisplayName("the verdict follows the thresholds, and the words name the number that made it")
  void judgesByTheThresholds() {
    Blend even = Blend.of(WaveBands.COMMON, row(2, 0.008));
    assertThat(even.farthest().deviation()).isBetween(Blend.JUST_NOTICEABLE, Blend.EVEN);
    assertThat(even.verdict()).isEqualTo(Blend.Verdict.EVEN);
    assertThat(even.words())
        .isEqualTo(
            String.format(
                java.util.Locale.ROOT,
                "The colours blend, with differences that may be seen side by side: %s differs most"
                    + " from the mean light, by Δu′v′ %.4f, more than a just noticeable 0.0013 (CIE"
                    + " TN 001:2014), no more than the 0.004 that count as even (ENERGY STAR SSL"
                    + " 1.1).",
                even.farthest().name(),
                even.farthest().deviation()));
    Blend uneven = Blend.of(WaveBands.COMMON, row(3, 0.1));
    assertThat(uneven.words())
        .startsWith("The colours do not blend into one light: place ")
        .endsWith(", more than the 0.004 that count as even (ENERGY STAR SSL 1.1).");
    assertThat(Blend.of(WaveBands.COMMON, row(2, 0.001)).verdict())
        .isEqualTo(Blend.Verdict.ONE_LIGHT);
  }

  @Test
  @DisplayName("neither the order of the places nor their brightness matters")
  void isBlindToOrderAndBrightness() {
    SeededLaw.holds(
        50,
        random -> {
          List<Blend.Spot> spots = new ArrayList<>();
          List<Blend.Spot> brighter = new ArrayList<>();
          for (int i = 0; i < 6; i++) {
            PhotonSpectrum light = mix(random.nextDouble(), 0.1 + random.nextDouble());
            spots.add(new Blend.Spot("place " + i, light));
            brighter.add(new Blend.Spot("place " + i, light.times(0.01 + random.nextDouble())));
          }
          Collections.reverse(brighter);
          Blend one = Blend.of(WaveBands.COMMON, spots);
          Blend other = Blend.of(WaveBands.COMMON, brighter);
          assertThat(other.farthest().name()).isEqualTo(one.farthest().name());
          assertThat(other.farthest().deviation())
              .isCloseTo(one.farthest().deviation(), within(1e-12));
          assertThat(other.typical()).isCloseTo(one.typical(), within(1e-12));
          assertThat(other.widest()).isCloseTo(one.widest(), within(1e-12));
          assertThat(one.typical()).isLessThanOrEqualTo(one.farthest().deviation());
          for (int k = 0; k < one.spreads().size(); k++) {
            assertThat(other.spreads().get(k).range())
                .isCloseTo(one.spreads().get(k).range(), within(1e-12));
          }
        });
  }

  @Test
  void saysWhatIsWrong() {
    assertThatThrownBy(() -> Blend.of(WaveBands.COMMON, List.of(new Blend.Spot("middle", BLUE))))
        .hasMessage("a blend needs the spectra of two places or more, ten are common; got 1");
    PhotonSpectrum infrared =
        new PhotonSpectrum(Wavelengths.of(800, 900), new double[] {1, 1}, Scale.RELATIVE);
    assertThatThrownBy(() -> new Blend.Spot("left end", infrared))
        .hasMessage(
            "the spectrum at left end holds no photons within 400 to 700 nm; measure it in the"
                + " light");
    assertThatThrownBy(
            () ->
                Blend.of(
                    WaveBands.edges(300, 320),
                    List.of(new Blend.Spot("a", BLUE), new Blend.Spot("b", WHITE))))
        .hasMessageStartingWith("all places together: band shares not defined: no photons within");
  }
}
