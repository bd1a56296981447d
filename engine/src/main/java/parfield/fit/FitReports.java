package parfield.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.function.IntPredicate;
import parfield.field.Departure;
import parfield.survey.Survey;
import parfield.survey.Suspicion;
import parfield.survey.SuspiciousReadings;
import parfield.units.Estimate;

/** Writes down what a fit found, for people. */
final class FitReports {
  private static final int DRAWS = 400;

  /** A condition whose posterior is wider than this share of its prior was not told by the data. */
  private static final double UNTOLD = 0.8;

  /** A reading that counts less than this in the fit is a blunder and judges no prediction. */
  private static final double BLUNDER_WEIGHT = 0.45;

  /** Share of the light at the readings that counts as all that was seen. */
  private static final double SEEN = 0.98;

  private final List<Survey> surveys;
  private final Conditions conditions;
  private final FreedomSearch.Chosen chosen;
  private final Posterior posterior;
  private final Observations observations;

  private FitReports(List<Survey> surveys, Conditions conditions, FreedomSearch.Chosen chosen) {
    this.surveys = surveys;
    this.conditions = conditions;
    this.chosen = chosen;
    posterior = chosen.posterior();
    observations = posterior.forward().observations();
  }

  static FitReport of(
      List<Survey> surveys,
      List<LampGroups.Group> all,
      List<LampGroups.Group> groups,
      Conditions conditions,
      FreedomSearch.Chosen chosen) {
    FitReports writer = new FitReports(surveys, conditions, chosen);
    double[][] sample = writer.sample();
    List<FitReport.Residual> residuals = writer.residuals();
    List<String> statements = new ArrayList<>();
    statements.add(writer.symmetry());
    writer.channels(all, groups, statements);
    writer.untold(sample, statements);
    statements.add(writer.meterScale());
    Departure.of(surveys.get(0).rig().tank()).forEach(left -> statements.add(left.inWords()));
    return new FitReport(
        writer.findings(sample),
        residuals,
        writer.crossValidation(),
        statements,
        writer.relativeResidual());
  }

  private double[][] sample() {
    SplittableRandom random = new SplittableRandom(0x0b5e_7a11L);
    double[][] sample = new double[DRAWS][];
    for (int d = 0; d < DRAWS; d++) {
      sample[d] = posterior.draw(random);
    }
    return sample;
  }

  private List<FitReport.Finding> findings(double[][] sample) {
    int from = posterior.forward().firstCondition();
    List<FitReport.Finding> findings = new ArrayList<>();
    for (int k = 0; k < conditions.size(); k++) {
      double[] values = new double[sample.length];
      for (int d = 0; d < values.length; d++) {
        values[d] = conditions.value(k, sample[d], from);
      }
      Estimate fitted = Estimate.ofSample(conditions.value(k, posterior.mode(), from), values);
      findings.add(new FitReport.Finding(conditions.name(k), conditions.stated(k), fitted));
    }
    return findings;
  }

  private List<FitReport.Residual> residuals() {
    List<FitReport.Residual> residuals = new ArrayList<>();
    int at = 0;
    for (Survey survey : surveys) {
      int n = survey.readings().size();
      double[] predicted = new double[n];
      double[] sigma = new double[n];
      for (int i = 0; i < n; i++) {
        predicted[i] = posterior.predicted(at + i);
        sigma[i] = posterior.sigma(at + i);
      }
      String[] reasons = new String[n];
      Arrays.fill(reasons, "");
      for (Suspicion suspicion : SuspiciousReadings.against(survey, predicted, sigma)) {
        for (int reading : suspicion.readings()) {
          reasons[reading] = suspicion.reason();
        }
      }
      for (int i = 0; i < n; i++) {
        double measured = observations.ppfd(at + i);
        residuals.add(
            new FitReport.Residual(
                survey.name(),
                i,
                measured,
                predicted[i],
                (measured - predicted[i]) / sigma[i],
                reasons[i]));
      }
      at += n;
    }
    return residuals;
  }

  /** Median of |residual| over prediction, as the standard deviation of a normal distribution. */
  private double relativeResidual() {
    double[] sizes = new double[observations.size()];
    for (int i = 0; i < sizes.length; i++) {
      sizes[i] = Math.abs(observations.ppfd(i) / posterior.predicted(i) - 1);
    }
    Arrays.sort(sizes);
    return Estimate.quantile(sizes, 0.5) / 0.6745;
  }

  private List<FitReport.CrossValidation> crossValidation() {
    List<FitReport.CrossValidation> results = new ArrayList<>();
    int n = observations.size();
    double[] left = new double[n];
    for (int i = 0; i < n; i++) {
      double residual = observations.ppfd(i) - posterior.predicted(i);
      left[i] = observations.ppfd(i) - residual / (1 - Math.min(0.99, posterior.leverage(i)));
    }
    addErrors("each reading by itself", i -> true, left, results);
    TreeSet<Double> depths = new TreeSet<>();
    for (int i = 0; i < n; i++) {
      depths.add(observations.place(i).depth());
    }
    if (depths.size() > 1) {
      for (double depth : depths) {
        String name = String.format(Locale.ROOT, "the plane %.3g cm deep", 100 * depth);
        heldOut(name, i -> observations.place(i).depth() == depth, results);
      }
    }
    TreeSet<Double> heights = new TreeSet<>();
    surveys.forEach(survey -> heights.add(survey.rig().meanHeight()));
    if (heights.size() > 1) {
      for (double height : heights) {
        String name = String.format(Locale.ROOT, "the height of %.3g cm", 100 * height);
        heldOut(name, i -> observations.survey(i).rig().meanHeight() == height, results);
      }
    }
    return results;
  }

