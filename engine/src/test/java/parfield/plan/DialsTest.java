package parfield.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.TreeSet;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import parfield.lamp.Channel;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.Master;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;

class DialsTest {
  private static final long SEED = Long.getLong("seed", 20_260_102L);

  private static final Offset<Double> CLOSE = within(1e-12);

  /** Half on this dial is a fifth of the light. */
  private static final OutputCurve LATE =
      new OutputCurve(new double[] {0, 50, 100}, new double[] {0, 0.2, 1});

  @Test
  void aChannelWithoutMasterCarriesItsOwnLevel() {
    Fixture fixture = fixture(List.of(), OutputCurve.proportional(), LATE);
    Setting setting = Dials.settingFor(fixture, new double[] {0.304, 0.2});
    assertThat(setting.dials()).containsExactly(Map.entry("a", 30.0), Map.entry("b", 50.0));
  }

  @Test
  void aMasterCarriesTheLevelAndTheChannelsTheirRatio() {
    Fixture fixture =
        fixture(
            List.of(master("all", "a", "b")),
            OutputCurve.proportional(),
            OutputCurve.proportional(),
            OutputCurve.proportional());
    Setting setting = Dials.settingFor(fixture, new double[] {0.4, 0.2, 0.9});
    assertThat(setting.dials())
        .containsExactly(
            Map.entry("a", 100.0),
            Map.entry("all", 40.0),
            Map.entry("b", 50.0),
            Map.entry("c", 90.0));
    assertThat(fixture.outputs(setting)).containsExactly(new double[] {0.4, 0.2, 0.9}, CLOSE);
  }

  @Test
  void ofOverlappingMastersTheWidestIsTurned() {
    Fixture fixture =
        fixture(
            List.of(master("first", "a"), master("wide", "a", "b"), master("last", "c")),
            OutputCurve.proportional(),
            OutputCurve.proportional(),
            OutputCurve.proportional());
    Setting setting = Dials.settingFor(fixture, new double[] {0.5, 0.5, 0.25});
    assertThat(setting.percent("wide")).isEqualTo(50);
    assertThat(setting.percent("first")).isEqualTo(100);
    assertThat(setting.percent("last")).isEqualTo(25);
    assertThat(setting.percent("c")).isEqualTo(100);
  }

  @Test
  void darknessIsDialledAsZero() {
    Fixture fixture = fixture(List.of(master("all", "a")), OutputCurve.proportional(), LATE);
    Setting setting = Dials.settingFor(fixture, new double[] {0, 0});
    assertThat(fixture.outputs(setting)).containsOnly(0.0);
    assertThat(setting.percent("all")).isZero();
  }

  @Test
  void theRatioLeavesTheBrightestChannelAtFull() {
    Fixture fixture = fixture(List.of(), OutputCurve.proportional(), LATE);
    assertThat(Dials.ratio(fixture, new Setting(Map.of("a", 80.0, "b", 50.0))))
        .containsExactly(new double[] {1, 0.25}, CLOSE);
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Dials.ratio(fixture, new Setting(Map.of("a", 0.0, "b", 0.0))))
        .withMessage(
            "fixture pendant is dialled to no light at all, {a=0.0, b=0.0}; dial the ratio of its"
                + " channels");
  }

  /** Whole percents err by half a percent of the dial, times the slope of the curve there. */
  @Test
  void whatIsDialledGivesNearlyWhatWasWanted() {
    SplittableRandom random = new SplittableRandom(SEED);
    Fixture fixture =
        fixture(
            List.of(master("all", "a", "b")),
            OutputCurve.proportional(),
            OutputCurve.proportional(),
            LATE);
    for (int trial = 0; trial < 300; trial++) {
      double[] wanted = random.doubles(3).toArray();
      Setting setting = Dials.settingFor(fixture, wanted);
      assertThat(setting.dials().values())
          .as("seed %d, trial %d", SEED, trial)
          .allMatch(percent -> percent == Math.rint(percent));
      double[] given = fixture.outputs(setting);
      // Half a percent of the master and of the own dial; LATE rises by up to 2.4 % a percent.
      assertThat(given[0])
          .as("seed %d, trial %d", SEED, trial)
          .isCloseTo(wanted[0], within(0.0101));
      assertThat(given[1])
          .as("seed %d, trial %d", SEED, trial)
          .isCloseTo(wanted[1], within(0.0101));
      assertThat(given[2])
          .as("seed %d, trial %d", SEED, trial)
          .isCloseTo(wanted[2], within(0.0121));
    }
  }

  private static Master master(String name, String... scales) {
    return new Master(name, new TreeSet<>(List.of(scales)));
  }

  private static Fixture fixture(List<Master> masters, OutputCurve... curves) {
    List<Channel> channels = new ArrayList<>();
    for (int c = 0; c < curves.length; c++) {
      channels.add(
          new Channel(
              String.valueOf((char) ('a' + c)),
              Optional.empty(),
              OptionalDouble.empty(),
              curves[c],
              Optional.empty()));
    }
    return new Fixture("pendant", 0, 0, List.of(new Emitter(0, 0, 0)), channels, masters);
  }
}
