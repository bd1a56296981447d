package parfield.care;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import parfield.field.LightBudget;
import parfield.fit.LightModel;
import parfield.fit.Truth;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.lamp.Setting;
import parfield.rig.Hanging;
import parfield.rig.Rig;
import parfield.spectrum.PhotonSpectrum;
import parfield.units.Estimate;

/**
 * What a rig draws and what it makes of it, channel by channel.
 *
 * <p>Electric power is taken to follow the light, watt for watt in proportion; that is an
 * assumption: drivers that lower the current draw less than that when dimmed, and a dark fixture
 * still draws its standby, which is left out. All electric power ends as heat. Of it, the light
 * that enters the water is taken to warm the water; the rest warms the room. Immutable.
 */
public final class Power {
  /** Days of a mean month of the Gregorian calendar. */
  public static final double MONTH_DAYS = 365.2425 / 12;

  private static final double JOULES_PER_KWH = 3.6e6;

  /** What this rests on, as sentences. */
  public static final List<String> ASSUMPTIONS =
      List.of(
          "electric power is taken to fall with the light in proportion; dimming by current draws"
              + " less, standby is left out",
          "all electric power ends as heat: the light that enters the water warms the water, the"
              + " rest the room; what a fixture passes to the water as warm air is left out",
          "light means photons of 400–700 nm; a channel without a spectrum is taken to hold as many"
              + " at each wavelength");

  private final String[][] names;
  private final double[][] watts;
  private final double[][][] emitted;
  private final double[][][] entered;
  private final double[][] joulesPerMicromole;

  private Power(
      String[][] names,
      double[][] watts,
      double[][][] emitted,
      double[][][] entered,
      double[][] joulesPerMicromole) {
    this.names = names;
    this.watts = watts;
    this.emitted = emitted;
    this.entered = entered;
    this.joulesPerMicromole = joulesPerMicromole;
  }

  /**
   * Draw and photons at some outputs.
   *
   * @param watts electric power [W]
   * @param emitted photon flux of the lamps [µmol s⁻¹]
   * @param entered what of it passes the water's surface [µmol s⁻¹]
   * @param intoWater heat into the water [W]
   */
  public record Use(double watts, Estimate emitted, Estimate entered, Estimate intoWater) {
    /** Photosynthetic photon efficacy [µmol J⁻¹]; empty for a dark rig. */
    public Optional<Estimate> efficacy() {
      return watts > 0 ? Optional.of(over(emitted, watts)) : Optional.empty();
    }

    /** Photons in the water per electric energy [µmol J⁻¹]; empty for a dark rig. */
    public Optional<Estimate> efficacyInWater() {
      return watts > 0 ? Optional.of(over(entered, watts)) : Optional.empty();
    }

    /** Heat into the room [W]. */
    public Estimate intoRoom() {
      return new Estimate(
          watts - intoWater.value(), watts - intoWater.high(), watts - intoWater.low());
    }
  }

  /**
   * Energy and photons of a day.
   *
   * @param kilowattHours electric energy [kWh]
   * @param emittedMol photons of the lamps [mol]
   * @param enteredMol photons that enter the water [mol]
   * @param waterKilowattHours heat into the water [kWh]
   */
  public record Day(
      double kilowattHours, Estimate emittedMol, Estimate enteredMol, Estimate waterKilowattHours) {
    /** Electric energy of a mean month [kWh]. */
    public double monthKilowattHours() {
      return kilowattHours * MONTH_DAYS;
    }

    /** Cost of a mean month at a tariff per kWh, in its currency. */
    public double monthCost(double tariff) {
      return monthKilowattHours() * tariff;
    }

    /** Cost of a mole of photons in the water at a tariff per kWh; empty if none enter. */
    public Optional<Estimate> costPerMol(double tariff) {
      double cost = kilowattHours * tariff;
      return enteredMol.low() > 0
          ? Optional.of(
              new Estimate(
                  cost / enteredMol.value(), cost / enteredMol.high(), cost / enteredMol.low()))
          : Optional.empty();
    }
  }

  /**
   * The power of a rig.
   *
   * @param rig as the bench states it; every channel must state its watts
   * @param model supplies lamps and tank
   * @throws IllegalArgumentException if a channel states no watts; the message names it
   */
  public static Power of(Rig rig, LightModel model) {
    List<Truth> truths = Stream.concat(Stream.of(model.best()), model.draws().stream()).toList();
    double[][][][] budgets =
        IntStream.range(0, truths.size())
            .parallel()
            .mapToObj(
                t -> budgets(truths.get(t).applyTo(rig), t == 0 ? 1 : truths.get(t).meterScale()))
            .toArray(double[][][][]::new);
    int hangings = rig.hangings().size();
    String[][] names = new String[hangings][];
    double[][] watts = new double[hangings][];
    double[][] joules = new double[hangings][];
    for (int h = 0; h < hangings; h++) {
      Fixture fixture = rig.hangings().get(h).fixture();
      names[h] = fixture.channels().stream().map(Channel::name).toArray(String[]::new);
      watts[h] =
          fixture.channels().stream().mapToDouble(channel -> watts(fixture, channel)).toArray();
      joules[h] = fixture.channels().stream().mapToDouble(Power::joulesPerMicromole).toArray();
    }
    return new Power(names, watts, part(budgets, 0), part(budgets, 1), joules);
  }

