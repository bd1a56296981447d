package parfield.spectrum;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;

class ChannelMixTest {
  private static final WaveBand RANGE = WaveBand.of(380, 780);
  private static final int RANDOM_SETTINGS = 10_000;

  private static List<OutputRange> full(int channels) {
    return Collections.nCopies(channels, OutputRange.FULL);
  }

  private static List<OutputRange> someLimits(SplittableRandom random, int channels) {
    List<OutputRange> limits = new ArrayList<>();
    for (int c = 0; c < channels; c++) {
      double low = random.nextInt(2) == 0 ? 0 : 0.3 * random.nextDouble();
      limits.add(new OutputRange(low, low + (1 - low) * (0.05 + 0.95 * random.nextDouble())));
    }
    return limits;
  }

  private static MixGoal someShares(SplittableRandom random) {
    Map<WaveBand, Double> wanted = new LinkedHashMap<>();
    double[] parts = random.doubles(WaveBands.COMMON.bands().size()).map(v -> v * v).toArray();
    double sum = 0;
    for (double part : parts) {
      sum += part;
    }
    boolean all = random.nextBoolean();
    for (int k = 0; k < parts.length; k++) {
      if (all || k % 2 == 0) {
        wanted.put(WaveBands.COMMON.bands().get(k), parts[k] / sum);
      }
    }
    return MixGoal.shares(WaveBands.COMMON, wanted);
  }

  /** No setting within the limits may come nearer than the mix that was found. */
  private static void assertNothingNearer(
      MixGoal goal,
      List<ChannelLight> channels,
      List<OutputRange> limits,
      SplittableRandom random) {
    ChannelMix found = ChannelMix.nearest(goal, channels, limits);
    for (int c = 0; c < limits.size(); c++) {
      assertThat(found.outputs().get(c)).isBetween(limits.get(c).low(), limits.get(c).high());
    }
    for (int i = 0; i < RANDOM_SETTINGS; i++) {
      List<Double> outputs = new ArrayList<>();
      // Half of the settings near the one found, where a better one would be.
      for (int c = 0; c < limits.size(); c++) {
        OutputRange limit = limits.get(c);
        double anywhere = limit.low() + (limit.high() - limit.low()) * random.nextDouble();
        double near = found.outputs().get(c) * (1 + 0.1 * (random.nextDouble() - 0.5));
        outputs.add(i % 2 == 0 ? anywhere : Math.max(limit.low(), Math.min(limit.high(), near)));
      }
      PhotonSpectrum light =
          Superposition.of(channels.stream().map(ChannelLight::spectrum).toList(), outputs);
      assertThat(goal.mismatch(light).toOptional().orElseThrow())
          .as("outputs %s against %s", outputs, found.outputs())
          .isGreaterThanOrEqualTo(found.mismatch() - 1e-9);
    }
  }

  @Test
  @DisplayName("the nearest shape is never worse than any of 10,000 random settings")
  void nearestShapeBeatsRandomSettings() {
    SeededLaw.holds(
        6,
        random -> {
          List<ChannelLight> channels = Leds.random(random);
          PhotonSpectrum reference =
              Superposition.of(
                  List.of(Leds.bell(460, 30), Leds.bell(420 + 200 * random.nextDouble(), 60)),
                  List.of(1.0, random.nextDouble()));
          assertNothingNearer(
              MixGoal.shape(reference, RANGE),
              channels,
              random.nextBoolean() ? full(channels.size()) : someLimits(random, channels.size()),
              random);
        });
  }

  @Test
  @DisplayName("the nearest shares are never worse than any of 10,000 random settings")
  void nearestSharesBeatRandomSettings() {
    SeededLaw.holds(
        6,
        random -> {
          List<ChannelLight> channels = Leds.random(random);
          assertNothingNearer(
              someShares(random),
              channels,
              random.nextBoolean() ? full(channels.size()) : someLimits(random, channels.size()),
              random);
        });
  }

