package parfield.web.model;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import parfield.answer.FitWords;
import parfield.answer.Numbers;
import parfield.field.FastSolver;
import parfield.fit.FitReport;
import parfield.plan.NextReadings;
import parfield.survey.Reading;
import parfield.survey.Survey;
import parfield.units.LengthUnit;
import parfield.web.bench.OpenBench;
import parfield.web.bench.StoredModel;

/**
 * What a page says of a light model.
 *
 * @param bench whose
 * @param stored the model
 * @param unit of lengths
 * @param solver predicts
 */
public record FoundModel(OpenBench bench, StoredModel stored, LengthUnit unit, FastSolver solver) {

  /** Surveys of a bench that a model was fitted to, as they are now. */
  static List<Survey> fitted(OpenBench bench, StoredModel stored) {
    Set<String> names =
        stored.model().report().residuals().stream()
            .map(FitReport.Residual::survey)
            .collect(Collectors.toSet());
    return bench.setup().stream()
        .flatMap(setup -> setup.surveys().values().stream())
        .filter(survey -> names.contains(survey.name()))
        .toList();
  }

  /** What the fit found. */
  public FitReport report() {
    return stored.model().report();
  }

  /** How large the model's usual error is, as a sentence. */
  public String error() {
    return String.format(
        Locale.ROOT,
        "The model misses a reading by %s %% of its light (robust standard deviation).",
        Numbers.finePercent(report().relativeResidual()));
  }

  /** What the fit found beside the light. */
  public List<FitReport.Finding> findings() {
    return report().findings().stream().map(found -> FitWords.finding(found, unit)).toList();
  }

  /** What was held out, in words. */
  public String heldOut(FitReport.CrossValidation held) {
    return FitWords.heldOut(held, unit);
  }

  /** A number of a finding. */
  public String stated(FitReport.Finding finding) {
    return Numbers.plain(finding.stated(), 3);
  }

  /** A fitted number of a finding, with its interval. */
  public String fitted(FitReport.Finding finding) {
    return Numbers.plain(finding.fitted(), 3);
  }

  /** A share in percent. */
  public String percent(double share) {
    return Numbers.finePercent(share);
  }

  /** Readings that do not fit the model. */
  public List<FitReport.Residual> suspected() {
    return report().residuals().stream().filter(r -> !r.suspicion().isEmpty()).toList();
  }

  /**
   * One reading beside the model.
   *
   * @param survey it is of
   * @param place where, in words; empty if the survey was changed since
   * @param measured PPFD
   * @param predicted PPFD
   * @param difference measured over predicted less one [%]
   * @param suspicion why it looks wrong, maybe empty
   */
  public record Row(
      String survey,
      String place,
      String measured,
      String predicted,
      String difference,
      String suspicion) {}

  /** Every reading beside the model. */
  public List<Row> rows() {
    return report().residuals().stream().map(this::row).toList();
  }

  private Row row(FitReport.Residual residual) {
    return new Row(
        residual.survey(),
        place(residual),
        Numbers.ppfd(residual.measured()),
        Numbers.ppfd(residual.predicted()),
        String.format(
            Locale.ROOT,
            "%+.1f",
            100 * (residual.measured() / Math.max(1e-9, residual.predicted()) - 1)),
        residual.suspicion());
  }

  private String place(FitReport.Residual residual) {
    if (!stored.current()) {
      return "";
    }
    Survey survey = surveys().get(residual.survey());
    if (survey == null || residual.index() >= survey.readings().size()) {
      return "";
    }
    Reading reading = survey.readings().get(residual.index());
    return Numbers.length(reading.place().x(), unit)
        + ", "
        + Numbers.length(reading.place().y(), unit)
        + ", "
        + Numbers.length(reading.place().depth(), unit);
  }

  private Map<String, Survey> surveys() {
    return bench.setup().map(setup -> setup.surveys()).orElse(Map.of());
  }

  /** What to read next under the rig that most readings were taken under. */
  public List<String> next() {
    return ModelScreen.usualRig(bench)
        .map(rig -> NextReadings.choose(stored.model(), solver, rig, bench.bench().usualDepth()))
        .orElse(List.of())
        .stream()
        .map(reading -> reading.inWords(unit))
        .toList();
  }

  /** Its pictures: name, what it shows. */
  public List<ModelPictures.Picture> pictures() {
    return new ModelPictures(bench, stored, unit).all();
  }
}
