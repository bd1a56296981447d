package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.SeededLaw;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.Master;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.spectrum.ChannelLight;
import parfield.spectrum.ChannelMix;
import parfield.spectrum.MixGoal;
import parfield.spectrum.OutputRange;
import parfield.spectrum.PhotonSpectrum;
import parfield.spectrum.Superposition;
import parfield.spectrum.WaveBand;

class DialledMixTest {
  private static final OutputCurve SLOW =
      new OutputCurve(new double[] {0, 50, 100}, new double[] {0, 0.3, 1});

  private static final OutputCurve GLOWING =
      new OutputCurve(new double[] {0, 20, 100}, new double[] {0.02, 0.15, 1});

  private static PhotonSpectrum bell(double peak, double sigma) {
    double[] nm = new double[401];
    double[] values = new double[401];
    for (int i = 0; i < nm.length; i++) {
      nm[i] = 380 + i;
      values[i] = Math.exp(-Math.pow((nm[i] - peak) / sigma, 2) / 2);
    }
    return new PhotonSpectrum(nm, values);
  }

  private static final List<ChannelLight> LIGHT =
      List.of(
          new ChannelLight("violet", bell(415, 9).atPpfd(60)),
          new ChannelLight("blue", bell(452, 11).atPpfd(180)),
          new ChannelLight("white", bell(560, 55).atPpfd(120)),
          new ChannelLight("red", bell(660, 12).atPpfd(40)));

  private static Channel channel(String name, OutputCurve curve) {
    return new Channel(name, Optional.empty(), OptionalDouble.empty(), curve, Optional.empty());
  }

  private static Fixture fixture(OutputCurve red) {
    return new Fixture(
        "lamp",
        0,
        0,
        List.of(new Emitter(0, 0, 0)),
        List.of(
            channel("violet", OutputCurve.proportional()),
            channel("blue", SLOW),
            channel("white", SLOW),
            channel("red", red)),
        List.of(new Master("overall", new TreeSet<>(List.of("blue", "white")))));
  }

  private static final WaveBand RANGE = WaveBand.of(380, 780);

  private static MixGoal goal(Double... parts) {
    return MixGoal.shape(
        Superposition.of(LIGHT.stream().map(ChannelLight::spectrum).toList(), List.of(parts)),
        RANGE);
  }

  /** Outputs 1 : .5 : .3 : .2 of full; the brightest is violet, which has no master. */
  @Test
  @DisplayName("a mix that can be made comes back through curves and master")
  void invertsCurvesAndMaster() {
    Fixture fixture = fixture(OutputCurve.proportional());
    DialledMix mix = DialledMix.nearest(goal(1.0, 0.5, 0.3, 0.2), fixture, LIGHT, Map.of());
    double[] outputs = fixture.outputs(mix.exact());
    double[] expected = {1, 0.5, 0.3, 0.2};
    for (int c = 0; c < 4; c++) {
      assertThat(outputs[c]).isCloseTo(expected[c], within(1e-7));
      assertThat(mix.nearest().outputs().get(c)).isCloseTo(expected[c], within(1e-7));
    }
    assertThat(mix.exact().percent("violet")).isCloseTo(100, within(1e-5));
    assertThat(mix.exact().percent("red")).isCloseTo(20, within(1e-5));
    // The master carries blue, its brighter channel; white's own dial carries the ratio.
    assertThat(mix.exact().percent("blue")).isCloseTo(100, within(1e-5));
    assertThat(mix.exact().percent("overall")).isCloseTo(SLOW.dialFor(0.5), within(1e-5));
    assertThat(mix.exact().percent("white")).isCloseTo(100 * 50 / SLOW.dialFor(0.5), within(1e-5));
    mix.dials().dials().values().forEach(p -> assertThat(p).isEqualTo(Math.rint(p)));
    assertThat(mix.nearest().mismatch()).isLessThan(1e-7);
    assertThat(mix.dialled().mismatch()).isBetween(1e-6, 0.02);
    assertThat(mix.dialled().parPhotons())
        .isCloseTo(mix.nearest().parPhotons(), within(0.02 * mix.nearest().parPhotons()));
  }

  @Test
  @DisplayName("the dials are never worse than any of 10,000 random settings within the limits")
  void beatsRandomSettings() {
    SeededLaw.holds(
        3,
        random -> {
          Fixture fixture = fixture(GLOWING);
          MixGoal goal =
              MixGoal.shape(
                  Superposition.of(
                      List.of(bell(440 + 30 * random.nextDouble(), 40), bell(600, 90)),
                      List.of(1.0, 0.6 * random.nextDouble())),
                  RANGE);
          Map<String, DialledMix.Level> limits =
              Map.of(
                  "violet", new DialledMix.Level(5, 60),
                  "white", new DialledMix.Level(0, 80));
          DialledMix mix = DialledMix.nearest(goal, fixture, LIGHT, limits);
          List<OutputRange> anything =
              List.of(OutputRange.FULL, OutputRange.FULL, OutputRange.FULL, OutputRange.FULL);
          for (int i = 0; i < 10_000; i++) {
            Map<String, Double> dials = new HashMap<>();
            for (String dial : fixture.dials()) {
              dials.put(dial, 100 * random.nextDouble());
            }
            dials.put("violet", 5 + 55 * random.nextDouble());
            double overall = dials.get("overall");
            dials.put("white", Math.min(100, 80 / overall * 100 * random.nextDouble()));
            List<Double> outputs = new ArrayList<>();
            for (double output : fixture.outputs(new Setting(dials))) {
              outputs.add(output);
            }
            assertThat(ChannelMix.at(goal, LIGHT, anything, outputs).mismatch())
                .as("%s", dials)
                .isGreaterThanOrEqualTo(mix.nearest().mismatch() - 1e-9);
          }
          assertThat(mix.exact().percent("violet")).isBetween(5 - 1e-6, 60 + 1e-6);
          assertThat(mix.nearest().outputs().get(3)).isGreaterThanOrEqualTo(0.02);
        });
  }

  @Test
  void saysWhatIsWrong() {
    Fixture fixture = fixture(SLOW);
    MixGoal goal = goal(1.0, 1.0, 1.0, 1.0);
    assertThatThrownBy(() -> DialledMix.nearest(goal, fixture, LIGHT.subList(0, 2), Map.of()))
        .hasMessage(
            "fixture lamp has the channels [violet, blue, white, red]; got light of [violet, blue]:"
                + " give each channel's, in that order");
    assertThatThrownBy(
            () -> DialledMix.nearest(goal, fixture, LIGHT, Map.of("overall", DialledMix.Level.ALL)))
        .hasMessage(
            "fixture lamp has no channel overall to limit; its channels are [violet, blue, white,"
                + " red]");
    assertThatThrownBy(() -> new DialledMix.Level(20, 10))
        .hasMessage(
            "a range of dial levels lies within 0 to 100 %, lowest first; got 20.0 to 10.0");
  }
}