  @Test
  @DisplayName("a mix that the channels can make is found again, at full brightness")
  void findsAMixThatItCanMake() {
    List<ChannelLight> channels = Leds.fixture();
    List<Double> outputs = List.of(0.3, 0.6, 0.15, 0.24, 0.06);
    PhotonSpectrum made =
        Superposition.of(channels.stream().map(ChannelLight::spectrum).toList(), outputs);
    ChannelMix byShape =
        ChannelMix.nearest(MixGoal.shape(made.relative(), RANGE), channels, full(5));
    List<Double> shares = WaveBands.COMMON.shares(made).toOptional().orElseThrow();
    Map<WaveBand, Double> wanted = new LinkedHashMap<>();
    for (int k = 0; k < shares.size(); k++) {
      wanted.put(WaveBands.COMMON.bands().get(k), shares.get(k));
    }
    ChannelMix byShares =
        ChannelMix.nearest(MixGoal.shares(WaveBands.COMMON, wanted), channels, full(5));

    assertThat(byShape.mismatch()).isLessThan(1e-9);
    assertThat(byShares.mismatch()).isLessThan(1e-12);
    for (int c = 0; c < 5; c++) {
      assertThat(byShape.outputs().get(c)).isCloseTo(outputs.get(c) / 0.6, within(1e-9));
      assertThat(byShares.outputs().get(c)).isCloseTo(outputs.get(c) / 0.6, within(1e-9));
    }
    assertThat(byShape.parPhotons()).isCloseTo(made.parPhotons() / 0.6, within(1e-7));
    assertThat(byShape.share())
        .isCloseTo(made.parPhotons() / 0.6 / sumOfPar(channels), within(1e-9));
  }

  private static double sumOfPar(List<ChannelLight> channels) {
    return channels.stream().mapToDouble(channel -> channel.spectrum().parPhotons()).sum();
  }

  /**
   * Two channels of even light that do not overlap and a reference that lies over both with heights
   * 3 and 1: the angle is 0 at outputs 1 : ⅓. With the first held to at most .2 and the second to
   * at least .1, the ratio is at most 2 : 1, so that the nearest is .2 : .1, and cos = (3·2 + 1·1)
   * / (√10 √5).
   */
  @Test
  @DisplayName("limits hold, and the nearest mix within them is the one worked out by hand")
  void staysWithinLimits() {
    PhotonSpectrum low = block(400, 500);
    PhotonSpectrum high = block(600, 700);
    List<ChannelLight> channels =
        List.of(new ChannelLight("low", low), new ChannelLight("high", high));
    PhotonSpectrum reference = Superposition.of(List.of(low, high), List.of(3.0, 1.0));
    MixGoal goal = MixGoal.shape(reference, RANGE);

    ChannelMix free = ChannelMix.nearest(goal, channels, full(2));
    assertThat(free.outputs().get(0)).isEqualTo(1);
    assertThat(free.outputs().get(1)).isCloseTo(1.0 / 3, within(1e-12));
    assertThat(free.mismatch()).isLessThan(1e-7);

    ChannelMix capped =
        ChannelMix.nearest(goal, channels, List.of(new OutputRange(0, 0.6), OutputRange.FULL));
    assertThat(capped.outputs().get(0)).isEqualTo(0.6);
    assertThat(capped.outputs().get(1)).isCloseTo(0.2, within(1e-12));

    ChannelMix held =
        ChannelMix.nearest(
            goal, channels, List.of(new OutputRange(0, 0.2), new OutputRange(0.1, 1)));
    assertThat(held.outputs().get(0)).isCloseTo(0.2, within(1e-9));
    assertThat(held.outputs().get(1)).isCloseTo(0.1, within(1e-9));
    assertThat(Math.cos(held.mismatch())).isCloseTo(7 / Math.sqrt(50), within(1e-12));
  }

  private static PhotonSpectrum block(double fromNm, double toNm) {
    return new PhotonSpectrum(Wavelengths.of(fromNm, toNm), new double[] {1, 1}, Scale.IRRADIANCE);
  }

