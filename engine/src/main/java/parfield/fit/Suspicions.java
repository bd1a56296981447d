package parfield.fit;

import java.util.Locale;
import parfield.survey.Survey;

/** Says why a reading looks wrong beside the model. */
final class Suspicions {
  /** Residuals beyond this many standard errors are named. */
  private static final double LIMIT = 3;

  private Suspicions() {}

  /** One reason a reading, empty where it fits. */
  static String[] reasons(Survey survey, double[] predicted, double[] sigma) {
    String[] reasons = new String[predicted.length];
    double[] measured = survey.ppfd();
    for (int i = 0; i < reasons.length; i++) {
      double standardised = (measured[i] - predicted[i]) / sigma[i];
      reasons[i] =
          Math.abs(standardised) <= LIMIT
              ? ""
              : String.format(
                  Locale.ROOT,
                  "%.1f standard errors from the model, which says %.0f",
                  standardised,
                  predicted[i]);
    }
    return reasons;
  }
}
