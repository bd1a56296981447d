package parfield.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import parfield.field.FastSolver;
import parfield.lamp.IntensityDistribution;
import parfield.survey.Survey;

/**
 * Fits a light model to surveys: lamps of unknown distribution over a tank of roughly known
 * condition.
 *
 * <p>Lamps and conditions are sought together by penalised least squares, since the logarithmic
 * form of the intensity makes the whole problem smooth and free of constraints; how free the lamps
 * are and how large the model's own error is are chosen by the marginal likelihood. Immutable.
 */
public final class LightModelFit {
  private static final int DRAWS = 96;

  /** A fit of fewer readings is refused. */
  static final int FEWEST_READINGS = 6;

  /** Heights of draws are rounded to this [m], so that path tables can be shared. */
  static final double HEIGHT_STEP = 0.002;

  /**
   * Standard error along each axis of where a fixture is hung anew [m]; common practice, no source.
   */
  static final double REHANG_DEVIATION = 0.004;

  /** Standard deviation of ln output of a channel that was never lit. */
  private static final double GUESS_DEVIATION = 0.5;

  private final FastSolver solver;

  private LightModelFit(FastSolver solver) {
    this.solver = solver;
  }

  /** A fit that uses a solver and its tables. */
  public static LightModelFit with(FastSolver solver) {
    return new LightModelFit(solver);
  }

  /**
   * Fits a light model.
   *
   * @param surveys of one tank, at least one
   * @return the model with its posterior
   * @throws UnfittableException if there are too few readings, or none with light
   */
  public LightModel fit(List<Survey> surveys) {
    requireEnough(surveys);
    List<LampGroups.Group> all = LampGroups.of(surveys);
    List<LampGroups.Group> groups = all.stream().filter(LampGroups.Group::seen).toList();
    if (groups.isEmpty()) {
      throw new UnfittableException(
          "no channel was lit in any survey: every dial stands at 0; take readings with light");
    }
    Observations observations = new Observations(solver, surveys, groups);
    Conditions conditions = Conditions.of(surveys);
    FreedomSearch.Chosen chosen = FreedomSearch.run(observations, conditions, groups.size());
    return model(surveys, all, groups, conditions, chosen);
  }

  private static void requireEnough(List<Survey> surveys) {
    if (surveys.isEmpty()) {
      throw new UnfittableException("no survey to fit; take readings on a grid first");
    }
    int readings = surveys.stream().mapToInt(survey -> survey.readings().size()).sum();
    if (readings < FEWEST_READINGS) {
      throw new UnfittableException(
          String.format(
              Locale.ROOT,
              "a light model needs %d readings or more; the surveys hold %d: read a grid of cell"
                  + " centres, corners and wall midpoints",
              FEWEST_READINGS,
              readings));
    }
    boolean lit =
        surveys.stream().anyMatch(survey -> Arrays.stream(survey.ppfd()).anyMatch(v -> v > 0));
    if (!lit) {
      throw new UnfittableException(
          "every reading is 0 after the ambient is subtracted; check the meter and its ambient");
    }
    for (Survey survey : surveys) {
      if (!survey.rig().tank().equals(surveys.get(0).rig().tank())) {
        throw new UnfittableException(
            String.format(
                "surveys %s and %s were taken in different tanks; fit one tank at a time",
                surveys.get(0).name(), survey.name()));
      }
    }
  }

  private LightModel model(
      List<Survey> surveys,
      List<LampGroups.Group> all,
      List<LampGroups.Group> groups,
      Conditions conditions,
      FreedomSearch.Chosen chosen) {
    Posterior posterior = chosen.posterior();
    int from = posterior.forward().firstCondition();
    SplittableRandom random = new SplittableRandom(0x9a7f1e1dL);
    Truth best = truth(all, groups, conditions, chosen.basis(), posterior.mode(), from, 1, null);
    List<Truth> draws = new ArrayList<>();
    double scaleError =
        surveys.stream().mapToDouble(survey -> survey.meter().scaleError()).max().orElseThrow();
    for (int d = 0; d < DRAWS; d++) {
      double[] z = posterior.draw(random);
      double scale =
          conditions.severalMeters() ? 1 : Math.max(0.1, 1 + scaleError * random.nextGaussian());
      draws.add(truth(all, groups, conditions, chosen.basis(), z, from, scale, random));
    }
    FitReport report = FitReports.of(surveys, all, groups, conditions, chosen);
    return new LightModel(best, draws, chosen.discrepancy(), report);
  }

  private static Truth truth(
      List<LampGroups.Group> all,
      List<LampGroups.Group> groups,
      Conditions conditions,
      LampBasis basis,
      double[] z,
      int from,
      double meterScale,
      SplittableRandom random) {
    Map<String, IntensityDistribution[]> found = new TreeMap<>();
    for (LampGroups.Group group : all) {
      IntensityDistribution[] channels =
          found.computeIfAbsent(
              group.fixture().name(),
              name -> new IntensityDistribution[group.fixture().channels().size()]);
      int seen = groups.indexOf(group);
      double guess = 1;
      if (seen < 0) {
        seen = donor(groups, group);
        guess =
            power(group)
                / power(groups.get(seen))
                * (random == null ? 1 : Math.exp(GUESS_DEVIATION * random.nextGaussian()));
      }
      for (int i = 0; i < group.channels().size(); i++) {
        channels[group.channels().get(i)] =
            basis.distribution(z, seen * basis.size(), group.shares().get(i) * guess);
      }
    }
    Map<String, List<IntensityDistribution>> distributions = new TreeMap<>();
    found.forEach((name, channels) -> distributions.put(name, List.of(channels)));
    return new Truth(
        distributions,
        conditions.clear(z, from),
        conditions.bottom(z, from),
        conditions.yellowing(z, from),
        conditions.offsetX(z, from) + rehung(random),
        conditions.offsetY(z, from) + rehung(random),
        rounded(conditions.heightOffset(z, from) + rehung(random), random),
        conditions.aperture(z, from),
        meterScale);
  }

  /** Error with which a fixture is hung the next time [m]; none for the best estimate. */
  private static double rehung(SplittableRandom random) {
    return random == null ? 0 : REHANG_DEVIATION * random.nextGaussian();
  }

  private static double rounded(double offset, SplittableRandom random) {
    return random == null ? offset : Math.round(offset / HEIGHT_STEP) * HEIGHT_STEP;
  }

  /** The lit group whose shape an unlit one borrows: of the same fixture if there is one. */
  private static int donor(List<LampGroups.Group> groups, LampGroups.Group unlit) {
    for (int g = 0; g < groups.size(); g++) {
      if (groups.get(g).fixture().name().equals(unlit.fixture().name())) {
        return g;
      }
    }
    return 0;
  }

  private static double power(LampGroups.Group group) {
    double sum = 0;
    for (int channel : group.channels()) {
      sum += group.fixture().channels().get(channel).watts().orElse(0);
    }
    return sum > 0 ? sum : group.channels().size();
  }
}
