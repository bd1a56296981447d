package parfield.lamp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parfield.spectrum.PhotonSpectrum;

class FixtureTest {
  private static final Emitter MIDDLE = new Emitter(0, 0, 0);

  private static Channel channel(String name) {
    return Channel.of(name, new CosinePower(100, 2));
  }

  private static Master master(String name, String... scales) {
    return new Master(name, new TreeSet<>(List.of(scales)));
  }

  private static Fixture fixture(List<Channel> channels, List<Master> masters) {
    return new Fixture("pendant", 0.4, 0.2, List.of(MIDDLE), channels, masters);
  }

  private static void refuses(ThrowingCallable make, String message) {
    assertThatThrownBy(make).isInstanceOf(IllegalArgumentException.class).hasMessage(message);
  }

  @Test
  void mastersScaleOnlyTheirChannels() {
    Channel curved =
        new Channel(
            "blue",
            Optional.empty(),
            OptionalDouble.empty(),
            new OutputCurve(new double[] {0, 50, 100}, new double[] {0, .2, 1}),
            Optional.empty());
    Fixture lamp = fixture(List.of(curved, channel("violet")), List.of(master("overall", "blue")));

    assertThat(lamp.dials()).containsExactly("blue", "violet", "overall");
    assertThat(lamp.outputs(Setting.full())).containsExactly(1, 1);
    // Half by the master: the curve is asked at 50, violet stays.
    assertThat(lamp.outputs(new Setting(Map.of("overall", 50.0)))[0]).isCloseTo(.2, within(1e-12));
    assertThat(lamp.outputs(new Setting(Map.of("overall", 50.0)))[1]).isEqualTo(1);
    // Own dial times master: 50 % of 50 % is 25, where the curve gives .0625.
    assertThat(lamp.outputs(new Setting(Map.of("overall", 50.0, "blue", 50.0)))[0])
        .isCloseTo(.0625, within(1e-12));
    assertThat(lamp.outputs(new Setting(Map.of("violet", 0.0)))).containsExactly(1, 0);
  }

  @Test
  void severalMastersMultiply() {
    Fixture lamp =
        fixture(
            List.of(channel("blue"), channel("white")),
            List.of(master("all", "blue", "white"), master("cool", "blue")));
    assertThat(lamp.outputs(new Setting(Map.of("all", 50.0, "cool", 40.0))))
        .containsExactly(.2, .5);
  }

  @Test
  void aDialNotNamedStandsAtFull() {
    assertThat(Setting.full().percent("blue")).isEqualTo(100);
    assertThat(new Setting(Map.of("blue", 30.0)).percent("blue")).isEqualTo(30);
  }

  @Test
  void anUnstatedApertureTakesTheOneGiven() {
    Fixture lamp =
        new Fixture(
            "pendant",
            0,
            0,
            List.of(MIDDLE, new Emitter(0.1, 0, 0.02)),
            List.of(channel("blue")),
            List.of());
    assertThat(lamp.withUnstatedAperture(0.05).emitters())
        .containsExactly(new Emitter(0, 0, 0.05), new Emitter(0.1, 0, 0.02));
  }

  @Test
  void aChannelWithoutSpectrumIsTakenAsFlat() {
    assertThat(channel("blue").spectrumOrFlat()).isSameAs(PhotonSpectrum.flat());
    PhotonSpectrum spectrum = new PhotonSpectrum(new double[] {440, 460}, new double[] {1, 1});
    Channel known =
        new Channel(
            "blue",
            Optional.of(spectrum),
            OptionalDouble.of(40),
            OutputCurve.proportional(),
            Optional.empty());
    assertThat(known.spectrumOrFlat()).isSameAs(spectrum);
    CosinePower lobe = new CosinePower(1, 1);
    assertThat(known.withDistribution(lobe).distribution()).contains(lobe);
  }

  @Test
  void refusesAChannelWhoseLightHasNoPpfd() {
    PhotonSpectrum ultraviolet = new PhotonSpectrum(new double[] {350, 380}, new double[] {1, 1});
    refuses(
        () ->
            new Channel(
                "uv",
                Optional.of(ultraviolet),
                OptionalDouble.empty(),
                OutputCurve.proportional(),
                Optional.empty()),
        "the spectrum of channel uv must hold photons within 400-700 nm, as its light is told in"
            + " PPFD; this one holds none there");
  }

  @Test
  void refusesDialsOfOneName() {
    refuses(
        () -> fixture(List.of(channel("blue"), channel("blue")), List.of()),
        "fixture pendant has two dials named blue");
    refuses(
        () -> fixture(List.of(channel("blue")), List.of(master("blue", "blue"))),
        "fixture pendant has two dials named blue");
    refuses(
        () ->
            fixture(
                List.of(channel("blue")), List.of(master("all", "blue"), master("all", "blue"))),
        "fixture pendant has two dials named all");
  }

  @Test
  void refusesAMasterOfNoChannel() {
    refuses(
        () ->
            fixture(
                List.of(channel("blue"), channel("white")), List.of(master("all", "blue", "red"))),
        "fixture pendant: master all scales red, which is no channel of it; channels are [blue,"
            + " white]");
  }

  @Test
  void refusesAFixtureWithoutLight() {
    refuses(
        () -> fixture(List.of(), List.of()),
        "fixture pendant needs at least one emitter and one channel; got 1 and 0");
    refuses(
        () -> new Fixture("pendant", 0, 0, List.of(), List.of(channel("blue")), List.of()),
        "fixture pendant needs at least one emitter and one channel; got 0 and 1");
    refuses(
        () -> new Fixture("pendant", -0.1, 0.2, List.of(MIDDLE), List.of(channel("a")), List.of()),
        "fixture pendant: length and width must be 0 m or more; got -0.1 and 0.2");
    refuses(
        () ->
            new Fixture(
                "pendant", 0.1, Double.NaN, List.of(MIDDLE), List.of(channel("a")), List.of()),
        "fixture pendant: length and width must be 0 m or more; got 0.1 and NaN");
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, 100.5, Double.NaN})
  void refusesADialOutsideItsRange(double percent) {
    refuses(
        () -> new Setting(Map.of("blue", percent)),
        "dial blue runs from 0 to 100 %; got " + percent);
  }

  @Test
  void refusesAnEmitterThatIsNowhere() {
    refuses(
        () -> new Emitter(Double.NaN, 0.1, 0),
        "an emitter's offset must be finite; got NaN, 0.1 m");
    refuses(
        () -> new Emitter(0, Double.POSITIVE_INFINITY, 0),
        "an emitter's offset must be finite; got 0.0, Infinity m");
    refuses(
        () -> new Emitter(0, 0, -0.01), "an emitter's aperture must be 0 m or more; got -0.01 m");
    refuses(
        () -> new Emitter(0, 0, Double.POSITIVE_INFINITY),
        "an emitter's aperture must be 0 m or more; got Infinity m");
  }
}
