package parfield.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BooleanSupplier;
import java.util.function.UnaryOperator;
import parfield.field.FieldSolver;
import parfield.fit.LightModel;
import parfield.fit.Truth;
import parfield.lamp.Channel;
import parfield.lamp.Fixture;
import parfield.lamp.IntensityDistribution;
import parfield.lamp.StretchedIntensity;
import parfield.rig.Hanging;

/** What would help where nothing meets the demands: changes beyond the search, each worked out. */
final class Counterfactuals {
  private static final List<Double> LOWER = List.of(0.75, 0.5);
  private static final List<Double> HIGHER = List.of(1.25, 1.5, 2.0);
  private static final double WIDER = 1.25;
  private static final double NARROWER = 0.8;

  /** Lowest height worth thinking of [m]. */
  private static final double LEAST_HEIGHT = 0.05;

  /** Light to spare beyond what the best estimate needs. */
  private static final double TO_SPARE = 1.05;

  private final LightModel model;
  private final FieldSolver solver;
  private final Search search;
  private final Demands demands;
  private final Option best;
  private final BooleanSupplier cancelled;

  /**
   * Prepares.
   *
   * @param model with as many draws as a remedy is judged by
   * @param best of the search, judged by the same draws
   */
  Counterfactuals(
      LightModel model,
      FieldSolver solver,
      Search search,
      Demands demands,
      Option best,
      BooleanSupplier cancelled) {
    this.model = model;
    this.solver = solver;
    this.search = search;
    this.demands = demands;
    this.best = best;
    this.cancelled = cancelled;
  }

  /** Every change that could be made, the best first; those that were worked out when cancelled. */
  List<Remedy> remedies() {
    Arrangement arrangement = best.arrangement();
    List<Double> heights = search.heights();
    Trial same = new Trial(model, search);
    List<Remedy> remedies = new ArrayList<>();
    add(remedies, Remedy.Kind.ONE_MORE_FIXTURE, 1, same, oneMore(), heights);
    add(remedies, Remedy.Kind.LOWER, 1, same, List.of(arrangement), beyond(LOWER, heights.get(0)));
    add(
        remedies,
        Remedy.Kind.HIGHER,
        1,
        same,
        List.of(arrangement),
        beyond(HIGHER, heights.get(heights.size() - 1)));
    double needed = TO_SPARE * same.brightness();
    if (needed > TO_SPARE) {
      changed(remedies, Remedy.Kind.BRIGHTER, needed, base -> base.scaled(needed));
    }
    changed(
        remedies,
        Remedy.Kind.WIDER_OPTICS,
        WIDER,
        base -> StretchedIntensity.keepingFlux(base, WIDER));
    changed(
        remedies,
        Remedy.Kind.NARROWER_OPTICS,
        NARROWER,
        base -> StretchedIntensity.keepingFlux(base, NARROWER));
    if (search.mix() == Mix.KEPT && arrangement.pattern().fixture().channels().size() > 1) {
      add(
          remedies,
          Remedy.Kind.FREE_MIX,
          1,
          new Trial(model, search.withMix(Mix.FREE)),
          List.of(arrangement),
          heights);
    }
    remedies.sort(Comparator.comparingDouble((Remedy r) -> r.option().merit()).reversed());
    return remedies;
  }

  private void changed(
      List<Remedy> remedies,
      Remedy.Kind kind,
      double factor,
      UnaryOperator<IntensityDistribution> change) {
    Arrangement arrangement = best.arrangement();
    Hanging pattern = arrangement.pattern();
    add(
        remedies,
        kind,
        factor,
        new Trial(withLamps(model, change), search),
        List.of(arrangement.with(pattern.withFixture(withLamps(pattern.fixture(), change)))),
        search.heights());
  }

  /** Scans some rigs, judges the best of them by all draws; adds nothing where none could hang. */
  private void add(
      List<Remedy> remedies,
      Remedy.Kind kind,
      double factor,
      Trial trial,
      List<Arrangement> arrangements,
      List<Double> heights) {
    Option found = null;
    for (Arrangement arrangement : arrangements) {
      for (double height : heights) {
        if (cancelled.getAsBoolean()) {
          return;
        }
        Option option = trial.scan.option(arrangement, height);
        found = found == null || Planner.RANKING.compare(option, found) < 0 ? option : found;
      }
    }
    if (found != null) {
      Option judged = trial.judge.option(found.arrangement(), found.height());
      remedies.add(new Remedy(kind, factor, judged, best));
    }
  }

  private List<Arrangement> oneMore() {
    int count = best.arrangement().count() + 1;
    return count > Arrangement.MOST_FIXTURES
        ? List.of()
        : search.withSpacings(List.of()).arrangements(best.arrangement().pattern(), count);
  }

  /** Heights outside the range that was looked at and that can be hung [m]. */
  private List<Double> beyond(List<Double> factors, double height) {
    return factors.stream()
        .map(factor -> Search.onTape(factor * height))
        .filter(tried -> tried >= LEAST_HEIGHT && tried <= search.ceiling())
        .filter(tried -> !search.heights().contains(tried))
        .distinct()
        .toList();
  }

  /** A model under a search: scanned by the best estimate, judged by all draws. */
  private final class Trial {
    final Evaluator scan;
    final Evaluator judge;

    Trial(LightModel of, Search over) {
      scan =
          new Evaluator(
              of, Evaluator.Thoroughness.SCAN, solver, Planner.SEARCH_PLACES, over, demands);
      judge =
          new Evaluator(
              of, Evaluator.Thoroughness.DRAWS, solver, Planner.SEARCH_PLACES, over, demands);
    }

    /** How many times as bright the fixtures would have to be for the best estimate. */
    double brightness() {
      Assessment solved = scan.assessment(best.arrangement(), best.height(), demands);
      double[] ratio = Dials.ratio(solved.fixture(), solved.pattern().setting());
      return SettingSearch.scale(solved, ratio, Double.POSITIVE_INFINITY);
    }
  }

  private static LightModel withLamps(
      LightModel model, UnaryOperator<IntensityDistribution> change) {
    return new LightModel(
        withLamps(model.best(), change),
        model.draws().stream().map(truth -> withLamps(truth, change)).toList(),
        model.discrepancy(),
        model.report());
  }

  private static Truth withLamps(Truth truth, UnaryOperator<IntensityDistribution> change) {
    Map<String, List<IntensityDistribution>> distributions = new TreeMap<>();
    truth
        .distributions()
        .forEach((name, list) -> distributions.put(name, list.stream().map(change).toList()));
    return truth.withDistributions(distributions);
  }

  /** Changes what the bench itself states; what the light model knows comes from there. */
  private static Fixture withLamps(Fixture fixture, UnaryOperator<IntensityDistribution> change) {
    return fixture.withChannels(
        fixture.channels().stream()
            .map(
                (Channel channel) ->
                    channel
                        .distribution()
                        .map(base -> channel.withDistribution(change.apply(base)))
                        .orElse(channel))
            .toList());
  }
}
