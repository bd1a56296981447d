package parfield.plan;

import java.util.HashMap;
import java.util.Map;
import parfield.field.FieldSolver;
import parfield.fit.LightModel;
import parfield.fit.PredictedField;
import parfield.fit.Predictor;
import parfield.rig.Rig;
import parfield.tank.Tank;

/**
 * Works out options: solves a rig, searches its dials, judges it. Remembers what it has worked out;
 * for one thread.
 */
final class Evaluator {
  /** How much of the posterior is solved. */
  enum Thoroughness {
    /**
     * The best estimate alone: draws differ by meter scale and discrepancy. To find, not to tell.
     */
    SCAN,
    /** Every draw. */
    DRAWS
  }

  /** A rig without its dials. */
  record Spot(Arrangement arrangement, double height) {}

  private final Predictor predictor;
  private final Thoroughness thoroughness;
  private final FieldSolver solver;
  private final Tank tank;
  private final Sampling sampling;
  private final Demands demands;
  private final double referenceHeight;
  private final Mix mix;
  private final Map<Arrangement, double[][][]> references = new HashMap<>();
  private final Map<Spot, Option> options = new HashMap<>();

  /**
   * Prepares.
   *
   * @param model with as many draws as shall be looked at
   * @param places about how many in a volume
   * @param search its tank, its lowest height as reference of retention, its mix
   * @param demands to judge by
   */
  Evaluator(
      LightModel model,
      Thoroughness thoroughness,
      FieldSolver solver,
      int places,
      Search search,
      Demands demands) {
    this.thoroughness = thoroughness;
    this.solver = solver;
    this.tank = search.tank();
    this.sampling =
        Sampling.of(
            tank, demands.extents(tank, search.planeDepth()), places, search.patterns().get(0).y());
    this.predictor = model.at(sampling.places());
    this.demands = demands;
    this.referenceHeight = search.heights().get(0);
    this.mix = search.mix();
  }

  /** The option of greatest merit with this arrangement at this height [m]. */
  Option option(Arrangement arrangement, double height) {
    return options.computeIfAbsent(
        new Spot(arrangement, height), spot -> option(assessment(arrangement, height, demands)));
  }

  /** The option of greatest merit for a rig that is already solved. */
  Option option(Assessment assessment) {
    return assessment.option(SettingSearch.choose(assessment, assessment.pattern().setting(), mix));
  }

  /** A solved rig, to be judged by some demands on the extents of this evaluator. */
  Assessment assessment(Arrangement arrangement, double height, Demands by) {
    RigField field = solve(arrangement, height);
    if (height == referenceHeight) {
      references.putIfAbsent(arrangement, field.means(sampling));
    }
    return new Assessment(arrangement, height, field, reference(arrangement), sampling, by);
  }

  /**
   * An option that was found by fewer draws on fewer places, judged anew at its own dials.
   *
   * @param coarse an evaluator of the same draws on fewer places that gives the reference of
   *     retention where that is another height: means converge long before shares do
   */
  Option again(Option option, Evaluator coarse) {
    Arrangement arrangement = option.arrangement();
    RigField field = solve(arrangement, option.height());
    return new Assessment(
            arrangement,
            option.height(),
            field,
            option.height() == referenceHeight
                ? field.means(sampling)
                : coarse.reference(arrangement),
            sampling,
            demands)
        .option(option.setting());
  }

  private double[][][] reference(Arrangement arrangement) {
    return references.computeIfAbsent(
        arrangement, of -> solve(of, referenceHeight).means(sampling));
  }

  private RigField solve(Arrangement arrangement, double height) {
    Rig rig = arrangement.over(tank, height);
    PredictedField predicted =
        switch (thoroughness) {
          case SCAN -> predictor.predictBest(solver, rig);
          case DRAWS -> predictor.predict(solver, rig);
        };
    return RigField.of(predicted, arrangement.pattern().fixture().channels().size());
  }
}
