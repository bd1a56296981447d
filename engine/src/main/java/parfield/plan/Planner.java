package parfield.plan;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import parfield.field.FieldSolver;
import parfield.fit.LightModel;
import parfield.plan.Evaluator.Spot;
import parfield.plan.Evaluator.Thoroughness;
import parfield.survey.Band;

/**
 * Chooses height, spacing, count and dials.
 *
 * <p>Every rig of the search is scanned by the best estimate alone; the most promising are judged
 * by a few of the model's draws, and the finalists of these by all draws on finer places.
 * Deterministic: the same model, demands and search give the same recommendation. Immutable and
 * thread-safe.
 */
public final class Planner {
  /** Draws by which promising rigs, sweeps and remedies are judged; the finalists by all. */
  public static final int FEW_DRAWS = 16;

  /** About how many places in the water volume while searching; coverage errs by 0.7 points rms. */
  public static final int SEARCH_PLACES = 500;

  /**
   * About how many places in the water volume for the finalists; coverage errs by 0.6 points rms.
   */
  public static final int FINAL_PLACES = 700;

  /**
   * About how many places in the water volume for the mean light of the finalists at the lowest
   * height; it errs by 0.1 %.
   */
  private static final int REFERENCE_PLACES = 300;

  /** Options of the scan that are judged by a few draws. */
  public static final int PROMISING = 8;

  /** Options that are judged by all draws, more if the search looks at more counts. */
  public static final int FINALISTS = 4;

  /** Shares of the work that are done when each stage ends. */
  private static final double SCANNED = 0.35;

  private static final double JUDGED = 0.55;
  private static final double FINISHED = 0.8;
  private static final double SWEPT = 0.85;
  private static final double SPACED = 0.9;

  /** Two options of one kind and count closer than this in height are not two choices [m]. */
  private static final double SAME_HEIGHT = 0.03;

  /** Two options of one kind and count closer than this in spacing are not two choices [m]. */
  private static final double SAME_SPACING = 0.08;

  /** The better option first; of equal ones the one with fewer fixtures, lower, closer together. */
  static final Comparator<Option> RANKING =
      Comparator.comparingDouble((Option option) -> -option.merit())
          .thenComparingInt(option -> option.arrangement().count())
          .thenComparingDouble(Option::height)
          .thenComparingDouble(option -> option.arrangement().spacing());

  /** Index among the figures of the plane that is reported on. */
  private static final int PLANE = 1;

  private final FieldSolver solver;

  /** A planner that predicts light with some solver. */
  public Planner(FieldSolver solver) {
    this.solver = Objects.requireNonNull(solver, "solver");
  }

  /**
   * Recommends, without telling of its progress.
   *
   * @see #recommend(LightModel, Demands, Search, Consumer, BooleanSupplier)
   */
  public Recommendation recommend(LightModel model, Demands demands, Search search) {
    return recommend(model, demands, search, progress -> {}, () -> false);
  }

  /**
   * Recommends.
   *
   * @param model of every fixture of the search, unless it states its own distributions
   * @param demands what must be met
   * @param search which rigs to look at
   * @param listener told after each rig, in the calling thread
   * @param cancelled asked before each rig; once it says true, the best so far is judged by a few
   *     draws and returned
   * @throws IllegalArgumentException if a demand lies outside the water, no arrangement can hang, a
   *     fixture is dialled to no light, or the model does not know a fixture; the message says what
   *     to change
   */
  public Recommendation recommend(
      LightModel model,
      Demands demands,
      Search search,
      Consumer<Progress> listener,
      BooleanSupplier cancelled) {
    demands.checkInside(search.tank());
    return new Run(model, demands, search, listener, cancelled).recommend();
  }

  /** One recommendation in the making. */
  private final class Run {
    private final Demands demands;
    private final Search search;
    private final Consumer<Progress> listener;
    private final BooleanSupplier cancelled;
    private final LightModel model;
    private final LightModel few;
    private final Evaluator scan;
    private final Evaluator judge;
    private final Map<Spot, Option> latest = new LinkedHashMap<>();
    private int evaluated;