  private static double watts(Fixture fixture, Channel channel) {
    OptionalDouble stated = channel.watts();
    if (stated.isEmpty()) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "channel %s of fixture %s states no watts, so that no power can be told: state them in"
                  + " the setup, as in %s: {watts: 30}, read from a plug meter at full dial",
              channel.name(),
              fixture.name(),
              channel.name()));
    }
    return stated.getAsDouble();
  }

  /** Radiant energy of a channel's light over its photons of 400–700 nm [J µmol⁻¹]. */
  static double joulesPerMicromole(Channel channel) {
    PhotonSpectrum spectrum = channel.spectrumOrFlat();
    return spectrum.toRadiant().power() / spectrum.parPhotons();
  }

  /** Emitted and entered at full output [hanging][channel][emitted, entered] [µmol s⁻¹]. */
  private static double[][][] budgets(Rig real, double meterScale) {
    return real.hangings().stream()
        .map(
            hanging ->
                hanging.fixture().channels().stream()
                    .map(channel -> budget(real, hanging, channel, meterScale))
                    .toArray(double[][]::new))
        .toArray(double[][][]::new);
  }

  private static double[] budget(Rig real, Hanging hanging, Channel channel, double meterScale) {
    Fixture fixture = hanging.fixture();
    Fixture alone =
        new Fixture(
            fixture.name(),
            fixture.length(),
            fixture.width(),
            fixture.emitters(),
            List.of(channel),
            List.of());
    LightBudget budget =
        LightBudget.of(
            new Rig(
                real.name(),
                real.tank(),
                List.of(hanging.withFixture(alone).withSetting(Setting.full()))));
    return new double[] {budget.emitted() * meterScale, budget.entered() * meterScale};
  }

  private static double[][][] part(double[][][][] budgets, int which) {
    double[][][] part = new double[budgets.length][][];
    for (int t = 0; t < part.length; t++) {
      part[t] = new double[budgets[t].length][];
      for (int h = 0; h < part[t].length; h++) {
        part[t][h] = new double[budgets[t][h].length];
        for (int c = 0; c < part[t][h].length; c++) {
          part[t][h][c] = budgets[t][h][c][which];
        }
      }
    }
    return part;
  }

  /** Name of a channel of a hanging. */
  public String channel(int hanging, int channel) {
    return names[hanging][channel];
  }

  /**
   * Draw and photons at some outputs.
   *
   * @param outputs fraction of full output [hanging][channel]
   */
  public Use at(double[][] outputs) {
    return new Use(
        sum(watts, outputs),
        estimate(emitted, outputs, 1),
        estimate(entered, outputs, 1),
        water(outputs, 1));
  }

  /** Energy and photons of a day. */
  public Day through(DayOutputs day) {
    double[][] seconds = day.fullSeconds();
    return new Day(
        sum(watts, seconds) / JOULES_PER_KWH,
        estimate(emitted, seconds, 1e-6),
        estimate(entered, seconds, 1e-6),
        water(seconds, 1 / JOULES_PER_KWH));
  }

  private Estimate water(double[][] weights, double factor) {
    double[][] energies = new double[weights.length][];
    for (int h = 0; h < weights.length; h++) {
      energies[h] = new double[weights[h].length];
      for (int c = 0; c < weights[h].length; c++) {
        energies[h][c] = weights[h][c] * joulesPerMicromole[h][c];
      }
    }
    return estimate(entered, energies, factor);
  }

  private static Estimate estimate(double[][][] truths, double[][] weights, double factor) {
    double[] sample = new double[truths.length - 1];
    for (int d = 0; d < sample.length; d++) {
      sample[d] = factor * sum(truths[d + 1], weights);
    }
    return Estimate.ofSample(factor * sum(truths[0], weights), sample);
  }

  private static double sum(double[][] values, double[][] weights) {
    double sum = 0;
    for (int h = 0; h < weights.length; h++) {
      for (int c = 0; c < weights[h].length; c++) {
        sum += values[h][c] * weights[h][c];
      }
    }
    return sum;
  }

  private static Estimate over(Estimate figure, double by) {
    return new Estimate(figure.value() / by, figure.low() / by, figure.high() / by);
  }
}
