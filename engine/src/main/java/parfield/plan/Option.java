package parfield.plan;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import parfield.lamp.Setting;
import parfield.rig.Rig;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/**
 * One rig at one setting with everything that the plan knows of it.
 *
 * @param arrangement which fixtures, how many, how far apart
 * @param height mounting height [m]
 * @param setting what to dial, the same on every fixture, in whole percent
 * @param figures by extent: the water volume, the plane reported on, what the demands name
 * @param verdicts one a demand, in their order
 * @param probability that all demands are met together
 * @param watts electric power of all fixtures at this setting [W], if the channels state theirs
 * @param merit what options are ranked by; comparable only within one recommendation
 */
public record Option(
    Arrangement arrangement,
    double height,
    Setting setting,
    List<Figures> figures,
    List<Verdict> verdicts,
    Probability probability,
    OptionalDouble watts,
    double merit) {
  public Option {
    Objects.requireNonNull(arrangement, "arrangement");
    Objects.requireNonNull(setting, "setting");
    figures = List.copyOf(figures);
    verdicts = List.copyOf(verdicts);
    Objects.requireNonNull(watts, "watts");
    Objects.requireNonNull(probability, "probability");
  }

  /** The rig as it would hang, dialled as recommended. */
  public Rig over(Tank tank) {
    return arrangement.over(tank, height).withSetting(setting);
  }

  /** Whether all demands are met together, as far as the readings can tell. */
  public Verdict.Standing standing() {
    return Verdict.Standing.of(probability);
  }

  /**
   * The figures of one extent.
   *
   * @throws IllegalArgumentException if the plan did not look at it
   */
  public Figures figuresOf(Extent extent) {
    return figures.stream()
        .filter(f -> f.extent().equals(extent))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "the plan did not look at " + extent.inWords(LengthUnit.CM)));
  }

  /** Mean of the expected coverages that are demanded; of all bands in the volume if none is. */
  double coverage() {
    return verdicts.stream()
        .filter(v -> v.demand() instanceof Demand.Coverage)
        .mapToDouble(v -> v.value().value())
        .average()
        .orElseGet(
            () ->
                figures.get(0).coverage().stream()
                    .mapToDouble(c -> c.share().value())
                    .average()
                    .orElse(0));
  }

  /** What to hang and to dial, such as "2 × pendant, 52 cm apart, 25 cm high; blue 64 %". */
  public String inWords(LengthUnit unit) {
    return String.format(
        Locale.ROOT,
        "%s, %s %s high; %s",
        arrangement.inWords(unit),
        Wording.number(unit.fromMetres(height), 1),
        unit.symbol(),
        dials());
  }

  /** What to dial, such as "blue 64 %, violet 40 %", channels first, then masters. */
  public String dials() {
    return arrangement.pattern().fixture().dials().stream()
        .map(dial -> dial + " " + Wording.number(setting.percent(dial), 0) + " %")
        .collect(Collectors.joining(", "));
  }
}