  private void heldOut(String name, IntPredicate out, List<FitReport.CrossValidation> results) {
    boolean[] kept = new boolean[observations.size()];
    int count = 0;
    for (int i = 0; i < kept.length; i++) {
      kept[i] = !out.test(i);
      count += kept[i] ? 1 : 0;
    }
    if (count < LightModelFit.FEWEST_READINGS) {
      return;
    }
    Posterior without = posterior.without(kept);
    double[] predicted = new double[kept.length];
    for (int i = 0; i < predicted.length; i++) {
      predicted[i] = without.predicted(i);
    }
    addErrors(name, out, predicted, results);
  }

  private void addErrors(
      String name,
      IntPredicate which,
      double[] predicted,
      List<FitReport.CrossValidation> results) {
    double[] sizes = new double[predicted.length];
    int count = 0;
    double measuredSum = 0;
    double predictedSum = 0;
    for (int i = 0; i < predicted.length; i++) {
      if (which.test(i) && observations.ppfd(i) > 0 && posterior.weight(i) > BLUNDER_WEIGHT) {
        sizes[count++] = Math.abs(predicted[i] / observations.ppfd(i) - 1);
        measuredSum += observations.ppfd(i);
        predictedSum += predicted[i];
      }
    }
    if (count == 0) {
      return;
    }
    double[] sorted = Arrays.copyOf(sizes, count);
    Arrays.sort(sorted);
    results.add(
        new FitReport.CrossValidation(
            name,
            Estimate.quantile(sorted, 0.5),
            Estimate.quantile(sorted, 0.9),
            predictedSum / measuredSum - 1));
  }

  private String symmetry() {
    double gain = chosen.skewGain();
    if (chosen.freedom().skew() > 0) {
      return String.format(
          Locale.ROOT,
          "The lamp is not symmetric about its two axes: odds of %s to 1 by the readings.",
          odds(gain));
    }
    if (gain < -Math.log(3)) {
      return String.format(
          Locale.ROOT,
          "The lamp was taken as symmetric about its two axes: odds of %s to 1 by the readings.",
          odds(-gain));
    }
    return "The lamp was taken as symmetric about its two axes; the readings do not decide it.";
  }

  private static String odds(double logOdds) {
    return logOdds > Math.log(1000)
        ? "over 1000"
        : String.format(Locale.ROOT, "%.0f", Math.exp(logOdds));
  }

  private void channels(
      List<LampGroups.Group> all, List<LampGroups.Group> groups, List<String> statements) {
    for (LampGroups.Group group : all) {
      String fixture = group.fixture().name();
      if (!group.seen()) {
        statements.add(
            String.format(
                "Fixture %s: channel %s was never lit in a survey; its light is guessed from its"
                    + " watts and may be off by a factor of two. Read one plane with it alone.",
                fixture, group.names()));
        continue;
      }
      if (group.channels().size() > 1) {
        statements.add(
            String.format(
                "Fixture %s: channels %s were only ever lit in one ratio, so the readings cannot"
                    + " tell them apart; they are shared out by watts. Other ratios are guesses"
                    + " until a plane is read with one of them alone.",
                fixture, group.names()));
      }
      double angle = posterior.forward().angleBelow(posterior.mode(), groups.indexOf(group), SEEN);
      statements.add(
          String.format(
              Locale.ROOT,
              "Fixture %s, %s: %.0f %% of the light that was read left the lamp within %.0f degrees"
                  + " of straight down; what leaves beyond is extrapolated.",
              fixture,
              group.names(),
              100 * SEEN,
              Math.toDegrees(angle)));
    }
  }

  private void untold(double[][] sample, List<String> statements) {
    int from = posterior.forward().firstCondition();
    List<String> names = new ArrayList<>();
    for (int k = 0; k < conditions.size(); k++) {
      double sum = 0;
      for (double[] draw : sample) {
        double away = draw[from + k] - posterior.mode()[from + k];
        sum += away * away;
      }
      if (Math.sqrt(sum / sample.length) > UNTOLD) {
        names.add(conditions.name(k).replaceAll(" \\(.*\\)", ""));
      }
    }
    if (!names.isEmpty()) {
      statements.add(
          "The readings say little about these, so that what was stated stands: "
              + String.join(", ", names)
              + ".");
    }
  }

  private String meterScale() {
    if (conditions.severalMeters()) {
      return "Several meters were used; their scales were fitted against each other.";
    }
    return String.format(
        Locale.ROOT,
        "All readings share the meter's scale error of %.1f %%: no number of readings averages it"
            + " out. It is kept apart and counted in every decision.",
        100 * surveys.get(0).meter().scaleError());
  }
}
