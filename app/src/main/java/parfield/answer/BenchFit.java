package parfield.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parfield.field.FastSolver;
import parfield.fit.FitReport;
import parfield.fit.LightModel;
import parfield.fit.LightModelFit;
import parfield.survey.Survey;
import parfield.survey.Thinning;

/**
 * A light model and the readings that it was fitted to.
 *
 * @param model the model; where readings were thinned, its report says so
 * @param surveys thinned if there were too many readings
 * @param thinned the sentence that says so
 */
public record BenchFit(LightModel model, List<Survey> surveys, Optional<String> thinned) {
  /**
   * More readings than this are thinned before a fit: it takes time and memory in proportion, and
   * the meter's own scale error decides long before.
   */
  public static final int MOST_READINGS = 2000;

  public BenchFit {
    surveys = List.copyOf(surveys);
  }

  /** How many readings will be taken of these surveys. */
  public static int taken(List<Survey> surveys) {
    return count(taking(surveys));
  }

  /** Fits a light model to all surveys of a bench together. */
  public static BenchFit of(List<Survey> surveys, FastSolver solver) {
    List<Survey> taken = taking(surveys);
    LightModel model = LightModelFit.with(solver).fit(taken);
    if (count(taken) == count(surveys)) {
      return new BenchFit(model, taken, Optional.empty());
    }
    String sentence =
        String.format(
            Locale.ROOT,
            "Of %d readings %d were taken for the fit, spread over the tank as all are: more take"
                + " time but tell no more.",
            count(surveys),
            count(taken));
    return new BenchFit(withStatement(model, sentence), taken, Optional.of(sentence));
  }

  private static List<Survey> taking(List<Survey> surveys) {
    return Thinning.together(surveys, Math.max(MOST_READINGS, surveys.size()));
  }

  private static LightModel withStatement(LightModel model, String sentence) {
    FitReport report = model.report();
    List<String> statements = new ArrayList<>(report.statements());
    statements.add(0, sentence);
    return new LightModel(
        model.best(),
        model.draws(),
        model.discrepancy(),
        new FitReport(
            report.findings(),
            report.residuals(),
            report.crossValidation(),
            statements,
            report.relativeResidual()));
  }

  private static int count(List<Survey> surveys) {
    return surveys.stream().mapToInt(survey -> survey.readings().size()).sum();
  }
}