    Run(
        LightModel model,
        Demands demands,
        Search search,
        Consumer<Progress> listener,
        BooleanSupplier cancelled) {
      this.demands = demands;
      this.search = search;
      this.listener = listener;
      this.cancelled = cancelled;
      this.model = model;
      this.few = withFewDraws(model);
      this.scan = evaluator(few, Thoroughness.SCAN, SEARCH_PLACES);
      this.judge = evaluator(few, Thoroughness.DRAWS, SEARCH_PLACES);
    }

    private Evaluator evaluator(LightModel of, Thoroughness thoroughness, int places) {
      return new Evaluator(of, thoroughness, solver, places, search, demands);
    }

    Recommendation recommend() {
      List<Option> scanned = ranked(scan());
      List<Option> front = TradeOff.front(scanned, PLANE);
      Set<Option> promising = new LinkedHashSet<>(front);
      scanned.stream().limit(PROMISING).forEach(promising::add);
      List<Option> judged = ranked(judged(promising, SCANNED, JUDGED));
      if (cancelled.getAsBoolean()) {
        return stopped(
            ranked(diverse(ranked(latest.values())).stream().map(this::judged).toList()));
      }
      List<Option> options = ranked(finalists(diverse(judged)));
      Option winner = options.get(0);
      boolean met = winner.standing() == Verdict.Standing.MET;
      List<Option> heights = judged(overHeights(winner), FINISHED, SWEPT);
      List<Option> spacings = judged(overSpacings(winner), SWEPT, SPACED);
      List<Shortfall> shortfalls = met ? List.of() : shortfalls(winner);
      List<Remedy> remedies = met ? List.of() : remedies(judged.get(0));
      List<BandSetting> bandSettings = bandSettings(winner);
      List<NextReading> readings =
          NextReadings.choose(model, solver, winner.over(search.tank()), search.planeDepth());
      if (cancelled.getAsBoolean()) {
        return stopped(options);
      }
      listener.accept(new Progress(1, evaluated, winner));
      return new Recommendation(
          demands,
          search,
          options,
          front.stream().map(this::judged).toList(),
          heights,
          spacings,
          bandSettings,
          shortfalls,
          remedies,
          readings,
          evaluated,
          true);
    }

    private Recommendation stopped(List<Option> options) {
      return new Recommendation(
          demands, search, options, List.of(), List.of(), List.of(), List.of(), List.of(),
          List.of(), List.of(), evaluated, false);
    }

    /** Every rig of the search by the best estimate; at least the first if cancelled. */
    private List<Option> scan() {
      List<Arrangement> arrangements = search.arrangements();
      List<Option> options = new ArrayList<>();
      double all = arrangements.size() * search.heights().size();
      for (Arrangement arrangement : arrangements) {
        for (double height : search.heights()) {
          if (!options.isEmpty() && cancelled.getAsBoolean()) {
            return options;
          }
          options.add(scan.option(arrangement, height));
          report(options.get(options.size() - 1), SCANNED * options.size() / all);
        }
      }
      return options;
    }

    /** Options judged by a few draws, those that were when cancelled. */
    private List<Option> judged(Collection<Option> options, double from, double to) {
      List<Option> judged = new ArrayList<>();
      for (Option option : options) {
        if (!cancelled.getAsBoolean()) {
          Option found = judged(option);
          judged.add(found);
          report(found, from + (to - from) * judged.size() / options.size());
        }
      }
      return judged;
    }

    private Option judged(Option option) {
      return judge.option(option.arrangement(), option.height());
    }

    /** Options by all draws on finer places, those that were when cancelled or the first. */
    private List<Option> finalists(List<Option> options) {
      Evaluator coarse = evaluator(model, Thoroughness.DRAWS, REFERENCE_PLACES);
      Evaluator fine = evaluator(model, Thoroughness.DRAWS, FINAL_PLACES);
      List<Option> finalists = new ArrayList<>();
      for (Option option : options) {
        if (finalists.isEmpty() || !cancelled.getAsBoolean()) {
          Option found = fine.again(option, coarse);
          finalists.add(found);
          report(found, JUDGED + (FINISHED - JUDGED) * finalists.size() / options.size());
        }
      }
      return finalists;
    }