  @Test
  @DisplayName("neither the order of the channels nor the brightness of reference or lamp matters")
  void orderAndBrightnessDoNotMatter() {
    SeededLaw.holds(
        100,
        random -> {
          List<ChannelLight> channels = Leds.random(random);
          List<OutputRange> limits = someLimits(random, channels.size());
          PhotonSpectrum reference = Leds.bell(440 + 100 * random.nextDouble(), 50);
          MixGoal shares = someShares(random);
          List<Integer> order = new ArrayList<>();
          for (int c = 0; c < channels.size(); c++) {
            order.add(c);
          }
          Collections.shuffle(order, new Random(random.nextLong()));
          List<ChannelLight> other =
              order.stream()
                  .map(
                      c ->
                          new ChannelLight(
                              channels.get(c).name(), channels.get(c).spectrum().times(7)))
                  .toList();
          List<OutputRange> otherLimits = order.stream().map(limits::get).toList();
          for (int g = 0; g < 2; g++) {
            ChannelMix one =
                ChannelMix.nearest(
                    g == 0 ? shares : MixGoal.shape(reference, RANGE), channels, limits);
            ChannelMix two =
                ChannelMix.nearest(
                    g == 0 ? shares : MixGoal.shape(reference.times(0.01), RANGE),
                    other,
                    otherLimits);
            assertThat(two.mismatch()).isCloseTo(one.mismatch(), within(1e-8));
            assertThat(two.share()).isBetween(0.0, 1 + 1e-12);
          }
        });
  }

  @Test
  void saysWhatIsWrong() {
    List<ChannelLight> channels = Leds.fixture();
    MixGoal goal = MixGoal.shape(Leds.bell(450, 20), RANGE);
    assertThatThrownBy(() -> ChannelMix.nearest(goal, channels, full(4)))
        .hasMessage("a mix needs one channel or more and as many limits; got 5 and 4");
    assertThatThrownBy(
            () ->
                ChannelMix.nearest(
                    goal, List.of(new ChannelLight("blue", Leds.bell(450, 9).relative())), full(1)))
        .hasMessage(
            "channel blue: to be mixed, all spectra must be in one known unit; measure each"
                + " channel's PPFD at full output at one place and scale its spectrum to that");
    assertThatThrownBy(
            () -> ChannelMix.nearest(goal, channels, Collections.nCopies(5, new OutputRange(0, 0))))
        .hasMessage(
            "no channel of [violet, blue, cyan, white, red] may give light where the goal wants"
                + " some; raise the limits or choose another goal");
    assertThatThrownBy(() -> new OutputRange(0.5, 0.2))
        .hasMessage("a range of outputs lies within 0 to 1, lowest first; got 0.5 to 0.2");
    assertThatThrownBy(() -> MixGoal.shape(Leds.bell(450, 2), WaveBand.of(100, 200)))
        .hasMessage(
            "the reference holds no photons within 100.0 to 200.0 nm; compare where it has some");
    WaveBand blue = WaveBands.COMMON.bands().get(2);
    assertThatThrownBy(() -> MixGoal.shares(WaveBands.COMMON, Map.of(blue, 45.0)))
        .hasMessage("a wanted share lies within 0 to 1; got 45.0 for 430–480 nm");
    assertThatThrownBy(() -> MixGoal.shares(WaveBands.COMMON, Map.of()))
        .hasMessageStartingWith(
            "a mix by shares needs a wanted share for one band or more of [380");
    assertThatThrownBy(() -> MixGoal.shares(WaveBands.COMMON, Map.of(WaveBand.of(431, 480), 0.5)))
        .hasMessageStartingWith("431–480 nm is none of the bands [380–400 nm, ");
    Map<WaveBand, Double> allBands = new LinkedHashMap<>();
    WaveBands.COMMON.bands().forEach(band -> allBands.put(band, 0.1));
    assertThatThrownBy(() -> MixGoal.shares(WaveBands.COMMON, allBands))
        .hasMessage("wanted shares must sum to 1; got 0.6");
    assertThatThrownBy(
            () ->
                MixGoal.shares(
                    WaveBands.COMMON, Map.of(blue, 0.7, WaveBands.COMMON.bands().get(1), 0.6)))
        .hasMessage("wanted shares must sum to no more than 1; got 1.3");
  }
}
