package parfield.fit;

import java.util.List;
import parfield.units.Estimate;

/**
 * What a fit found, for people.
 *
 * @param findings fitted conditions by name with their unit: panes, bottom, yellowing, height
 * @param residuals each reading with what the model says there
 * @param crossValidation prediction errors with parts of the readings held out
 * @param statements sentences: symmetry, channels, what the readings cannot tell
 * @param relativeResidual robust relative standard deviation of the residuals
 */
public record FitReport(
    List<Finding> findings,
    List<Residual> residuals,
    List<CrossValidation> crossValidation,
    List<String> statements,
    double relativeResidual) {
  public FitReport {
    findings = List.copyOf(findings);
    residuals = List.copyOf(residuals);
    crossValidation = List.copyOf(crossValidation);
    statements = List.copyOf(statements);
  }

  /**
   * One fitted condition.
   *
   * @param name what, with its unit
   * @param stated what the setup says
   * @param fitted estimate with interval
   */
  public record Finding(String name, double stated, Estimate fitted) {}

  /**
   * One reading beside the model.
   *
   * @param survey name of its survey
   * @param index of the reading in its survey, 0-based
   * @param measured PPFD after the meter's corrections [µmol m⁻² s⁻¹]
   * @param predicted PPFD of the model [µmol m⁻² s⁻¹]
   * @param sigmas residual over its standard error, positive where the reading is high
   * @param suspicion why the reading looks wrong, empty if it does not
   */
  public record Residual(
      String survey,
      int index,
      double measured,
      double predicted,
      double sigmas,
      String suspicion) {}

  /**
   * Errors of predicting readings that were held out.
   *
   * @param heldOut what was held out: a tenth of the readings, a plane, a height
   * @param median median of |relative error|
   * @param percentile90 90th percentile of |relative error|
   * @param meanError mean predicted over mean measured, less 1
   */
  public record CrossValidation(
      String heldOut, double median, double percentile90, double meanError) {}
}