    private List<Option> overHeights(Option winner) {
      return search.heights().stream()
          .map(height -> scan.option(winner.arrangement(), height))
          .toList();
    }

    private List<Option> overSpacings(Option winner) {
      Arrangement of = winner.arrangement();
      return of.count() == 1
          ? List.of()
          : search.arrangements(of.pattern(), of.count()).stream()
              .filter(other -> other.layout() == of.layout())
              .map(other -> scan.option(other, winner.height()))
              .toList();
    }

    private List<BandSetting> bandSettings(Option winner) {
      List<BandSetting> settings = new ArrayList<>();
      for (Band band : demands.bands()) {
        Extent extent = demands.extentOf(band);
        Demands alone =
            Demands.stated(demands.bands(), List.of(new Demand.Coverage(band, 1, extent)));
        Option option =
            judge.option(judge.assessment(winner.arrangement(), winner.height(), alone));
        settings.add(
            new BandSetting(band, extent, option.setting(), option.verdicts().get(0).value()));
      }
      return settings;
    }

    private List<Shortfall> shortfalls(Option winner) {
      List<Shortfall> shortfalls = new ArrayList<>();
      for (Verdict verdict : winner.verdicts()) {
        if (verdict.standing() != Verdict.Standing.MET && !cancelled.getAsBoolean()) {
          shortfalls.add(new Shortfall(verdict, soughtFor(verdict.demand())));
        }
      }
      return shortfalls;
    }

    /** The best option for one demand alone, judged by all demands. */
    private Option soughtFor(Demand demand) {
      Demands alone = Demands.stated(demands.bands(), List.of(demand));
      Evaluator evaluator =
          new Evaluator(few, Thoroughness.SCAN, solver, SEARCH_PLACES, search, alone);
      Option found =
          search.arrangements().stream()
              .flatMap(
                  arrangement ->
                      search.heights().stream()
                          .map(height -> evaluator.option(arrangement, height)))
              .min(RANKING)
              .orElseThrow();
      return judge.assessment(found.arrangement(), found.height(), demands).option(found.setting());
    }

    private List<Remedy> remedies(Option judgedBest) {
      return new Counterfactuals(few, solver, search, demands, judgedBest, cancelled).remedies();
    }

    /** Remembers the most thorough figures of each rig and tells the listener of the best. */
    private void report(Option option, double share) {
      evaluated++;
      latest.put(new Spot(option.arrangement(), option.height()), option);
      Option best = latest.values().stream().min(RANKING).orElseThrow();
      listener.accept(new Progress(share, evaluated, best));
    }
  }

  /** The winner's own figures in place of coarser ones of the same rig. */
  private static List<Option> ranked(Collection<Option> options) {
    return options.stream().sorted(RANKING).toList();
  }

  /** The best options that are different choices, the best of each count among them. */
  private static List<Option> diverse(List<Option> ranked) {
    List<Option> chosen = new ArrayList<>();
    Set<Integer> counts = new TreeSet<>();
    for (Option option : ranked) {
      if (counts.add(option.arrangement().count())) {
        chosen.add(option);
      }
    }
    for (Option option : ranked) {
      if (chosen.size() < Math.max(FINALISTS, counts.size() + 1)
          && chosen.stream().noneMatch(c -> alike(c, option))) {
        chosen.add(option);
      }
    }
    return ranked(chosen);
  }

  private static boolean alike(Option a, Option b) {
    Arrangement one = a.arrangement();
    Arrangement other = b.arrangement();
    return one.pattern().equals(other.pattern())
        && one.count() == other.count()
        && one.layout() == other.layout()
        && Math.abs(a.height() - b.height()) < SAME_HEIGHT
        && Math.abs(one.spacing() - other.spacing()) < SAME_SPACING;
  }

  private static LightModel withFewDraws(LightModel model) {
    return new LightModel(
        model.best(),
        model.draws().subList(0, Math.min(FEW_DRAWS, model.draws().size())),
        model.discrepancy(),
        model.report());
  }
}
