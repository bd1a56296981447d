package parfield.care;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static parfield.care.CareBench.at;
import static parfield.care.CareBench.hours;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import parfield.fit.FitReport;
import parfield.fit.LightModel;
import parfield.fit.Truth;
import parfield.lamp.Channel;
import parfield.lamp.CosinePower;
import parfield.lamp.Emitter;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.OutputCurve;
import parfield.lamp.Setting;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;

/** Watts, photons a joule, cost and heat. */
class PowerTest {
  /** A line at 450 nm, 2 nm wide. */
  private static final PhotonSpectrum LINE =
      new PhotonSpectrum(new double[] {449, 450, 451}, new double[] {0, 1, 0});

  private static Channel channel(String name, OptionalDouble watts, double peak) {
    return new Channel(
        name,
        Optional.of(LINE),
        watts,
        OutputCurve.proportional(),
        Optional.of(new CosinePower(peak, 1)));
  }

  private static Rig rig(Setting setting, Channel... channels) {
    Fixture fixture =
        new Fixture("pendant", 0, 0, List.of(new Emitter(0, 0, 0)), List.of(channels), List.of());
    return new Rig(
        "low", CareBench.TANK, List.of(Hanging.level(fixture, .45, .3, .2).withSetting(setting)));
  }

  private static LightModel model(double... meterScales) {
    return new LightModel(
        truth(1),
        java.util.Arrays.stream(meterScales).mapToObj(PowerTest::truth).toList(),
        0,
        new FitReport(List.of(), List.of(), List.of(), List.of(), 0));
  }

  private static Truth truth(double meterScale) {
    Map<String, List<IntensityDistribution>> none = Map.of();
    return new Truth(none, List.of(1.0, 1.0, 1.0, 1.0), 0, 0, 0, 0, 0, 0, meterScale);
  }

  /**
   * A Lambertian source of peak I sends π I (closed form): 100/π µmol s⁻¹ sr⁻¹ give 100 µmol s⁻¹,
   * at 50 W that is 2 µmol/J.
   */
  @Test
  void efficacyIsPhotonsOverWatts() {
    Rig rig = rig(Setting.full(), channel("blue", OptionalDouble.of(50), 100 / Math.PI));
    Power.Use use = Power.of(rig, model(1, 1)).at(new double[][] {{1}});

    assertThat(use.watts()).isEqualTo(50);
    assertThat(use.emitted().value()).isCloseTo(100, within(.01));
    assertThat(use.efficacy().orElseThrow().value()).isCloseTo(2, within(2e-4));
    assertThat(use.entered().value()).isBetween(10.0, 100.0);
    assertThat(use.efficacyInWater().orElseThrow().value())
        .isCloseTo(use.entered().value() / 50, within(1e-12));
    // A photon of 450 nm has hcN_A/λ = .11962656/450e-9 J/mol = .26584 J/µmol (CODATA constants).
    assertThat(use.intoWater().value()).isCloseTo(.26584 * use.entered().value(), within(1e-3));
    assertThat(use.intoRoom().value() + use.intoWater().value()).isCloseTo(50, within(1e-9));
  }

  @Test
  @DisplayName("a kilowatt-hour is 3.6 MJ: 50 W over 10 h are .5 kWh, 15.2 kWh a mean month")
  void energyAndCost() {
    Rig rig =
        rig(
            new Setting(Map.of("blue", 100.0, "violet", 50.0)),
            channel("blue", OptionalDouble.of(40), 100),
            channel("violet", OptionalDouble.of(20), 30));
    DailyProgram day = DailyProgram.together(rig, at("09:00"), hours(1), hours(9), hours(1));
    Power.Day through = Power.of(rig, model(1, 1)).through(DayOutputs.of(day, rig));

    // (40 + .5 · 20) W over 9 h and two ramps that count half.
    assertThat(through.kilowattHours()).isCloseTo(.5, within(1e-12));
    assertThat(through.monthKilowattHours()).isCloseTo(15.2184375, within(1e-9));
    assertThat(through.monthCost(.30)).isCloseTo(4.56553125, within(1e-9));
    assertThat(through.emittedMol().value())
        .isCloseTo(Math.PI * (100 + 15) * 36_000 * 1e-6, within(1e-3));
    assertThat(through.costPerMol(.30).orElseThrow().value())
        .isCloseTo(.15 / through.enteredMol().value(), within(1e-12));
    assertThat(through.waterKilowattHours().value())
        .isCloseTo(.26584 * through.enteredMol().value() / 3.6, within(1e-3));
  }

  @Test
  void theMetersScaleIsInTheInterval() {
    Rig rig = rig(Setting.full(), channel("blue", OptionalDouble.of(50), 100 / Math.PI));
    Power.Use use = Power.of(rig, model(.9, 1.1)).at(new double[][] {{1}});

    assertThat(use.emitted().low()).isCloseTo(91, within(.1));
    assertThat(use.emitted().high()).isCloseTo(109, within(.1));
    assertThat(use.intoRoom().low()).isLessThan(use.intoRoom().high());
  }

  @Test
  void wattsMustBeStated() {
    Rig rig = rig(Setting.full(), channel("blue", OptionalDouble.empty(), 1));

    assertThatThrownBy(() -> Power.of(rig, model(1)))
        .hasMessage(
            "channel blue of fixture pendant states no watts, so that no power can be told: state"
                + " them in the setup, as in blue: {watts: 30}, read from a plug meter at full dial");
  }

  @Test
  void aDarkRigHasNoEfficacy() {
    Rig rig = rig(Setting.full(), channel("blue", OptionalDouble.of(50), 1));

    assertThat(Power.of(rig, model(1)).at(new double[][] {{0}}).efficacy()).isEmpty();
  }
}
