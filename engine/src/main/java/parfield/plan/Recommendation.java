package parfield.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import parfield.units.LengthUnit;

/**
 * What to hang and to dial, how sure that is, and what else there is.
 *
 * @param demands what was asked for
 * @param search which rigs were looked at
 * @param options ranked, the recommended one first; at least one
 * @param tradeOff of all options those that no other beats in coverage, retention, evenness and
 *     number of fixtures together, from much to little coverage; judged, as both sweeps are, by the
 *     few draws and places of the search, so that rows compare with each other
 * @param heightSweep the recommended arrangement at every height, each at its own best dials
 * @param spacingSweep the recommended count and height at every spacing, each at its own best
 *     dials; empty for one fixture
 * @param bandSettings what to dial on the recommended rig for each band alone
 * @param shortfalls demands that the recommended option does not surely meet; empty if it meets all
 * @param remedies changes beyond the search that were worked out, the best first; empty if all
 *     demands are met
 * @param nextReadings readings that would verify or sharpen the recommendation most
 * @param evaluated rigs looked at
 * @param complete whether the search ran to its end; if not, the options are the best so far and
 *     what follows them is empty
 */
public record Recommendation(
    Demands demands,
    Search search,
    List<Option> options,
    List<Option> tradeOff,
    List<Option> heightSweep,
    List<Option> spacingSweep,
    List<BandSetting> bandSettings,
    List<Shortfall> shortfalls,
    List<Remedy> remedies,
    List<NextReading> nextReadings,
    int evaluated,
    boolean complete) {
  public Recommendation {
    Objects.requireNonNull(demands, "demands");
    Objects.requireNonNull(search, "search");
    options = List.copyOf(options);
    tradeOff = List.copyOf(tradeOff);
    heightSweep = List.copyOf(heightSweep);
    spacingSweep = List.copyOf(spacingSweep);
    bandSettings = List.copyOf(bandSettings);
    shortfalls = List.copyOf(shortfalls);
    remedies = List.copyOf(remedies);
    nextReadings = List.copyOf(nextReadings);
    if (options.isEmpty()) {
      throw new IllegalArgumentException("a recommendation needs at least one option; got none");
    }
  }

  /** The recommended option. */
  public Option best() {
    return options.get(0);
  }

  /**
   * The greatest height of the sweep that keeps {@link Demands#CUSTOMARY_RETENTION} of the lowest
   * height's light on the plane reported on; none if the sweep is empty.
   */
  public Optional<Option> greatestCustomaryHeight() {
    return heightSweep.stream()
        .filter(o -> onPlane(o).retention().value() >= Demands.CUSTOMARY_RETENTION)
        .max(Comparator.comparingDouble(Option::height));
  }

  /**
   * The closest spacing of the sweep whose ends-to-centre ratio on the plane reported on reaches
   * {@link Demands#CUSTOMARY_ENDS_TO_CENTRE}; none if no spacing does.
   */
  public Optional<Option> closestCustomarySpacing() {
    return spacingSweep.stream()
        .filter(o -> onPlane(o).endsToCentre().value() >= Demands.CUSTOMARY_ENDS_TO_CENTRE)
        .min(Comparator.comparingDouble(o -> o.arrangement().spacing()));
  }

  private Figures onPlane(Option option) {
    return option.figuresOf(Extent.plane(search.planeDepth()));
  }

  /** Everything that was assumed rather than stated, as sentences. */
  public List<String> assumptions(LengthUnit unit) {
    List<String> all = new ArrayList<>(demands.assumptions());
    all.add(
        String.format(
            Locale.ROOT,
            "Looked at heights of %s %s; retention is relative to the lowest of them.",
            search.heights().stream()
                .map(height -> Wording.number(unit.fromMetres(height), 1))
                .collect(Collectors.joining(", ")),
            unit.symbol()));
    all.add(
        search.mix() == Mix.KEPT
            ? "The ratio of the channels was kept as the bench dials it."
            : "The channels were dialled without keeping their ratio.");
    if (!complete) {
      all.add(
          String.format(
              Locale.ROOT,
              "The search was stopped after %d rigs; a full one may find better.",
              evaluated));
    }
    return all;
  }
}
