package parfield.plan;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import parfield.field.FieldSolver;
import parfield.fit.LightModel;
import parfield.fit.Transfer;
import parfield.lamp.Fixture;
import parfield.parallel.SideBySide;
import parfield.rig.Hanging;
import parfield.tank.Tank;
import parfield.units.LengthUnit;

/**
 * Where to begin over tanks in which nothing was read: for each tank of a list the best count,
 * height, spacing and dials of a coarse search with the transferred light model.
 *
 * <p>Every rig is scanned by the best estimate; the best of them is judged by a few draws. A
 * starting point is no recommendation: it stands on what is stated of a tank, and readings in it
 * come before trust. Deterministic.
 */
public final class StartingPoints {
  /** Draws by which the best rig is judged. */
  public static final int DRAWS = 16;

  /** About how many places in the water volume; coverage errs by about 2 points rms. */
  private static final int PLACES = 120;

  /** Heights that are looked at, as multiples of the pattern's own. */
  private static final List<Double> HEIGHTS = List.of(0.75, 1.0, 1.35, 1.8);

  private static final double LOWEST = 0.05;

  /** Spacings that are looked at, as multiples of the tank's length over the count. */
  private static final List<Double> SPACINGS = List.of(0.8, 1.0, 1.15);

  /**
   * At most one fixture is tried for so much of a tank's length [m]; common practice, no source.
   */
  private static final double LENGTH_OF_ONE = 0.4;

  private static final int MOST = 5;

  private StartingPoints() {}

  /**
   * Looks for them.
   *
   * @param model of the fixtures, as it was fitted in another tank
   * @param solver predicts the light
   * @param patterns one hanging for each kind of fixture: its tilt, yaw, dials and the height about
   *     which is looked; where it hangs is not used
   * @param demands what must be met; one whose plane or zone lies outside a tank is taken of the
   *     whole water there, and said
   * @param tanks the list
   * @return one for each tank, in the list's order
   * @throws IllegalArgumentException if the model does not know a fixture; the message says what to
   *     change
   */
  public static List<StartingPoint> of(
      LightModel model,
      FieldSolver solver,
      List<Hanging> patterns,
      Demands demands,
      List<NamedTank> tanks) {
    return ahead(model, solver, patterns, demands, tanks).get();
  }

  /** Begins to look for them: what {@link #of} gives, or throws, is there when it is asked for. */
  public static Supplier<List<StartingPoint>> ahead(
      LightModel model,
      FieldSolver solver,
      List<Hanging> patterns,
      Demands demands,
      List<NamedTank> tanks) {
    LightModel few =
        new LightModel(
            model.best(),
            model.draws().subList(0, Math.min(DRAWS, model.draws().size())),
            model.discrepancy(),
            model.report());
    List<Fixture> fixtures = patterns.stream().map(Hanging::fixture).toList();
    return SideBySide.ahead(
        tanks.size(),
        t ->
            of(
                Transfer.to(tanks.get(t).tank(), few, fixtures).coarseModel(),
                solver,
                patterns,
                demands,
                tanks.get(t)));
  }

  private static StartingPoint of(
      LightModel model,
      FieldSolver solver,
      List<Hanging> patterns,
      Demands demands,
      NamedTank named) {
    Tank tank = named.tank();
    List<String> assumptions = new ArrayList<>();
    Demands fitting = fitting(demands, tank, assumptions);
    List<Hanging> middle =
        patterns.stream()
            .map(hanging -> hanging.at(tank.length() / 2, tank.width() / 2, hanging.height()))
            .toList();
    Search search =
        new Search(
            tank,
            middle,
            heights(middle),
            IntStream.rangeClosed(1, most(tank)).boxed().toList(),
            List.of(),
            tank.depth() / 2,
            Mix.KEPT,
            Double.POSITIVE_INFINITY);
    Evaluator scan =
        new Evaluator(model, Evaluator.Thoroughness.SCAN, solver, PLACES, search, fitting);
    Option found =
        arrangements(search)
            .flatMap(of -> search.heights().stream().map(height -> scan.option(of, height)))
            .min(Planner.RANKING)
            .orElseThrow();
    Evaluator judge =
        new Evaluator(model, Evaluator.Thoroughness.DRAWS, solver, PLACES, search, fitting);
    assumptions.addAll(demands.assumptions());
    return new StartingPoint(named, judge.option(found.arrangement(), found.height()), assumptions);
  }

  private static Stream<Arrangement> arrangements(Search search) {
    Map<Arrangement, Boolean> all = new LinkedHashMap<>();
    for (int count : search.counts()) {
      List<Double> spacings =
          SPACINGS.stream()
              .map(factor -> Search.onTape(factor * search.tank().length() / count))
              .filter(spacing -> spacing > 0)
              .toList();
      Search coarse = search.withSpacings(spacings);
      for (Hanging pattern : search.patterns()) {
        coarse.arrangements(pattern, count).forEach(of -> all.put(of, true));
      }
    }
    return all.keySet().stream();
  }

  private static int most(Tank tank) {
    return (int) Math.max(1, Math.min(MOST, Math.round(tank.length() / LENGTH_OF_ONE)));
  }

  private static List<Double> heights(Collection<Hanging> patterns) {
    double about = patterns.stream().mapToDouble(Hanging::height).min().orElseThrow();
    return HEIGHTS.stream()
        .map(factor -> Math.max(LOWEST, Search.onTape(factor * about)))
        .distinct()
        .toList();
  }

  /** The demands, those that do not fit a tank taken of its whole water. */
  private static Demands fitting(Demands demands, Tank tank, List<String> assumptions) {
    List<Demand> all = new ArrayList<>();
    for (Demand demand : demands.all()) {
      boolean fits = fits(demand.extent(), tank);
      all.add(fits ? demand : of(demand, Extent.volume()));
      if (!fits) {
        assumptions.add(
            String.format(
                Locale.ROOT,
                "There is no %s in this tank: that demand is taken of the whole water instead.",
                demand.extent().inWords(LengthUnit.CM).replaceFirst("^the ", "")));
      }
    }
    return new Demands(demands.bands(), all, demands.assumptions());
  }

  /** A zone was drawn in another tank; a living surface needs rock. */
  private static boolean fits(Extent extent, Tank tank) {
    return extent.zone().isEmpty()
        && (!(extent instanceof Extent.Plane plane) || plane.depth() <= tank.depth())
        && (!(extent instanceof Extent.Living) || !tank.aquascape().isEmpty());
  }

  private static Demand of(Demand demand, Extent extent) {
    if (demand instanceof Demand.Coverage coverage) {
      return new Demand.Coverage(coverage.band(), coverage.share(), extent);
    }
    if (demand instanceof Demand.Retention retention) {
      return new Demand.Retention(retention.atLeast(), extent);
    }
    if (demand instanceof Demand.Evenness evenness) {
      return new Demand.Evenness(evenness.atLeast(), extent);
    }
    if (demand instanceof Demand.EndsToCentre ends) {
      return new Demand.EndsToCentre(ends.atLeast(), extent);
    }
    if (demand instanceof Demand.HotSpot hotSpot) {
      return new Demand.HotSpot(hotSpot.atMost(), extent);
    }
    Demand.MeanPpfd mean = (Demand.MeanPpfd) demand;
    return new Demand.MeanPpfd(mean.from(), mean.to(), extent);
  }
}
