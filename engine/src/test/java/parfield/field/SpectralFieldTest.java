package parfield.field;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.optics.Water;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.Blend;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.Scale;
import parfield.spectrum.WaveBands;
import parfield.tank.Place;
import parfield.tank.Side;
import parfield.tank.Tank;
import parfield.tank.Wall;

class SpectralFieldTest {
  private static final FastSolver SOLVER = new FastSolver();

  private static PhotonSpectrum bell(double peak, double sigma) {
    double[] nm = new double[401];
    double[] values = new double[401];
    for (int i = 0; i < nm.length; i++) {
      nm[i] = 380 + i;
      values[i] = Math.exp(-Math.pow((nm[i] - peak) / sigma, 2) / 2);
    }
    return new PhotonSpectrum(nm, values);
  }

  private static Channel channel(
      String name, PhotonSpectrum spectrum, IntensityDistribution distribution) {
    return new Channel(
        name,
        Optional.of(spectrum),
        OptionalDouble.empty(),
        OutputCurve.proportional(),
        Optional.of(distribution));
  }

  private static Fixture fixture(List<Channel> channels) {
    return new Fixture("lamp", 0, 0, List.of(new Emitter(0, 0, 0.03)), channels, List.of());
  }

  private static final Fixture LAMP =
      fixture(
          List.of(
              channel("violet", bell(415, 9), new CosinePower(60, 6)),
              channel("white", bell(560, 60), new CosinePower(40, 1)),
              channel("red", bell(660, 12), new CosinePower(30, 2))));

  private static final Tank TANK =
      Tank.of(0.9, 0.6, 0.5).withWater(Water.seaWater(0.15)).withBottomReflectance(0.4);

  private static final Places PLACES =
      Places.of(
          List.of(
              new Place(0.45, 0.3, 0.1),
              new Place(0.45, 0.3, 0.45),
              new Place(0.04, 0.05, 0.2),
              new Place(0.8, 0.5, 0.4)));

  private static Rig rig(Tank tank, Fixture fixture) {
    return new Rig(
        "low",
        tank,
        List.of(
            Hanging.level(fixture, 0.3, 0.3, 0.2)
                .withSetting(new Setting(Map.of("white", 60.0, "red", 35.0))),
            Hanging.level(fixture, 0.65, 0.3, 0.25)));
  }

  @Test
  @DisplayName("the PPFD of a spectrum is that of the light field")
  void agreesWithTheLightField() {
    Rig rig = rig(TANK, LAMP);
    SpectralField spectra = SpectralField.of(SOLVER, rig, PLACES);
    LightField field = SOLVER.solve(rig, PLACES);
    LightField dim = SOLVER.unitFields(rig, PLACES).at(new Setting(Map.of("violet", 20.0)));
    double[] violet = SOLVER.unitFields(rig, PLACES).ofChannel(0);
    for (int i = 0; i < PLACES.size(); i++) {
      assertThat(spectra.at(i).scale()).isEqualTo(Scale.IRRADIANCE);
      assertThat(spectra.at(i).parPhotons()).isCloseTo(field.ppfd(i), within(1e-9 * field.ppfd(i)));
      assertThat(spectra.at(i, new Setting(Map.of("violet", 20.0))).parPhotons())
          .isCloseTo(dim.ppfd(i), within(1e-9 * dim.ppfd(i)));
      assertThat(spectra.channel(0, i).name()).isEqualTo("violet");
      assertThat(spectra.channel(0, i).spectrum().parPhotons())
          .isCloseTo(violet[i], within(1e-9 * violet[i]));
    }
  }

  /** Each 5 nm of each channel as a channel of its own, solved for by itself. */
  @Test
  @DisplayName("the spectrum is what solving for each waveband by itself gives")
  void agreesWithASolutionForEachWaveband() {
    for (double yellowing : new double[] {0.02, 0.15, 1.5}) {
      Tank tank = TANK.withWater(Water.seaWater(yellowing));
      List<Channel> bands = new ArrayList<>();
      List<Double> shares = new ArrayList<>();
      for (Channel channel : LAMP.channels()) {
        PhotonSpectrum spectrum = channel.spectrum().orElseThrow();
        for (double nm = 400; nm < 700; nm += 5) {
          double[] samples = new double[6];
          double[] values = new double[6];
          for (int k = 0; k < 6; k++) {
            samples[k] = nm + k;
            values[k] = Math.max(1e-300, spectrum.at(samples[k]));
          }
          shares.add(spectrum.photons(nm, nm + 5) / spectrum.parPhotons());
          bands.add(
              channel(
                  channel.name() + nm,
                  new PhotonSpectrum(samples, values),
                  channel.distribution().orElseThrow()));
        }
      }
      Rig apart = new Rig("apart", tank, List.of(Hanging.level(fixture(bands), 0.45, 0.3, 0.2)));
      Rig whole = new Rig("whole", tank, List.of(Hanging.level(LAMP, 0.45, 0.3, 0.2)));
      UnitFields exact = SOLVER.unitFields(apart, PLACES);
      SpectralField spectra = SpectralField.of(SOLVER, whole, PLACES);
      for (int i = 0; i < PLACES.size(); i++) {
        PhotonSpectrum found = spectra.at(i);
        for (int b = 0; b < 60; b++) {
          double expected = 0;
          for (int c = 0; c < 3; c++) {
            expected += shares.get(60 * c + b) * exact.unit(0, 60 * c + b, i);
          }
          assertThat(found.photons(400 + 5 * b, 405 + 5 * b))
              .as("yellowing %s, place %d, %d nm", yellowing, i, 400 + 5 * b)
              .isCloseTo(expected, within(2e-3 * expected + 1e-5 * found.parPhotons()));
        }
      }
    }
  }

  /** One straight path of length d: Beer and Lambert, e^(−a(λ) d), with no other light at all. */
  @Test
  @DisplayName("straight below a lamp between opaque walls the light is Beer and Lambert's")
  void meetsBeerAndLambert() {
    Tank dark = Tank.of(0.9, 0.6, 0.5).withWater(Water.seaWater(0.3)).withBottomReflectance(0);
    for (Side side : Side.values()) {
      dark = dark.withWalls(dark.walls().with(side, Wall.opaque()));
    }
    Fixture point =
        new Fixture(
            "point",
            0,
            0,
            List.of(new Emitter(0, 0, 0)),
            List.of(channel("flat", PhotonSpectrum.flat(), new CosinePower(60, 1))),
            List.of());
    Rig rig = new Rig("dark", dark, List.of(Hanging.level(point, 0.45, 0.3, 0.2)));
    PhotonSpectrum found =
        SpectralField.of(SOLVER, rig, Places.of(List.of(new Place(0.45, 0.3, 0.4)))).at(0);
    double at500 = found.at(500) / Math.exp(-0.4 * dark.water().absorption(500));
    for (double nm = 405; nm <= 695; nm += 5) {
      double expected = at500 * Math.exp(-0.4 * dark.water().absorption(nm));
      assertThat(found.at(nm)).as("%s nm", nm).isCloseTo(expected, within(1e-3 * expected));
    }
  }

  /** Five places along the middle, a hand's breadth off each end. */
  private static final Places ROW =
      Places.of(
          List.of(
              new Place(0.1, 0.3, 0.2),
              new Place(0.275, 0.3, 0.2),
              new Place(0.45, 0.3, 0.2),
              new Place(0.625, 0.3, 0.2),
              new Place(0.8, 0.3, 0.2)));

  private static final List<String> NAMES =
      List.of("left end", "left", "middle", "right", "right end");

  private static Blend blend(CosinePower violet, CosinePower white) {
    Fixture lamp =
        fixture(
            List.of(
                channel("violet", bell(415, 9), violet), channel("white", bell(560, 60), white)));
    Rig rig = new Rig("one", TANK, List.of(Hanging.level(lamp, 0.45, 0.3, 0.2)));
    return SpectralField.of(SOLVER, rig, ROW).blend(WaveBands.COMMON, NAMES);
  }

  @Test
  @DisplayName(
      "channels of different optics make the tank's ends look different, alike ones do not")
  void predictsABlend() {
    Blend apart = blend(new CosinePower(60, 8), new CosinePower(40, 1));
    Blend alike = blend(new CosinePower(60, 2), new CosinePower(40, 2));
    assertThat(alike.verdict()).isNotEqualTo(Blend.Verdict.UNEVEN);
    assertThat(apart.verdict()).isEqualTo(Blend.Verdict.UNEVEN);
    assertThat(apart.farthest().deviation()).isGreaterThan(5 * alike.farthest().deviation());
    // The violet beam is narrow: the middle has most of it, an end least.
    Blend.Spread violet = apart.spreads().get(1);
    assertThat(violet.mostAt()).isEqualTo("middle");
    assertThat(violet.leastAt()).endsWith("end");
    // A tank and a rig of mirror symmetry: what is left is the same as what is right.
    assertThat(apart.rows().get(0).deviation())
        .isCloseTo(apart.rows().get(4).deviation(), within(1e-6));
  }

  @Test
  void aMeanChannelIsTheMeanOfThePlaces() {
    SpectralField spectra = SpectralField.of(SOLVER, rig(TANK, LAMP), PLACES);
    double mean = 0;
    for (int i = 0; i < PLACES.size(); i++) {
      mean += spectra.channel(1, i).spectrum().photons(500, 550) / PLACES.size();
    }
    assertThat(spectra.meanChannel(1).spectrum().photons(500, 550))
        .isCloseTo(mean, within(1e-9 * mean));
    assertThat(spectra.meanChannel(1).name()).isEqualTo("white");
  }

  @Test
  void saysWhatIsWrong() {
    Fixture unknown = fixture(List.of(Channel.of("white", new CosinePower(60, 1))));
    assertThatThrownBy(() -> SpectralField.of(SOLVER, rig(TANK, unknown), PLACES))
        .hasMessage(
            "fixture lamp: channel white has no spectrum, so that its light is of unknown colour;"
                + " measure it and state it");
    SpectralField spectra = SpectralField.of(SOLVER, rig(TANK, LAMP), PLACES);
    Setting dark = new Setting(Map.of("violet", 0.0, "white", 0.0, "red", 0.0));
    assertThatThrownBy(() -> spectra.at(2, dark))
        .hasMessage(
            "no light at this setting gets to place 2: x 0.04, y 0.05, depth 0.2 m; choose another"
                + " place");
    assertThatThrownBy(() -> spectra.blend(WaveBands.COMMON, List.of("here")))
        .hasMessage("every place needs a name; got 1 names for 4 places");
  }
}
